package frogroom

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// Selections are animals that were selected, for each species.
type Selections struct {
	On       civil.Date         `json:"on"`
	Species  []SpeciesSelection `json:"species"`
	Warnings []string           `json:"warnings,omitempty"`
}

// SpeciesSelection is some animals of one species.
type SpeciesSelection struct {
	Species string           `json:"species"`
	Chosen  []SelectedAnimal `json:"chosen"`
	Others  []SelectedAnimal `json:"others"` // that could have been chosen, the rarest genes first
	// NotReady are animals that may not leave yet, and Promised the number of those that are
	// promised to somebody: when animals are selected for a buyer, neither is offered.
	NotReady []NotReady `json:"not_ready,omitempty"`
	Promised int        `json:"promised,omitempty"`
	// GeneDiversity is that of the chosen, together with the grown animals when
	// young are kept for breeding.
	GeneDiversity float64 `json:"gene_diversity"`
	Closest       float64 `json:"closest"` // greatest kinship of two that are chosen
	Proven        bool    `json:"proven"`
	Gap           float64 `json:"gap"`
}

// SelectedAnimal is one of them.
type SelectedAnimal struct {
	ID          string         `json:"id"`
	Name        string         `json:"name,omitempty"`
	Sex         collection.Sex `json:"sex"`
	MeanKinship float64        `json:"mean_kinship"` // with the line: all that are in the room and promised to nobody
}

// Keep selects up to count young of each species to keep for breeding: those with
// which the line, the grown animals included, has the lowest mean kinship. Young are the
// animals in the room that are promised to nobody and known to be too young to be bred. The
// error is an *[UnknownSpeciesError] or a *[PairsWishError].
func (r *Room) Keep(on civil.Date, count int, w PairsWish) (Selections, error) {
	out, err := r.selections(on, count, w, func(l *line) (there, candidates []int) {
		for _, i := range l.pool {
			if l.room.tooYoung(i, l.on) {
				candidates = append(candidates, i)
			} else {
				there = append(there, i)
			}
		}
		return there, candidates
	})
	out.Species = slices.DeleteFunc(out.Species, func(s SpeciesSelection) bool { return len(s.Chosen) == 0 })
	return out, err
}

// NotReady is an animal that may not leave yet.
type NotReady struct {
	ID   string         `json:"id"`
	Name string         `json:"name,omitempty"`
	Sex  collection.Sex `json:"sex"`
	Why  []string       `json:"why"`            // why it is held, and what has to be recorded first
	From civil.Date     `json:"from,omitempty"` // a day to come, on which it is old enough or no longer held
}

// Unrelated selects up to count animals of each species that are as little
// related to each other as can be: for a buyer who wants to breed them. Of those in
// the room that are promised to nobody the ready ones can be chosen: young that are
// sale-ready, see [development.SaleReadiness], and grown animals; nobody in quarantine
// or ill. The error is as that of [Room.Keep].
func (r *Room) Unrelated(on civil.Date, count int, w PairsWish) (Selections, error) {
	out, err := r.selections(on, count, w, func(l *line) (there, candidates []int) {
		return nil, slices.DeleteFunc(slices.Clone(l.pool), func(i int) bool { return !r.mayGo(i, on).Ready })
	})
	for i := range out.Species {
		out.Species[i].notReady(r, on, w)
	}
	return out, err
}

// notReady fills in who is not offered.
func (s *SpeciesSelection) notReady(r *Room, on civil.Date, w PairsWish) {
	l := r.line(on, s.Species, w)
	s.Promised = len(l.here) - len(l.pool)
	for _, i := range l.pool {
		a := r.Ancestry.animal(i)
		if leaves := r.mayGo(i, on); !leaves.Ready && !w.leavesOut(a.ID) {
			one := NotReady{ID: a.ID, Name: a.Name, Sex: a.Sex, Why: slices.Concat(leaves.Held, leaves.Ask)}
			if leaves.From > on {
				one.From = leaves.From
			}
			s.NotReady = append(s.NotReady, one)
		}
	}
}

func (r *Room) selections(on civil.Date, count int, w PairsWish, from func(*line) (there, candidates []int)) (Selections, error) {
	mustKnow(on)
	w, err := r.wholeWish(w)
	if err != nil {
		return Selections{}, err
	}
	if count < 1 || count > 1000 {
		return Selections{}, &PairsWishError{"write a number of animals from 1 to 1000"}
	}
	out := Selections{On: on, Species: []SpeciesSelection{}, Warnings: []string{founderWarning}}
	for _, p := range r.Collection.Species {
		if w.Species != "" && w.Species != p.ID {
			continue
		}
		l := r.line(on, p.ID, w)
		there, candidates := from(l)
		candidates = slices.DeleteFunc(slices.Clone(candidates), func(i int) bool {
			return w.leavesOut(r.Ancestry.animal(i).ID)
		})
		if len(l.pool) > 0 {
			out.Species = append(out.Species, l.selection(there, candidates, min(count, len(candidates))))
		}
	}
	return out, nil
}

func (l *line) selection(there, candidates []int, count int) SpeciesSelection {
	if len(candidates) == 0 {
		return SpeciesSelection{Species: l.species, Chosen: []SelectedAnimal{}, Others: []SelectedAnimal{}, Proven: true}
	}
	p := l.room.Ancestry.Pedigree
	best := pairing.Select(p, there, candidates, count, pairing.Effort{Nodes: l.wish.Nodes, Stop: l.wish.Stop})
	s := SpeciesSelection{
		Species: l.species, Chosen: []SelectedAnimal{}, Others: []SelectedAnimal{},
		GeneDiversity: 1 - best.MeanKinship, Proven: best.Proven,
	}
	if !best.Proven {
		s.Gap = 1 - best.Bound/best.MeanKinship
	}
	for i, a := range best.Members {
		for _, b := range best.Members[:i] {
			s.Closest = max(s.Closest, p.Kinship(a, b))
		}
	}
	for _, i := range candidates {
		a := l.room.Ancestry.animal(i)
		one := SelectedAnimal{ID: a.ID, Name: a.Name, Sex: a.Sex, MeanKinship: l.set.MeanKinship(i)}
		if slices.Contains(best.Members, i) {
			s.Chosen = append(s.Chosen, one)
		} else {
			s.Others = append(s.Others, one)
		}
	}
	slices.SortStableFunc(s.Others, func(a, b SelectedAnimal) int {
		return cmp.Compare(level(a.MeanKinship), level(b.MeanKinship))
	})
	return s
}
