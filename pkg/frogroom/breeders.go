package frogroom

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// judge holds a pairing against the rules on the day on which its rain begins,
// as far as is known by on. The pedigree has the ancestry of both sides.
func (r *Room) judge(in *pedigree.Pedigree, p *collection.Pairing, rain, on civil.Date) pairing.Verdict {
	known := min(rain, on)
	terms, sires, dams := r.terms(rain), r.breeders(p.Sires, known), r.breeders(p.Dams, known)
	terms.Pedigree = in
	for _, side := range [][]pairing.Animal{sires, dams} {
		for i := range side {
			side[i].Node, _ = in.Index(side[i].ID)
		}
	}
	return pairing.Judge(terms, sires, dams)
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
	if s, ok := p.Step(species.Egg); ok {
		n.EggDays = int(math.Round(s.Days.P50))
	}
	n.QuarantineDays = int(math.Ceil(p.QuarantineDays.Value))
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
		quarantines, health := r.holds(id, known)
		clutches := r.laid.byDam[id]
		laid, _ := upTo(known, clutches)
		out[i] = pairing.Animal{
			ID: id, Node: node, Species: a.Species, Line: a.Line, Locality: a.Locality,
			Sex: sexOf(a.Sex), SexSign: a.SexSign,
			Laid: r.laidOf(a.Clutch), Hatched: a.Hatched, OutOfWater: a.OutOfWater, Acquired: a.Acquired,
			Died: a.Died, Left: a.Left, Promised: a.Promised,
			WeightG: weight.Value, LengthMM: length.Value,
			Clutches: clutches[:laid], Quarantines: quarantines, HealthHolds: health,
		}
	}
	return out
}

// laidOf is the day on which a clutch was laid; unknown for no clutch, or when nobody wrote it
// down.
func (r *Room) laidOf(clutch string) civil.Date {
	if c, ok := r.Collection.Clutch(clutch); ok {
		return c.Laid
	}
	return 0
}

// holds gives the holds of an animal that are known by a day, by their kind.
func (r *Room) holds(id string, known civil.Date) (quarantines, health []pairing.Hold) {
	for _, h := range r.Collection.HoldsOf(id, known) {
		one := pairing.Hold{From: h.From, Until: h.Until, Note: h.Note}
		if h.Kind == collection.Quarantine {
			quarantines = append(quarantines, one)
		} else {
			health = append(health, one)
		}
	}
	return quarantines, health
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
