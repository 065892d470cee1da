package frogroom

import (
	"cmp"
	"fmt"
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
	return r.selections(on, count, w, func(l *line) (there, candidates []int) {
		for _, i := range l.pool {
			if l.tooYoung(i) {
				candidates = append(candidates, i)
			} else {
				there = append(there, i)
			}
		}
		return there, candidates
	})
}

// Unrelated selects up to count animals of each species that are as little
// related to each other as can be: for a buyer who wants to breed them. All
// that are in the room and promised to nobody can be chosen; whether they are
// ready to go is not looked at. The error is as that of [Room.Keep].
func (r *Room) Unrelated(on civil.Date, count int, w PairsWish) (Selections, error) {
	return r.selections(on, count, w, func(l *line) (there, candidates []int) { return nil, l.pool })
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
			return slices.Contains(w.Without, [2]string{r.Ancestry.animal(i).ID, ""})
		})
		if len(candidates) > 0 {
			out.Species = append(out.Species, l.selection(there, candidates, min(count, len(candidates))))
		}
	}
	return out, nil
}

func (l *line) selection(there, candidates []int, count int) SpeciesSelection {
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
		return cmp.Compare(rounded(a.MeanKinship), rounded(b.MeanKinship))
	})
	return s
}

// tooYoung reports whether the rule about age refuses an animal; one of unknown
// sex, whichever sex it has.
func (l *line) tooYoung(i int) bool {
	id := l.room.Ancestry.animal(i).ID
	self := l.room.breeders([]string{id}, l.on)
	refused := func(v pairing.Verdict) bool {
		return slices.ContainsFunc(v.Findings, func(f pairing.Finding) bool {
			return f.Rule == pairing.RuleAge && f.Severity == pairing.Refuse
		})
	}
	// Judged with itself: the rule about age looks at each animal alone, as a male
	// and as a female.
	v := pairing.Judge(l.room.terms(l.on), self, self)
	if sexOf(l.room.Ancestry.animal(i).Sex) != pairing.SexUnknown {
		v.Findings = l.asItsSex(v, i)
	}
	return refused(v)
}

// asItsSex leaves of two findings about age the one for the sex of the animal.
func (l *line) asItsSex(v pairing.Verdict, i int) []pairing.Finding {
	var ages []pairing.Finding
	for _, f := range v.Findings {
		if f.Rule == pairing.RuleAge {
			ages = append(ages, f)
		}
	}
	if sexOf(l.room.Ancestry.animal(i).Sex) == pairing.Male {
		return ages[:1]
	}
	return ages[1:]
}

// Exchanges are what animals from outside would do for the lines of a room.
type Exchanges struct {
	On       civil.Date        `json:"on"`
	Species  []SpeciesExchange `json:"species"`
	Warnings []string          `json:"warnings,omitempty"`
}

// SpeciesExchange is what single animals would do for the line of one species.
type SpeciesExchange struct {
	Species       string     `json:"species"`
	GeneDiversity float64    `json:"gene_diversity"` // as it is
	Animals       []Exchange `json:"animals"`        // the greatest gain first
}

// Exchange is one animal from outside.
type Exchange struct {
	ID   string `json:"id,omitempty"` // empty for an unrelated animal
	Name string `json:"name,omitempty"`
	What string `json:"what"`
	// With is the gene diversity of the line once the animal has joined, and
	// WithYoung once young of it and of its best mate, as many as two, have too.
	With      float64 `json:"gene_diversity_with"`
	WithYoung float64 `json:"gene_diversity_with_young"`
}

// exchangeYoung is how many young of an animal from outside are reckoned with.
const exchangeYoung = 2

// Exchange says what animals from outside would do for each line: those that left the
// room alive and are with others now, described in the file with their parents, and one that
// is unrelated to all. The error is as that of [Room.Keep].
func (r *Room) Exchange(on civil.Date, w PairsWish) (Exchanges, error) {
	mustKnow(on)
	w, err := r.wholeWish(w)
	if err != nil {
		return Exchanges{}, err
	}
	out := Exchanges{On: on, Species: []SpeciesExchange{}, Warnings: []string{founderWarning}}
	for _, p := range r.Collection.Species {
		if w.Species != "" && w.Species != p.ID {
			continue
		}
		l := r.line(on, p.ID, w)
		if len(l.pool) == 0 {
			continue
		}
		s := SpeciesExchange{Species: p.ID, GeneDiversity: l.set.GeneDiversity(), Animals: []Exchange{l.unrelated()}}
		for i := range r.Collection.Animals {
			a := &r.Collection.Animals[i]
			if status, since := a.Status(on); a.Species == p.ID && status == collection.Left {
				s.Animals = append(s.Animals, l.returning(i, fmt.Sprintf("left the room on %s", since)))
			}
		}
		slices.SortStableFunc(s.Animals, func(a, b Exchange) int {
			return -cmp.Compare(rounded(a.WithYoung), rounded(b.WithYoung))
		})
		out.Species = append(out.Species, s)
	}
	return out, nil
}

// unrelated reckons with an animal that has no kin here: the mean kinship of a
// line is the sum of all kinships by the square of its size.
func (l *line) unrelated() Exchange {
	n := float64(len(l.pool))
	sum := n * n * (1 - l.set.GeneDiversity())
	best := 0.0
	for _, mate := range l.pool {
		self := l.room.Ancestry.Pedigree.Inbreeding(mate)
		const young = exchangeYoung
		sib := (0.5 + (1+self)/2) / 4
		toLine := (n*l.set.MeanKinship(mate) + 0.5) / 2 // the mate's kin, and the newcomer itself
		all := sum + 0.5 + 2*young*toLine + young*0.5 + young*(young-1)*sib
		best = max(best, 1-all/((n+1+young)*(n+1+young)))
	}
	return Exchange{What: "an unrelated animal", With: 1 - (sum+0.5)/((n+1)*(n+1)), WithYoung: best}
}

// returning reckons with an animal of the file.
func (l *line) returning(i int, what string) Exchange {
	a := l.room.Ancestry.animal(i)
	set := pairing.NewBreedingSet(l.room.Ancestry.Pedigree, append(slices.Clone(l.pool), i))
	e := Exchange{ID: a.ID, Name: a.Name, What: what, With: set.GeneDiversity(), WithYoung: set.GeneDiversity()}
	best := 0.0
	for _, mate := range l.pool {
		if sex := l.room.Ancestry.animal(mate).Sex; sex == a.Sex && sex != collection.UnknownSex {
			continue
		}
		best = max(best, set.Effect([]int{i}, []int{mate}, exchangeYoung, 0).WithYoung)
	}
	if best > 0 {
		e.WithYoung = best
	}
	return e
}
