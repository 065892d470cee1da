package main

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// showKin lists animals for people, or all that is known of them as JSON. A plain
// table has neither names nor species, and all of its animals are listed.
func (a *app) showKin(k kin.List, all, plain bool) error {
	if !all && !plain {
		k.Animals = slices.DeleteFunc(k.Animals, func(r kin.Row) bool { return r.Status != collection.Here })
	}
	a.warn(k.Warnings)
	animals, groups := animalTable(k), groupTable(k)
	if plain {
		animals.Drop("name", "sex", "status")
		groups.Drop("species")
	} else {
		animals.Drop("sire", "dam")
	}
	return a.show("kin", k, animals, groups)
}

func animalTable(k kin.List) *table.Table {
	t := &table.Table{Empty: "There is no animal to list.", Columns: []table.Column{
		{Name: "id"},
		{Name: "name"},
		{Name: "sex"},
		{Name: "sire"},
		{Name: "dam"},
		{Name: "generation", Right: true},
		{Name: "inbreeding", Right: true},
		{Name: "mean kinship", Right: true},
		{Name: "known generations", Right: true},
		{Name: "status"},
	}}
	for _, r := range k.Animals {
		t.Add(r.ID, r.Name, string(r.Sex), r.Sire, r.Dam, fmt.Sprint(r.Generation), coefficient(r.Inbreeding, r.Expected),
			coefficient(r.MeanKinship, false), fmt.Sprintf("%.2f", r.CompleteGenerations), string(r.Status))
	}
	return t
}

func groupTable(k kin.List) *table.Table {
	t := &table.Table{Empty: "No animal is here.", Columns: []table.Column{
		{Name: "species"}, {Name: "living", Right: true}, {Name: "mean kinship", Right: true}, {Name: "gene diversity", Right: true},
	}}
	for _, g := range k.Groups {
		t.Add(g.Species, fmt.Sprint(g.Living), coefficient(g.MeanKinship, false), coefficient(g.GeneDiversity, false))
	}
	return t
}

// bytesInRow is about what a row of the list takes as CSV.
const bytesInRow = 64

// writeKin writes the list of all animals as CSV, row by row.
func (a *app) writeKin(ancestry *kin.Ancestry, on civil.Date, living []int) error {
	columns := []string{"id", "sire", "dam", "inbreeding", "mean kinship", "complete generations", "known ancestry", "generation"}
	if ancestry.Table == nil {
		columns = append(columns, "expected", "name", "species", "sex", "status")
	}
	out := table.NewStream(bytesInRow*ancestry.Pedigree.Len(), columns...)
	for r := range ancestry.Rows(on, living) {
		out.Text(r.ID, r.Sire, r.Dam)
		out.Number(r.Inbreeding, r.MeanKinship, r.CompleteGenerations, r.KnownAncestry, float64(r.Generation))
		if ancestry.Table == nil {
			out.Text(fmt.Sprint(r.Expected), r.Name, r.Species, string(r.Sex), string(r.Status))
		}
		out.End()
	}
	a.warn(ancestry.Warnings())
	return a.write(out.Bytes())
}

func (a *app) showRelatives(ancestry *kin.Ancestry, id string, on civil.Date) error {
	relatives, err := ancestry.Relatives(id, on)
	if err != nil {
		return unknownID(err)
	}
	if slices.ContainsFunc(relatives, func(r kin.Relative) bool { return marked(r.Kinship, r.Expected) }) {
		a.warn([]string{kin.ExpectedWarning})
	}
	if a.format == "csv" {
		return a.writeRelatives(id, relatives)
	}
	t := &table.Table{
		Title:   "Kinship with " + id + ", the least related first",
		Empty:   "No other animal of its species is here.",
		Columns: []table.Column{{Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "kinship", Right: true}},
	}
	for _, r := range relatives {
		t.Add(r.ID, r.Name, string(r.Sex), coefficient(r.Kinship, r.Expected))
	}
	if ancestry.Table != nil {
		t.Drop("name", "sex")
	}
	return a.show("relatives", relatives, t)
}

// writeRelatives writes a row for each relative, with all digits.
func (a *app) writeRelatives(id string, relatives []kin.Relative) error {
	out := table.NewStream(bytesInRow*len(relatives), "id", "name", "sex", "kinship", "expected", "with")
	for _, r := range relatives {
		out.Text(r.ID, r.Name, string(r.Sex))
		out.Number(r.Kinship)
		out.Text(fmt.Sprint(r.Expected), id)
		out.End()
	}
	return a.write(out.Bytes())
}
