package kin

import (
	"iter"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// List is how inbred and how related the animals are.
type List struct {
	On      civil.Date `json:"on,omitempty"` // unknown for a plain table
	Groups  []Group    `json:"groups"`
	Animals []Row      `json:"animals"`
	// Warnings say what the numbers leave out.
	Warnings []string `json:"warnings,omitempty"`
}

// Group is the living animals of one species.
type Group struct {
	Species       string  `json:"species,omitempty"` // empty for a plain table
	Living        int     `json:"living"`
	MeanKinship   float64 `json:"mean_kinship"`
	GeneDiversity float64 `json:"gene_diversity"` // share of what unrelated founders would hold
}

// Row is one animal with its figures, and with what the file says of it.
type Row struct {
	ID         string            `json:"id"`
	Name       string            `json:"name,omitempty"`
	Species    string            `json:"species,omitempty"`
	Sex        collection.Sex    `json:"sex"`
	Sire       string            `json:"sire,omitempty"` // id; of one of several all ids, with | between them
	Dam        string            `json:"dam,omitempty"`  // likewise
	Status     collection.Status `json:"status"`         // or [NotYet]
	Generation int               `json:"generation"`     // longest way to a founder
	Inbreeding float64           `json:"inbreeding"`
	// MeanKinship is the mean of the kinships with all living animals of the
	// species, itself included when it is one; 0 when there are none.
	MeanKinship float64 `json:"mean_kinship"`
	// CompleteGenerations is the equivalent number of generations of ancestors
	// that are known (Maignel, Boichard and Verrier 1996).
	CompleteGenerations float64 `json:"complete_generations"`
	// KnownAncestry is the share of its genes that comes from known founders.
	KnownAncestry float64 `json:"known_ancestry"`
	// Expected is true when a parent or ancestor is one of several, so that
	// the values are means over the possible parents.
	Expected bool `json:"expected"`
}

// List gives inbreeding and mean kinship of all animals, in the order of the file,
// those that are gone included. Mean kinship is to the living animals of the
// species, whose numbers are given; nil stands for those that are in the room on
// that day, or for all of a plain table.
func (a *Ancestry) List(on civil.Date, living []int) List {
	groups := a.groups(on, living)
	k := List{On: on, Groups: []Group{}, Animals: make([]Row, 0, a.Pedigree.Len())}
	if a.Table != nil {
		k.On = 0
	}
	for _, g := range groups {
		k.Groups = append(k.Groups, g.figures())
	}
	k.Animals = slices.AppendSeq(k.Animals, a.rows(on, groups))
	k.Warnings = a.Warnings()
	return k
}

// Warnings says what the numbers of [Ancestry.List] leave out.
func (a *Ancestry) Warnings() (warnings []string) {
	for i := range a.Pedigree.Len() {
		if a.Table == nil && a.Pedigree.Uncertain(i) {
			warnings = append(warnings, ExpectedWarning)
			break
		}
	}
	return append(warnings, pedigree.FounderWarning)
}

// Rows gives the rows of [Ancestry.List] one after the other, for tables so
// long that nobody wants to hold them. They are computed anew each time.
func (a *Ancestry) Rows(on civil.Date, living []int) iter.Seq[Row] {
	return a.rows(on, a.groups(on, living))
}

func (a *Ancestry) rows(on civil.Date, groups []group) iter.Seq[Row] {
	mean := make(map[string][]float64, len(groups))
	for _, g := range groups {
		mean[g.species] = g.mean
	}
	return func(yield func(Row) bool) {
		for i := range a.Pedigree.Len() {
			row := a.row(i, on)
			if m, ok := mean[row.Species]; ok {
				row.MeanKinship = m[i]
			}
			if !yield(row) {
				return
			}
		}
	}
}

// row gives all of an animal but its mean kinship.
func (a *Ancestry) row(i int, on civil.Date) Row {
	row := Row{
		ID: a.Pedigree.ID(i), Sex: collection.UnknownSex, Status: collection.Here,
		Generation:          a.Pedigree.Generation(i),
		Inbreeding:          a.Pedigree.Inbreeding(i),
		CompleteGenerations: a.Pedigree.CompleteGenerations(i),
		KnownAncestry:       a.Pedigree.KnownAncestry(i),
		Expected:            a.Pedigree.Uncertain(i),
	}
	if a.Table != nil {
		row.Sire, row.Dam = a.Table.Records[i].Sire, a.Table.Records[i].Dam
		return row
	}
	animal := &a.animals[i]
	row.Name, row.Species, row.Sex, row.Status = animal.Name, animal.Species, animal.Sex, a.Status(i, on)
	row.Sire, row.Dam = strings.Join(animal.Sires, "|"), strings.Join(animal.Dams, "|")
	return row
}

// group is the living animals of a species.
type group struct {
	species string
	living  []int
	mean    []float64 // mean kinship of every animal of the pedigree to them
}

// groups gives the living animals of each species with the mean kinships.
func (a *Ancestry) groups(on civil.Date, living []int) []group {
	groups := a.members(on, living)
	for i := range groups {
		groups[i].mean = a.Pedigree.MeanKinship(groups[i].living)
	}
	return groups
}

// members sorts the living animals by species, in the order of the collection. A
// species without any is left out.
func (a *Ancestry) members(on civil.Date, living []int) (groups []group) {
	if living == nil {
		living = a.Living(on)
	}
	if a.Table != nil {
		if len(living) > 0 {
			groups = append(groups, group{living: living})
		}
		return groups
	}
	members := make(map[string][]int)
	for _, i := range living {
		members[a.animals[i].Species] = append(members[a.animals[i].Species], i)
	}
	for _, s := range a.species {
		if m := members[s]; len(m) > 0 {
			groups = append(groups, group{species: s, living: m})
		}
	}
	return groups
}

// figures gives mean kinship and gene diversity of the group itself.
func (g group) figures() Group {
	k := Group{Species: g.species, Living: len(g.living)}
	for _, i := range g.living {
		k.MeanKinship += g.mean[i] / float64(len(g.living))
	}
	k.GeneDiversity = 1 - k.MeanKinship
	return k
}

// Living gives the numbers of the animals that are in the room on a day; of a
// plain table, of all. An unknown day stands for the end of the records.
func (a *Ancestry) Living(on civil.Date) []int {
	var living []int
	for i := range a.Pedigree.Len() {
		if a.Status(i, on) == collection.Here {
			living = append(living, i)
		}
	}
	return living
}

// ExpectedWarning goes with values that are means over possible parents, where
// these are marked with a ~.
const ExpectedWarning = "values marked ~ are expectations: a parent or ancestor is one of several"
