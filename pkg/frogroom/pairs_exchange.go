package frogroom

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
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
	ID   string `json:"id,omitempty"` // of one of the file
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
// unrelated to all. The error is as that of [Room.Keep], or an *[UnknownAnimalError] for a
// parent that is not in the file.
func (r *Room) Exchange(on civil.Date, w PairsWish, described ...Outsider) (Exchanges, error) {
	mustKnow(on)
	w, err := r.wholeWish(w)
	if err != nil {
		return Exchanges{}, err
	}
	described = slices.Clone(described)
	for i := range described {
		if err := r.settle(&described[i], w); err != nil {
			return Exchanges{}, err
		}
	}
	out := Exchanges{On: on, Species: []SpeciesExchange{}, Warnings: []string{founderWarning}}
	for _, p := range r.Collection.Species {
		if w.Species != "" && w.Species != p.ID {
			continue
		}
		l := r.line(on, p.ID, w)
		if len(l.pool) > 0 {
			out.Species = append(out.Species, l.exchange(described))
		}
	}
	return out, nil
}

func (l *line) exchange(described []Outsider) SpeciesExchange {
	s := SpeciesExchange{Species: l.species, GeneDiversity: l.set.GeneDiversity()}
	stranger := l.join(newcomer{sex: collection.UnknownSex, kinship: make([]float64, l.room.Ancestry.Pedigree.Len()), self: 0.5})
	stranger.What = "an unrelated animal"
	s.Animals = append(s.Animals, stranger)
	for _, o := range described {
		if o.Species == l.species {
			e := l.join(l.room.newcomer(o))
			e.Name, e.What = o.Name, l.describe(o)
			s.Animals = append(s.Animals, e)
		}
	}
	for i := range l.room.Collection.Animals {
		a := &l.room.Collection.Animals[i]
		if status, since := a.Status(l.on); a.Species == l.species && status == collection.Left {
			p := l.room.Ancestry.Pedigree
			e := l.join(newcomer{sex: a.Sex, kinship: p.KinshipTo(i), self: (1 + p.Inbreeding(i)) / 2})
			e.ID, e.Name, e.What = a.ID, a.Name, fmt.Sprintf("left the room on %s", since)
			s.Animals = append(s.Animals, e)
		}
	}
	slices.SortStableFunc(s.Animals, func(a, b Exchange) int {
		return -cmp.Compare(level(a.WithYoung), level(b.WithYoung))
	})
	return s
}

// newcomer is an animal that joins a line.
type newcomer struct {
	sex     collection.Sex
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
		a := l.room.Ancestry.animal(mate)
		f := x.kinship[mate] // the inbreeding of their young
		if a.Sex == x.sex && a.Sex != collection.UnknownSex || f >= l.room.Collection.Rules.MaxInbreeding-1e-9 {
			continue
		}
		const young = exchangeYoung
		of := (1 + l.room.Ancestry.Pedigree.Inbreeding(mate)) / 2 // the mate with itself
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
func (r *Room) newcomer(o Outsider) newcomer {
	p := r.Ancestry.Pedigree
	x := newcomer{sex: o.Sex, kinship: make([]float64, p.Len()), self: (1 + o.Inbreeding) / 2}
	for _, parent := range []string{o.Sire, o.Dam} {
		if parent == "" {
			continue
		}
		for i, f := range p.KinshipTo(r.number(parent)) {
			x.kinship[i] += f / 2
		}
	}
	if o.Sire != "" && o.Dam != "" {
		x.self = (1 + p.Kinship(r.number(o.Sire), r.number(o.Dam))) / 2
	}
	return x
}
