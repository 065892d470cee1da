package season

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// validate panics on what no reader of a file should let through.
func validate(room Room, pairings []Pairing, from civil.Date) {
	if !from.Known() {
		panic("season: today is not given")
	}
	places := map[string]bool{}
	for _, c := range room.Capacity {
		must(c.Place != "" && !places[c.Place], "the capacity of place %q is given twice, or without its name", c.Place)
		must(!c.Known || c.Count >= 0, "the capacity of place %q is negative: %d", c.Place, c.Count)
		places[c.Place] = true
	}
	ids := map[string]bool{}
	for _, p := range pairings {
		must(p.ID != "" && !ids[p.ID], "the id of a pairing is empty or stands twice: %q", p.ID)
		ids[p.ID] = true
		p.validate()
	}
}

func (p Pairing) validate() {
	must(p.Start.Known() != p.ReadyBy.Known(), "pairing %s needs either a start or a day to be ready by", p.ID)
	must(!p.Start.Known() || p.Start >= p.NotBefore, "pairing %s starts on %s, before %s", p.ID, p.Start, p.NotBefore)
	must(p.ReadyAfter >= 0, "pairing %s has young that are ready before the rain: %d days after", p.ID, p.ReadyAfter)
	names := map[string]bool{}
	for _, q := range p.Phases {
		must(q.Name != "" && !names[q.Name], "pairing %s has a phase without a name or twice: %q", p.ID, q.Name)
		must(0 <= q.Min && q.Min <= q.Usual && q.Usual <= q.Max,
			"pairing %s has %s of %d, usually %d, at most %d days", p.ID, q.Name, q.Min, q.Usual, q.Max)
		names[q.Name] = true
	}
	for _, s := range p.Stages {
		must(0 <= s.Early && s.Early <= s.Likely && s.Likely <= s.Late,
			"pairing %s has %s after %d, %d, %d days", p.ID, s.Stage, s.Early, s.Likely, s.Late)
	}
	must(len(p.Days) == 0 || len(p.Days) == len(p.Phases)+1 && slices.IsSorted(p.Days) && p.Days[0].Known(),
		"pairing %s has %d days for %d phases, or days out of order", p.ID, len(p.Days), len(p.Phases))
	for _, b := range p.Began {
		must(b.On.Known(), "pairing %s has a record of %s without a date", p.ID, b.Phase)
	}
}

func must(ok bool, format string, args ...any) {
	if !ok {
		panic("season: " + fmt.Sprintf(format, args...))
	}
}
