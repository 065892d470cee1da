package kin

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Pair is how two animals are related.
type Pair struct {
	A       string  `json:"a"`
	B       string  `json:"b"`
	Kinship float64 `json:"kinship"`
	// YoungInbreeding is the inbreeding coefficient to expect in their young, if
	// they can have any. It equals Kinship.
	YoungInbreeding float64 `json:"young_inbreeding"`
	// Least and Greatest are the ends of what Kinship can be when it is a mean over
	// possible parents; nil when it is none, or when the ways are too many.
	Least    *float64 `json:"least,omitempty"`
	Greatest *float64 `json:"greatest,omitempty"`
	// Relationship says it in words, as "half siblings through AC-04 (Bram), and
	// also second cousins".
	Relationship string `json:"relationship"`
	// Shared are the ancestors that both have, by Wright's path rule; their
	// shares add up to Kinship. The two animals themselves can be among them.
	Shared   []Shared `json:"shared"`
	Expected bool     `json:"expected"` // a mean over possible parents
	Warnings []string `json:"warnings,omitempty"`
}

// Shared is an ancestor that two animals share, and its part of their kinship.
type Shared struct {
	ID        string  `json:"id"`
	Name      string  `json:"name,omitempty"`
	Share     float64 `json:"share"`
	PathCount uint64  `json:"path_count"`
	Paths     []Path  `json:"paths"` // the strongest first; fewer than PathCount when there are many
}

// Path is a way by which one gene can have come down to two animals.
type Path struct {
	Up    []string `json:"up"`   // ids from the first animal to the ancestor
	Down  []string `json:"down"` // ids from the ancestor to the second animal
	Share float64  `json:"share"`
}

// pathsTold is how many paths a [Pair] has, over all ancestors.
const pathsTold = 50

// Pair tells how two animals are related. The error is a *[collection.UnknownError].
func (a *Ancestry) Pair(idA, idB string) (Pair, error) {
	i, err := a.Number(idA)
	if err != nil {
		return Pair{}, err
	}
	j, err := a.Number(idB)
	if err != nil {
		return Pair{}, err
	}
	e := a.Pedigree.Explain(i, j, pathsTold)
	p := Pair{
		A: idA, B: idB,
		Kinship: e.Kinship, YoungInbreeding: e.Kinship,
		Relationship: e.Words(a.calledBy),
		Shared:       []Shared{},
		Expected:     a.Pedigree.Uncertain(i) || a.Pedigree.Uncertain(j),
		Warnings:     []string{pedigree.FounderWarning},
	}
	switch one, other := a.Animal(i), a.Animal(j); {
	case i == j:
		p.Warnings = append(p.Warnings, "an animal has no young with itself")
	case one.Species != other.Species:
		p.Warnings = append(p.Warnings, fmt.Sprintf("%s is %s and %s is %s: two species are not paired", idA, one.Species, idB, other.Species))
	}
	if low, high, ok := a.Pedigree.KinshipRange(i, j); ok && p.Expected {
		p.Least, p.Greatest = &low, &high
	}
	for _, x := range e.Ancestors {
		s := Shared{ID: a.Pedigree.ID(x.Animal), Name: a.Animal(x.Animal).Name, Share: x.Share, PathCount: x.PathCount, Paths: []Path{}}
		for _, path := range x.Paths {
			s.Paths = append(s.Paths, Path{Up: a.idsOf(path.Up), Down: a.idsOf(path.Down), Share: path.Share})
		}
		p.Shared = append(p.Shared, s)
	}
	return p, nil
}

// calledBy gives an id and, where there is one, the name.
func (a *Ancestry) calledBy(i int) string {
	if name := a.Animal(i).Name; name != "" {
		return a.Pedigree.ID(i) + " (" + name + ")"
	}
	return a.Pedigree.ID(i)
}

func (a *Ancestry) idsOf(numbers []int) []string {
	ids := make([]string, len(numbers))
	for k, i := range numbers {
		ids[k] = a.Pedigree.ID(i)
	}
	return ids
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
// for the end of the records. The error is a *[collection.UnknownError].
func (a *Ancestry) Relatives(id string, on civil.Date) ([]Relative, error) {
	i, err := a.Number(id)
	if err != nil {
		return nil, err
	}
	self := a.Animal(i)
	out := []Relative{}
	for j, f := range a.Pedigree.KinshipTo(i) {
		other := a.Animal(j)
		if j == i || other.Species != self.Species || a.Status(j, on) != collection.Here {
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
