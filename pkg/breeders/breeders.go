// Package breeders says what the rules about breeding make of the animals of a
// collection: it gives them as the rules see them, [Breeders.Animals], with what is
// known by a day, and holds single animals and pairings against the rules.
//
//	b := breeders.New(collection, ancestry, nil)
//	grown := b.Grown(ancestry.MustNumber("AC-14"), today)
//	verdict := b.Judge(ancestry.Above(parents), planned, firstNightOfRain, today)
package breeders

import (
	"fmt"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Breeders is the animals of a collection with the rules that hold there, from [New]. It
// does not change, and can be used by several goroutines at once.
type Breeders struct {
	Collection *collection.Collection
	Ancestry   *kin.Ancestry

	needs   map[string]pairing.Needs // by species
	relaxed []pairing.Rule           // set aside by the file
	laid    map[string][]civil.Date  // by every animal that may be the dam, in order
}

// New takes a collection, its ancestry by [kin.Of], and the rules that are set aside.
func New(c *collection.Collection, a *kin.Ancestry, relaxed []pairing.Rule) *Breeders {
	b := &Breeders{
		Collection: c, Ancestry: a, relaxed: relaxed,
		needs: make(map[string]pairing.Needs, len(c.Species)), laid: make(map[string][]civil.Date),
	}
	for _, p := range c.Species {
		b.needs[p.ID] = needsOf(p)
	}
	for i := range c.Clutches {
		for _, dam := range c.Clutches[i].Dams {
			b.laid[dam] = append(b.laid[dam], c.Since(c.Clutches[i].ID))
		}
	}
	for _, days := range b.laid {
		slices.Sort(days)
	}
	return b
}

// Laid gives the days up to one on which clutches were laid of which an animal may be
// the dam, in order; of one whose day is not known, the day on which it was first seen.
func (b *Breeders) Laid(dam string, on civil.Date) []civil.Date {
	n, _ := slices.BinarySearch(b.laid[dam], on+1)
	return b.laid[dam][:n]
}

// Needs gives what the rules ask of a species; nothing of one that the collection does
// not have.
func (b *Breeders) Needs(species string) pairing.Needs { return b.needs[species] }

// Terms are what pairings of a day are judged by.
func (b *Breeders) Terms(on civil.Date) pairing.Terms {
	rules := b.Collection.Rules
	return pairing.Terms{
		Pedigree: b.Ancestry.Pedigree, Needs: b.needs, On: on,
		Rules: pairing.Rules{
			WarnInbreeding: rules.WarnInbreeding, MaxInbreeding: rules.MaxInbreeding,
			ClutchesASeason: rules.ClutchesASeason, Relaxed: b.relaxed,
		},
	}
}

// Judge holds a pairing against the rules on the day on which its rain begins,
// as far as is known by on. The pedigree has the ancestry of both sides, see
// [kin.Ancestry.Above]. It panics when a dam or a sire is not in it, or not in the
// collection.
func (b *Breeders) Judge(in *pedigree.Pedigree, p *collection.Pairing, rain, on civil.Date) pairing.Verdict {
	known := min(rain, on)
	terms, sires, dams := b.Terms(rain), b.Animals(p.Sires, known), b.Animals(p.Dams, known)
	terms.Pedigree = in
	for _, side := range [][]pairing.Animal{sires, dams} {
		for i := range side {
			node, ok := in.Index(side[i].ID)
			if !ok {
				panic(fmt.Sprintf("breeders: the pedigree has no animal %q", side[i].ID))
			}
			side[i].Node = node
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

// Animals gives animals as the pairing rules see them. Sizes and clutches are
// those that are known by a day; a day in the future on which an animal leaves
// is a plan, and counts. It panics for an id that no animal has.
func (b *Breeders) Animals(ids []string, known civil.Date) []pairing.Animal {
	out := make([]pairing.Animal, len(ids))
	for i, id := range ids {
		node := b.Ancestry.MustNumber(id)
		a := &b.Collection.Animals[node]
		weight, _ := b.Collection.Weight(id, known)
		length, _ := b.Collection.Length(id, known)
		quarantines, health := b.holds(id, known)
		out[i] = pairing.Animal{
			ID: id, Node: node, Species: a.Species, Line: a.Line, Locality: a.Locality,
			Sex: SexOf(a.Sex), SexSign: a.SexSign,
			Laid: b.Collection.LaidOn(a.Clutch), Hatched: a.Hatched, OutOfWater: a.OutOfWater, Acquired: a.Acquired,
			Died: a.Died, Left: a.Left, Promised: a.Promised,
			WeightG: weight.Value, LengthMM: length.Value,
			Clutches: b.Laid(id, known), Quarantines: quarantines, HealthHolds: health,
		}
	}
	return out
}

// holds gives the holds of an animal that are known by a day, by their kind.
func (b *Breeders) holds(id string, known civil.Date) (quarantines, health []pairing.Hold) {
	for _, h := range b.Collection.HoldsOf(id, known) {
		one := pairing.Hold{From: h.From, Until: h.Until, Note: h.Note}
		if h.Kind == collection.Quarantine {
			quarantines = append(quarantines, one)
		} else {
			health = append(health, one)
		}
	}
	return quarantines, health
}

// SexOf gives the sex as the rules call it.
func SexOf(s collection.Sex) pairing.Sex {
	switch s {
	case collection.Male:
		return pairing.Male
	case collection.Female:
		return pairing.Female
	}
	return pairing.SexUnknown
}
