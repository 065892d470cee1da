package frogroom

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Kin is how inbred and how related the animals are.
type Kin struct {
	On      civil.Date `json:"on"`
	Groups  []KinGroup `json:"groups"`
	Animals []KinRow   `json:"animals"`
	// Warnings say what the numbers leave out.
	Warnings []string `json:"warnings,omitempty"`
}

// KinGroup is the living animals of one species.
type KinGroup struct {
	Species       string  `json:"species,omitempty"` // empty for a plain table
	Living        int     `json:"living"`
	MeanKinship   float64 `json:"mean_kinship"`
	GeneDiversity float64 `json:"gene_diversity"` // share of what unrelated founders would hold
}

// KinRow is one animal.
type KinRow struct {
	ID         string            `json:"id"`
	Name       string            `json:"name,omitempty"`
	Species    string            `json:"species,omitempty"`
	Sex        collection.Sex    `json:"sex"`
	Status     collection.Status `json:"status"`
	Generation int               `json:"generation"` // longest way to a founder
	Inbreeding float64           `json:"inbreeding"`
	// MeanKinship is the mean of the kinships with all living animals of the
	// species, itself included when it is one.
	MeanKinship float64 `json:"mean_kinship"`
	// CompleteGenerations is the equivalent number of generations of ancestors
	// that are known (Maignel, Boichard and Verrier 1996).
	CompleteGenerations float64 `json:"complete_generations"`
	// Expected is true when a parent or ancestor is one of several, so that
	// the values are means over the possible parents.
	Expected bool `json:"expected"`
}

// Kin gives inbreeding and mean kinship of all animals, those that are gone
// included. Mean kinship is to the animals of the species that are in the room
// on that day.
func (r *Room) Kin(on civil.Date) Kin {
	k := Kin{On: on}
	means := make(map[string][]float64)
	for _, p := range r.Collection.Species {
		living := r.living(p.ID, on)
		if len(living) > 0 {
			means[p.ID] = r.Ancestry.group(&k, p.ID, living)
		}
	}
	for i := range r.Collection.Animals {
		row := r.Ancestry.row(i, on)
		if mean, ok := means[row.Species]; ok {
			row.MeanKinship = mean[i]
		}
		k.Animals = append(k.Animals, row)
	}
	k.warn()
	return k
}

// Kin gives inbreeding and mean kinship of all animals of a plain table. All
// of them count as living.
func (a *Ancestry) Kin() Kin {
	var k Kin
	all := make([]int, a.Pedigree.Len())
	for i := range all {
		all[i] = i
	}
	if len(all) == 0 {
		return k
	}
	mean := a.group(&k, "", all)
	for i := range all {
		row := a.row(i, 0)
		row.MeanKinship = mean[i]
		k.Animals = append(k.Animals, row)
	}
	k.warn()
	return k
}

// group adds the living animals of a species to k, and gives the mean kinship
// of every animal of the pedigree to them.
func (a *Ancestry) group(k *Kin, species string, living []int) []float64 {
	mean := a.Pedigree.MeanKinship(living)
	g := KinGroup{Species: species, Living: len(living)}
	for _, i := range living {
		g.MeanKinship += mean[i] / float64(len(living))
	}
	g.GeneDiversity = 1 - g.MeanKinship
	k.Groups = append(k.Groups, g)
	return mean
}

func (a *Ancestry) row(i int, on civil.Date) KinRow {
	animal := a.animal(i)
	status, _ := animal.Status(on)
	return KinRow{
		ID: animal.ID, Name: animal.Name, Species: animal.Species, Sex: animal.Sex, Status: status,
		Generation:          a.Pedigree.Generation(i),
		Inbreeding:          a.Pedigree.Inbreeding(i),
		CompleteGenerations: a.Pedigree.CompleteGenerations(i),
		Expected:            a.Pedigree.Uncertain(i),
	}
}

func (k *Kin) warn() {
	if slices.ContainsFunc(k.Animals, func(r KinRow) bool { return r.Expected }) {
		k.Warnings = append(k.Warnings, "values marked ~ are expectations: a parent or ancestor is one of several")
	}
	k.Warnings = append(k.Warnings, founderWarning)
}

// founderWarning goes with every kinship.
const founderWarning = "animals without recorded parents count as unrelated, so kinship and inbreeding are lower bounds"

// Pair is how two animals are related.
type Pair struct {
	A       string  `json:"a"`
	B       string  `json:"b"`
	Kinship float64 `json:"kinship"` // also the inbreeding coefficient of their young, if they can have any
	// Shared are the ancestors that both have, by Wright's path rule; their
	// shares add up to Kinship. The two animals themselves can be among them.
	Shared   []Shared `json:"shared"`
	Expected bool     `json:"expected"`
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
	ID      string         `json:"id"`
	Name    string         `json:"name,omitempty"`
	Sex     collection.Sex `json:"sex"`
	Kinship float64        `json:"kinship"`
}

// Relatives gives the kinship of an animal with every other of its species that
// is in the room, the least related first; for a plain table with all.
// The error is an *[UnknownAnimalError].
func (a *Ancestry) Relatives(id string, on civil.Date) ([]Relative, error) {
	i, err := a.number(id)
	if err != nil {
		return nil, err
	}
	self := a.animal(i)
	var out []Relative
	for j, f := range a.Pedigree.KinshipTo(i) {
		other := a.animal(j)
		if status, _ := other.Status(on); j == i || other.Species != self.Species || status != collection.Here {
			continue
		}
		out = append(out, Relative{ID: other.ID, Name: other.Name, Sex: other.Sex, Kinship: f})
	}
	slices.SortFunc(out, func(x, y Relative) int {
		return cmp.Or(cmp.Compare(x.Kinship, y.Kinship), cmp.Compare(x.ID, y.ID))
	})
	return out, nil
}
