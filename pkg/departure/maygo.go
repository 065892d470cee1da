package departure

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// MayGo says whether animal i, by its number in the pedigree, may go to another keeper:
// young when they are ready to leave, grown animals always, and nobody in quarantine or
// ill. Whether it is in the room at all is not asked.
func (r *Register) MayGo(i int, on civil.Date) rearing.Leaves {
	a := r.Ancestry.Animal(i)
	out := r.Rearing.AnimalLeaves(&a, on)
	if r.Breeders.Grown(i, on) {
		out.Held, out.Ask, out.From = []string{}, []string{}, 0
	}
	apart, openEnd := r.Breeders.JudgeOne(i, breeders.SexOf(a.Sex).Possible()[0], on), false
	for _, rule := range []pairing.Rule{pairing.RuleQuarantine, pairing.RuleHealth} {
		switch f := apart[rule]; {
		case f.Severity == pairing.Refuse:
			out.Held = append(out.Held, f.Message)
			out.From = max(out.From, f.From)
			openEnd = openEnd || !f.From.Known()
		case f.Severity > pairing.Fine:
			out.Ask = append(out.Ask, quarantineQuestion(a.Acquired, f.From))
		}
	}
	if openEnd {
		out.From = 0
	}
	out.Ready = len(out.Held) == 0 && len(out.Ask) == 0
	return out
}

// quarantineQuestion asks for a quarantine of which nothing is written, with the day up
// to which it usually lasts, where the profile says so.
func quarantineQuestion(came, over civil.Date) string {
	text := fmt.Sprintf("it came on %s: is its quarantine over?", came)
	if over.Known() {
		text += fmt.Sprintf(" (usually until %s)", over.Add(-1))
	}
	return text
}
