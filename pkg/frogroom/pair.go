package frogroom

import (
	"cmp"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Pair is how two animals are related.
type Pair struct {
	A       string  `json:"a"`
	B       string  `json:"b"`
	Kinship float64 `json:"kinship"` // also the inbreeding coefficient of their young, if they can have any
	// Shared are the ancestors that both have, by Wright's path rule; their
	// shares add up to Kinship. The two animals themselves can be among them.
	Shared   []Shared `json:"shared"`
	Expected bool     `json:"expected"` // a mean over possible parents
	Warnings []string `json:"warnings,omitempty"`
}

// Shared is an ancestor that two animals share, and its part of their kinship.
type Shared struct {
	ID    string  `json:"id"`
	Name  string  `json:"name,omitempty"`
	Share float64 `json:"share"`
}

// Pair tells how two animals are related. The error is an *[UnknownAnimalError].
func (a *Ancestry) Pair(idA, idB string) (Pair, error) {
	i, err := a.number(idA)
	if err != nil {
		return Pair{}, err
	}
	j, err := a.number(idB)
	if err != nil {
		return Pair{}, err
	}
	p := Pair{
		A: idA, B: idB,
		Kinship:  a.Pedigree.Kinship(i, j),
		Shared:   []Shared{},
		Expected: a.Pedigree.Uncertain(i) || a.Pedigree.Uncertain(j),
		Warnings: []string{founderWarning},
	}
	for _, s := range a.Pedigree.SharedAncestors(i, j) {
		p.Shared = append(p.Shared, Shared{ID: a.Pedigree.ID(s.Animal), Name: a.animal(s.Animal).Name, Share: s.Share})
	}
	return p, nil
}

// Relative is one animal as another one's relative.
type Relative struct {
	ID       string         `json:"id"`
	Name     string         `json:"name,omitempty"`
	Sex      collection.Sex `json:"sex"`
	Kinship  float64        `json:"kinship"`
	Expected bool           `json:"expected"` // a mean over possible parents
}

// Relatives gives the kinship of an animal with every other of its species that
// is in the room, the least related first; for a plain table with all. Kinships
// closer than 1e-9 count as equal, and these are by id. An unknown day stands
// for the end of the records. The error is an *[UnknownAnimalError].
func (a *Ancestry) Relatives(id string, on civil.Date) ([]Relative, error) {
	i, err := a.number(id)
	if err != nil {
		return nil, err
	}
	self := a.animal(i)
	out := []Relative{}
	for j, f := range a.Pedigree.KinshipTo(i) {
		other := a.animal(j)
		if j == i || other.Species != self.Species || a.status(j, on) != collection.Here {
			continue
		}
		out = append(out, Relative{
			ID: other.ID, Name: other.Name, Sex: other.Sex, Kinship: f,
			Expected: a.Pedigree.Uncertain(i) || a.Pedigree.Uncertain(j),
		})
	}
	slices.SortFunc(out, func(x, y Relative) int {
		return cmp.Or(cmp.Compare(level(x.Kinship), level(y.Kinship)), cmp.Compare(x.ID, y.ID))
	})
	return out, nil
}

// level takes from a kinship what sums in another order differ by.
func level(x float64) float64 { return math.Round(x * 1e9) }
