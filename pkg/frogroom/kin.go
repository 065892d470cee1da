package frogroom

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Kin is how inbred and how related the animals are.
type Kin struct {
	On      civil.Date `json:"on,omitempty"` // unknown for a plain table
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
	Status     collection.Status `json:"status"`     // or [NotYet]
	Generation int               `json:"generation"` // longest way to a founder
	Inbreeding float64           `json:"inbreeding"`
	// MeanKinship is the mean of the kinships with all living animals of the
	// species, itself included when it is one; 0 when there are none.
	MeanKinship float64 `json:"mean_kinship"`
	// CompleteGenerations is the equivalent number of generations of ancestors
	// that are known (Maignel, Boichard and Verrier 1996).
	CompleteGenerations float64 `json:"complete_generations"`
	// Expected is true when a parent or ancestor is one of several, so that
	// the values are means over the possible parents.
	Expected bool `json:"expected"`
}

// Kin gives inbreeding and mean kinship of all animals, in the order of the
// file, those that are gone included. Mean kinship is to the animals of the
// species that are in the room on that day.
func (r *Room) Kin(on civil.Date) Kin {
	mustKnow(on)
	k := r.Ancestry.rows(on)
	members := make(map[string][]int)
	for i := range k.Animals {
		members[k.Animals[i].Species] = append(members[k.Animals[i].Species], i)
	}
	for _, p := range r.Collection.Species {
		r.Ancestry.group(&k, p.ID, members[p.ID])
	}
	return k
}

// Kin gives inbreeding and mean kinship of all animals of a plain table. All
// of them count as living.
func (a *Ancestry) Kin() Kin {
	k := a.rows(0)
	all := make([]int, a.Pedigree.Len())
	for i := range all {
		all[i] = i
	}
	a.group(&k, "", all)
	return k
}

// rows gives a row for each animal, without its mean kinship.
func (a *Ancestry) rows(on civil.Date) Kin {
	k := Kin{On: on, Groups: []KinGroup{}, Animals: make([]KinRow, a.Pedigree.Len())}
	for i := range k.Animals {
		animal := a.animal(i)
		k.Animals[i] = KinRow{
			ID: animal.ID, Name: animal.Name, Species: animal.Species, Sex: animal.Sex,
			Status:              a.status(i, on),
			Generation:          a.Pedigree.Generation(i),
			Inbreeding:          a.Pedigree.Inbreeding(i),
			CompleteGenerations: a.Pedigree.CompleteGenerations(i),
			Expected:            a.Pedigree.Uncertain(i),
		}
	}
	if slices.ContainsFunc(k.Animals, func(r KinRow) bool { return r.Expected }) {
		k.Warnings = append(k.Warnings, "values marked ~ are expectations: a parent or ancestor is one of several")
	}
	k.Warnings = append(k.Warnings, founderWarning)
	return k
}

// group adds the living ones among the members of a species to k, and gives
// all members their mean kinship with these. Without living ones it adds nothing.
func (a *Ancestry) group(k *Kin, species string, members []int) {
	var living []int
	for _, i := range members {
		if k.Animals[i].Status == collection.Here {
			living = append(living, i)
		}
	}
	if len(living) == 0 {
		return
	}
	mean := a.Pedigree.MeanKinship(living)
	for _, i := range members {
		k.Animals[i].MeanKinship = mean[i]
	}
	g := KinGroup{Species: species, Living: len(living)}
	for _, i := range living {
		g.MeanKinship += mean[i] / float64(len(living))
	}
	g.GeneDiversity = 1 - g.MeanKinship
	k.Groups = append(k.Groups, g)
}

// founderWarning goes with every kinship.
const founderWarning = "animals without recorded parents count as unrelated, so kinship and inbreeding are lower bounds"
