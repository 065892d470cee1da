package almanac

import (
	"strings"

	"github.com/spawnwright/spawnwright/pkg/internal/figures"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// rainCaution goes with every rain chamber.
const rainCaution = "Water and electricity: pump, heater and lamps on a residual-current device, mains off before hands go in; follow local codes."

// phaseNote gives the conditions of a phase from the profile, those of one
// source together. Each line begins with a line break.
func phaseNote(p *species.Profile, name string) string {
	ph, ok := p.Phase(species.PhaseName(name))
	if !ok {
		return ""
	}
	var note sourced
	if r := ph.DayC; r.Known() {
		note.add("day "+figures.Degrees(r.Low, r.High), r.Source)
	}
	if r := ph.NightC; r.Known() {
		note.add("night "+figures.Degrees(r.Low, r.High), r.Source)
	}
	if r := ph.HumidityPct; r.Known() {
		note.add("humidity "+figures.Span(r.Low, r.High)+" %", r.Source)
	}
	if n := ph.LightH; n.Known() {
		note.add("light "+figures.Plain(n.Value)+" h a day", n.Source)
	}
	if t := ph.Feeding; t.Known() {
		note.add("feeding: "+t.Value, t.Source)
	}
	text := note.String()
	if name == string(species.Rain) {
		text += "\n" + rainCaution
	}
	return text
}

// sourced is values in order, each with its source.
type sourced struct{ values, sources []string }

func (s *sourced) add(value, source string) {
	s.values = append(s.values, value)
	s.sources = append(s.sources, source)
}

// String gives each run of values with one source as a line: "day 24 to 28 °C,
// night 21 to 24 °C (from memory)". A line begins with a line break.
func (s *sourced) String() string {
	text := ""
	for i, value := range s.values {
		if i == 0 || s.sources[i] != s.sources[i-1] {
			text += "\n" + strings.ToUpper(value[:1]) + value[1:]
		} else {
			text += ", " + value
		}
		if i+1 == len(s.values) || s.sources[i+1] != s.sources[i] {
			text += " (" + s.sources[i] + ")."
		}
	}
	return text
}
