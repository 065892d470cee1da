package breedingplan

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

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
	ID   string `json:"id,omitempty"` // of one that is recorded
	Name string `json:"name,omitempty"`
	What string `json:"what"`
	// With is the gene diversity of the line once the animal has joined, and
	// WithYoung once two young of it and of Mate have, too.
	With      float64 `json:"gene_diversity_with"`
	WithYoung float64 `json:"gene_diversity_with_young"`
	// Mate is the animal of the line with which the young do most, of those whose
	// young stay under the greatest inbreeding; empty when there is none, and
	// WithYoung is With then.
	Mate            string  `json:"best_mate,omitempty"`
	YoungInbreeding float64 `json:"young_inbreeding"`
}

// exchangeYoung is how many young of an animal from outside are reckoned with.
const exchangeYoung = 2

// Exchange says what animals from outside would do for each line: those that are
// described, those that left the room alive and are with others now, and one that is
// unrelated to all. The error is a *[WishError].
func (s *Stock) Exchange(w Wish, described ...Outsider) (Exchanges, error) {
	w, err := s.whole(w)
	if err != nil {
		return Exchanges{}, err
	}
	described = slices.Clone(described)
	for i := range described {
		if err := s.settle(&described[i], w); err != nil {
			return Exchanges{}, err
		}
	}
	out := Exchanges{On: s.Terms.On, Species: []SpeciesExchange{}, Warnings: []string{pedigree.FounderWarning}}
	for _, species := range s.Species {
		if w.Species != "" && w.Species != species {
			continue
		}
		l := s.line(species, w)
		if len(l.pool) > 0 {
			out.Species = append(out.Species, l.exchange(described))
		}
	}
	return out, nil
}

func (l *line) exchange(described []Outsider) SpeciesExchange {
	s := SpeciesExchange{Species: l.species, GeneDiversity: l.set.GeneDiversity()}
	stranger := l.join(newcomer{sex: pairing.SexUnknown, kinship: make([]float64, l.stock.Terms.Pedigree.Len()), self: 0.5})
	stranger.What = "an unrelated animal"
	s.Animals = append(s.Animals, stranger)
	for _, o := range described {
		if o.Species == l.species {
			e := l.join(l.stock.newcomer(o))
			e.Name, e.What = o.Name, l.describe(o)
			s.Animals = append(s.Animals, e)
		}
	}
	for i := range l.stock.Animals {
		if a := l.stock.animal(i); a.Species == l.species && a.left(l.stock.Terms.On) {
			p := l.stock.Terms.Pedigree
			e := l.join(newcomer{sex: a.Sex, kinship: p.KinshipTo(i), self: (1 + p.Inbreeding(i)) / 2})
			e.ID, e.Name, e.What = a.ID, a.Name, fmt.Sprintf("left the room on %s", a.Left)
			s.Animals = append(s.Animals, e)
		}
	}
	slices.SortStableFunc(s.Animals, func(a, b Exchange) int {
		return -cmp.Compare(level(a.WithYoung), level(b.WithYoung))
	})
	return s
}

// left reports whether an animal left alive by a day.
func (a *Animal) left(on civil.Date) bool {
	return a.Left.Known() && a.Left <= on && !(a.Died.Known() && a.Died <= on)
}

// newcomer is an animal that joins a line.
type newcomer struct {
	sex     pairing.Sex
	kinship []float64 // with every animal of the pedigree
	self    float64   // with itself
}

// join reckons with an animal that joins the line, and with young of it and of its best mate.
// The mean kinship of a line is the sum of all kinships by the square of its size.
func (l *line) join(x newcomer) Exchange {
	n := float64(len(l.pool))
	sum := n * n * (1 - l.set.GeneDiversity())
	toLine := 0.0
	for _, i := range l.pool {
		toLine += x.kinship[i]
	}
	sum += 2*toLine + x.self
	e := Exchange{With: 1 - sum/((n+1)*(n+1))}
	e.WithYoung = e.With
	best := 0.0
	for _, mate := range l.pool {
		a := l.stock.animal(mate)
		f := x.kinship[mate] // the inbreeding of their young
		if a.Sex == x.sex && a.Sex != pairing.SexUnknown || f >= l.stock.Terms.Rules.MaxInbreeding-1e-9 {
			continue
		}
		const young = exchangeYoung
		of := (1 + l.stock.Terms.Pedigree.Inbreeding(mate)) / 2 // the mate with itself
		sib := (x.self + of + 2*f) / 4
		parents := (toLine + x.self + n*l.set.MeanKinship(mate) + f) / 2 // a young one with the line and the newcomer
		all := sum + 2*young*parents + young*(1+f)/2 + young*(young-1)*sib
		if gd := 1 - all/((n+1+young)*(n+1+young)); e.Mate == "" || gd > best+1e-12 {
			best, e.Mate, e.YoungInbreeding = gd, a.ID, f
		}
	}
	if e.Mate != "" {
		e.WithYoung = best
	}
	return e
}

// newcomer gives the kinships of an animal that is described: half of those of each parent
// that is known, for the other half is unrelated.
func (s *Stock) newcomer(o Outsider) newcomer {
	p := s.Terms.Pedigree
	x := newcomer{sex: o.Sex, kinship: make([]float64, p.Len()), self: (1 + o.Inbreeding) / 2}
	for _, parent := range []string{o.Sire, o.Dam} {
		if parent == "" {
			continue
		}
		for i, f := range p.KinshipTo(s.number(parent)) {
			x.kinship[i] += f / 2
		}
	}
	if o.Sire != "" && o.Dam != "" {
		x.self = (1 + p.Kinship(s.number(o.Sire), s.number(o.Dam))) / 2
	}
	return x
}
