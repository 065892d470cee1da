package breeders

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// JudgeOne gives what each rule about single animals says of animal i as a breeder of a
// sex, as far as is known by a day.
func (b *Breeders) JudgeOne(i int, as pairing.Sex, on civil.Date) map[pairing.Rule]pairing.Finding {
	out := make(map[pairing.Rule]pairing.Finding)
	for _, f := range pairing.JudgeAnimal(b.Terms(on), b.Animals([]string{b.Ancestry.Animal(i).ID}, on)[0], as) {
		out[f.Rule] = f
	}
	return out
}

// Grown reports whether an animal is known to be old enough to be bred or, where its age
// is not known, long or heavy enough; one of unknown sex, whichever sex it has.
func (b *Breeders) Grown(i int, on civil.Date) bool {
	enough := func(f pairing.Finding) bool { return f.Severity == pairing.Fine && f.Limit != "" && !f.Relaxed }
	return !slices.ContainsFunc(SexOf(b.Ancestry.Animal(i).Sex).Possible(), func(as pairing.Sex) bool {
		f := b.JudgeOne(i, as, on)
		if f[pairing.RuleAge].Severity == pairing.Unknown {
			return !enough(f[pairing.RuleLength]) && !enough(f[pairing.RuleWeight])
		}
		return !enough(f[pairing.RuleAge])
	})
}
