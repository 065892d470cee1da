package frogroom

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// judge holds a pairing against the rules on the day on which its rain begins,
// as far as is known by on.
func (r *Room) judge(p *collection.Pairing, rain, on civil.Date) pairing.Verdict {
	terms := pairing.Terms{
		Pedigree: r.Ancestry.Pedigree,
		Needs:    r.needs,
		Rules: pairing.Rules{
			WarnInbreeding: r.Collection.Rules.WarnInbreeding,
			MaxInbreeding:  r.Collection.Rules.MaxInbreeding,
		},
		On: rain,
	}
	known := min(rain, on)
	return pairing.Judge(terms, r.breeders(p.Sires, known), r.breeders(p.Dams, known))
}

// needsOf takes from a profile what the rules about breeders ask.
func needsOf(p *species.Profile) pairing.Needs {
	n := pairing.Needs{
		Male:               maturityOf(p.Maturity.Male),
		Female:             maturityOf(p.Maturity.Female),
		MalesPerFemaleLow:  p.Breeding.MalesPerFemale.Low,
		MalesPerFemaleHigh: p.Breeding.MalesPerFemale.High,
	}
	days := 0.0
	for _, name := range []species.StepName{species.Hatchling, species.Tadpole, species.Metamorph} {
		s, ok := p.Step(name)
		if !ok || !s.Days.Known() {
			days = 0 // a part of it would pass for the whole
			break
		}
		days += s.Days.P50
	}
	n.TadpoleDays = int(math.Round(days))
	if rest, ok := p.Phase(species.Rest); ok {
		n.RestLeast, n.RestUsual = rest.Days.Min, rest.Days.Usual
	}
	return n
}

func maturityOf(m species.Maturity) pairing.Maturity {
	return pairing.Maturity{AgeDays: int(math.Ceil(m.AgeDays.Value)), LengthMM: m.LengthMM.Value, WeightG: m.WeightG.Value}
}

// breeders gives animals as the pairing rules see them. Sizes and clutches are
// those that are known by a day; a day in the future on which an animal leaves
// is a plan, and counts.
func (r *Room) breeders(ids []string, known civil.Date) []pairing.Animal {
	out := make([]pairing.Animal, len(ids))
	for i, id := range ids {
		node := r.number(id)
		a := &r.Collection.Animals[node]
		weight, _ := r.Collection.Weight(id, known)
		length, _ := r.Collection.Length(id, known)
		_, lastClutch := upTo(known, r.laid.byDam[id])
		out[i] = pairing.Animal{
			ID: id, Node: node, Species: a.Species, Line: a.Line, Locality: a.Locality,
			Sex:     sexOf(a.Sex),
			Hatched: a.Hatched, OutOfWater: a.OutOfWater, Acquired: a.Acquired,
			Died: a.Died, Left: a.Left, Promised: a.Promised,
			WeightG: weight.Value, LengthMM: length.Value,
			LastClutch: lastClutch,
		}
	}
	return out
}

func sexOf(s collection.Sex) pairing.Sex {
	switch s {
	case collection.Male:
		return pairing.Male
	case collection.Female:
		return pairing.Female
	}
	return pairing.SexUnknown
}
