package breedingplan

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Selections are animals that were selected, for each species.
type Selections struct {
	On       civil.Date         `json:"on"`
	Species  []SpeciesSelection `json:"species"`
	Warnings []string           `json:"warnings,omitempty"`
}

// SpeciesSelection is some animals of one species.
type SpeciesSelection struct {
	Species string     `json:"species"`
	Chosen  []Selected `json:"chosen"`
	Others  []Selected `json:"others"` // that could have been chosen, the rarest genes first
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

// Selected is one of them.
type Selected struct {
	ID          string      `json:"id"`
	Name        string      `json:"name,omitempty"`
	Sex         pairing.Sex `json:"sex"`
	MeanKinship float64     `json:"mean_kinship"` // with the line: all that are in the room and promised to nobody
}

// Keep selects up to count young of each species to keep for breeding: those with
// which the line, the grown animals included, has the lowest mean kinship. Young are the
// animals in the room that are promised to nobody and known to be too young to be bred. The
// error is a *[WishError].
func (s *Stock) Keep(count int, w Wish) (Selections, error) {
	out, err := s.selections(count, w, func(l *line) (there, candidates []int) {
		for _, i := range l.pool {
			if pairing.TooYoung(l.stock.Terms, l.stock.animal(i).Animal) {
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
	ID   string      `json:"id"`
	Name string      `json:"name,omitempty"`
	Sex  pairing.Sex `json:"sex"`
	Why  []string    `json:"why"`            // why it is held, and what has to be recorded first
	From civil.Date  `json:"from,omitempty"` // a day to come from which it may, when that is known
}

// Unrelated selects up to count animals of each species that are as little
// related to each other as can be: for a buyer who wants to breed them. Of those in
// the room that are promised to nobody those can be chosen that may go. Where several
// groups are as good, animals of which the line has more are rather let go. The error is as that of [Stock.Keep].
func (s *Stock) Unrelated(count int, w Wish) (Selections, error) {
	out, err := s.selections(count, w, func(l *line) (there, candidates []int) {
		candidates = slices.DeleteFunc(slices.Clone(l.pool), func(i int) bool {
			why, _ := s.MayGo(i)
			return len(why) > 0
		})
		slices.SortStableFunc(candidates, func(a, b int) int {
			return cmp.Compare(level(l.set.MeanKinship(b)), level(l.set.MeanKinship(a)))
		})
		return nil, candidates
	})
	for i := range out.Species {
		out.Species[i].notReady(s.line(out.Species[i].Species, w))
	}
	return out, err
}

// notReady fills in who is not offered.
func (s *SpeciesSelection) notReady(l *line) {
	s.Promised = len(l.here) - len(l.pool)
	for _, i := range l.pool {
		a := l.stock.animal(i)
		if why, from := l.stock.MayGo(i); len(why) > 0 && !l.wish.leavesOut(a.ID) {
			s.NotReady = append(s.NotReady, NotReady{ID: a.ID, Name: a.Name, Sex: a.Sex, Why: why, From: from})
		}
	}
}

func (s *Stock) selections(count int, w Wish, from func(*line) (there, candidates []int)) (Selections, error) {
	w, err := s.whole(w)
	if err != nil {
		return Selections{}, err
	}
	if count < 1 || count > 1000 {
		return Selections{}, &WishError{"write a number of animals from 1 to 1000"}
	}
	out := Selections{On: s.Terms.On, Species: []SpeciesSelection{}, Warnings: []string{pedigree.FounderWarning}}
	for _, species := range s.Species {
		if w.Species != "" && w.Species != species {
			continue
		}
		l := s.line(species, w)
		there, candidates := from(l)
		candidates = slices.DeleteFunc(slices.Clone(candidates), func(i int) bool {
			return w.leavesOut(s.animal(i).ID)
		})
		if len(l.pool) > 0 {
			out.Species = append(out.Species, l.selection(there, candidates, min(count, len(candidates))))
		}
	}
	return out, nil
}

func (l *line) selection(there, candidates []int, count int) SpeciesSelection {
	if len(candidates) == 0 {
		return SpeciesSelection{Species: l.species, Chosen: []Selected{}, Others: []Selected{}, Proven: true}
	}
	p := l.stock.Terms.Pedigree
	best := pairing.Select(p, there, candidates, count, pairing.Effort{Nodes: l.wish.Nodes, Stop: l.wish.Stop})
	s := SpeciesSelection{
		Species: l.species, Chosen: []Selected{}, Others: []Selected{},
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
	for _, i := range slices.Sorted(slices.Values(candidates)) {
		a := l.stock.animal(i)
		one := Selected{ID: a.ID, Name: a.Name, Sex: a.Sex, MeanKinship: l.set.MeanKinship(i)}
		if slices.Contains(best.Members, i) {
			s.Chosen = append(s.Chosen, one)
		} else {
			s.Others = append(s.Others, one)
		}
	}
	slices.SortStableFunc(s.Others, func(a, b Selected) int {
		return cmp.Compare(level(a.MeanKinship), level(b.MeanKinship))
	})
	return s
}
