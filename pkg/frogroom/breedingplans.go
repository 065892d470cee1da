package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Pairs plans the pairings of a season, see [breedingplan.Stock.Plan]. The animals are judged
// as they are on that day.
//
// The error of this and of the questions that follow is a *[collection.UnknownError], a
// *[breedingplan.WishError] for a wish that makes no sense, or a
// *[breedingplan.NoPlanError] when there is none.
func (r *Room) Pairs(on civil.Date, w breedingplan.Wish) (breedingplan.Plan, error) {
	s, err := r.stock(on, w)
	if err != nil {
		return breedingplan.Plan{}, err
	}
	return s.Plan(w)
}

// Groups plans groups for the rain chambers, see [breedingplan.Stock.Groups].
func (r *Room) Groups(on civil.Date, w breedingplan.Wish, males, females int) (breedingplan.Groups, error) {
	s, err := r.stock(on, w)
	if err != nil {
		return breedingplan.Groups{}, err
	}
	return s.Groups(w, males, females)
}

// Keep selects young to keep for breeding, see [breedingplan.Stock.Keep].
func (r *Room) Keep(on civil.Date, count int, w breedingplan.Wish) (breedingplan.Selections, error) {
	s, err := r.stock(on, w)
	if err != nil {
		return breedingplan.Selections{}, err
	}
	return s.Keep(count, w)
}

// Unrelated selects animals for a buyer who wants to breed them, see
// [breedingplan.Stock.Unrelated]. Those may go that are sale-ready, see
// [development.SaleReadiness], and grown animals; nobody in quarantine or ill.
func (r *Room) Unrelated(on civil.Date, count int, w breedingplan.Wish) (breedingplan.Selections, error) {
	s, err := r.stock(on, w)
	if err != nil {
		return breedingplan.Selections{}, err
	}
	return s.Unrelated(count, w)
}

// Exchange says what animals from outside would do for each line, see
// [breedingplan.Stock.Exchange].
func (r *Room) Exchange(on civil.Date, w breedingplan.Wish, described ...breedingplan.Outsider) (breedingplan.Exchanges, error) {
	s, err := r.stock(on, w)
	if err != nil {
		return breedingplan.Exchanges{}, err
	}
	for _, o := range described {
		if err := r.known(o.Species, o.Sire, o.Dam); err != nil {
			return breedingplan.Exchanges{}, err
		}
	}
	return s.Exchange(w, described...)
}

// WhyPair holds two animals against all rules, see [breedingplan.Stock.WhyPair].
func (r *Room) WhyPair(on civil.Date, one, other string, w breedingplan.Wish) (breedingplan.PairVerdict, error) {
	s, err := r.stock(on, w, one, other)
	if err != nil {
		return breedingplan.PairVerdict{}, err
	}
	return s.WhyPair(one, other, w)
}

// WhyAnimal holds an animal and each mate that it could have against all rules, see
// [breedingplan.Stock.WhyAnimal].
func (r *Room) WhyAnimal(on civil.Date, id string, w breedingplan.Wish) (breedingplan.AnimalVerdict, error) {
	s, err := r.stock(on, w, id)
	if err != nil {
		return breedingplan.AnimalVerdict{}, err
	}
	return s.WhyAnimal(id, w)
}

// stock gives the room in the terms of a plan, when all that a wish names is known.
func (r *Room) stock(on civil.Date, w breedingplan.Wish, ids ...string) (*breedingplan.Stock, error) {
	mustKnow(on)
	for _, pair := range slices.Concat(w.Want, w.Without) {
		ids = append(ids, pair[:]...)
	}
	if err := r.known(w.Species, ids...); err != nil {
		return nil, err
	}
	for _, rule := range w.Relax {
		if problem, cure := mayRelax(rule); problem != "" {
			return nil, &breedingplan.WishError{Message: problem + "; " + cure}
		}
	}
	s := &breedingplan.Stock{
		Terms:           r.breeders.Terms(on),
		PairingsASeason: breedingplan.Count(r.Collection.Rules.PairingsASeason),
		RainChambers:    breedingplan.Count(r.Collection.Equipment.RainChambers),
		MayGo: func(i int) (why []string, from civil.Date) {
			leaves := r.leaving.MayGo(i, on)
			if leaves.From > on {
				from = leaves.From
			}
			return slices.Concat(leaves.Held, leaves.Ask), from
		},
	}
	for _, p := range r.Collection.Species {
		s.Species = append(s.Species, p.ID)
	}
	all := make([]string, len(r.Collection.Animals))
	for i := range r.Collection.Animals {
		all[i] = r.Collection.Animals[i].ID
	}
	for i, a := range r.breeders.Animals(all, on) {
		s.Animals = append(s.Animals, breedingplan.Animal{Animal: a, Name: r.Collection.Animals[i].Name, Here: r.Ancestry.Status(i, on) == collection.Here})
	}
	return s, nil
}

// known gives the error for a species or an animal that the collection does not have; what
// is empty is not asked for.
func (r *Room) known(species string, ids ...string) error {
	if _, ok := r.Collection.Profile(species); species != "" && !ok {
		return r.Collection.Unknown("species", species)
	}
	for _, id := range ids {
		if _, err := r.Ancestry.Number(id); id != "" && err != nil {
			return err
		}
	}
	return nil
}

// mayRelax says why a rule cannot be set aside, and nothing when it can.
func mayRelax(rule pairing.Rule) (problem, cure string) {
	can := make([]string, 0)
	for _, known := range pairing.Relaxable() {
		if rule == known {
			return "", ""
		}
		can = append(can, string(known))
	}
	if near := strictyaml.Nearest(string(rule), can); near != "" {
		return fmt.Sprintf("there is no rule %q", rule), fmt.Sprintf("did you mean %q? these can be relaxed: %s", near, words.And(can))
	}
	return fmt.Sprintf("the rule %q cannot be relaxed", rule), "these can: " + words.And(can)
}
