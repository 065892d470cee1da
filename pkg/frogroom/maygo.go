package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// mayGo says whether an animal may go to another keeper: young when they are ready to
// leave, grown animals always, and nobody in quarantine or ill.
func (r *Room) mayGo(i int, on civil.Date) rearing.Leaves {
	a := r.Ancestry.Animal(i)
	out := r.rearing.AnimalLeaves(&a, on)
	if r.grown(i, on) {
		out.Held, out.Ask, out.From = []string{}, []string{}, 0
	}
	apart, openEnd := r.asBreeder(i, sexOf(a.Sex).Possible()[0], on), false
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

// asBreeder gives what each rule about single animals says of one.
func (r *Room) asBreeder(i int, as pairing.Sex, on civil.Date) map[pairing.Rule]pairing.Finding {
	out := make(map[pairing.Rule]pairing.Finding)
	for _, f := range pairing.JudgeAnimal(r.terms(on), r.breeders([]string{r.Ancestry.Animal(i).ID}, on)[0], as) {
		out[f.Rule] = f
	}
	return out
}

// grown reports whether an animal is known to be old enough to be bred or, where its age
// is not known, long or heavy enough; one of unknown sex, whichever sex it has.
func (r *Room) grown(i int, on civil.Date) bool {
	enough := func(f pairing.Finding) bool { return f.Severity == pairing.Fine && f.Limit != "" && !f.Relaxed }
	return !slices.ContainsFunc(sexOf(r.Ancestry.Animal(i).Sex).Possible(), func(as pairing.Sex) bool {
		f := r.asBreeder(i, as, on)
		if f[pairing.RuleAge].Severity == pairing.Unknown {
			return !enough(f[pairing.RuleLength]) && !enough(f[pairing.RuleWeight])
		}
		return !enough(f[pairing.RuleAge])
	})
}
