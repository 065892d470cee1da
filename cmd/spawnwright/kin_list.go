package main

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func (a *app) showKin(k frogroom.Kin, all bool) error {
	rows := &table.Table{Empty: "There is no animal to list.", Columns: []table.Column{
		{Name: "id"},
		{Name: "name"},
		{Name: "sex"},
		{Name: "generation", Right: true},
		{Name: "inbreeding", Right: true},
		{Name: "mean kinship", Right: true},
		{Name: "known generations", Right: true},
		{Name: "status"},
	}}
	shown := []frogroom.KinRow{}
	for _, r := range k.Animals {
		if all || r.Status == collection.Here {
			shown = append(shown, r)
			rows.Add(r.ID, r.Name, string(r.Sex), fmt.Sprint(r.Generation), coefficient(r.Inbreeding, r.Expected),
				coefficient(r.MeanKinship, false), fmt.Sprintf("%.2f", r.CompleteGenerations), string(r.Status))
		}
	}
	k.Animals = shown
	groups := &table.Table{Empty: "No animal is here.", Columns: []table.Column{
		{Name: "species"}, {Name: "living", Right: true}, {Name: "mean kinship", Right: true}, {Name: "gene diversity", Right: true},
	}}
	for _, g := range k.Groups {
		groups.Add(g.Species, fmt.Sprint(g.Living), coefficient(g.MeanKinship, false), coefficient(g.GeneDiversity, false))
	}
	a.warn(k.Warnings)
	return a.show("kin", k, rows, groups)
}

// bytesInRow is about what a row of the list takes as CSV.
const bytesInRow = 64

// writeKin writes the list of all animals as CSV, row by row.
func (a *app) writeKin(ancestry *frogroom.Ancestry, on civil.Date, living []int) error {
	columns := []string{"id", "sire", "dam", "inbreeding", "mean kinship", "complete generations", "known ancestry", "generation"}
	if ancestry.Table == nil {
		columns = append(columns, "expected", "name", "species", "sex", "status")
	}
	out := table.NewStream(bytesInRow*ancestry.Pedigree.Len(), columns...)
	for r := range ancestry.KinRows(on, living) {
		out.Text(r.ID)
		out.Text(r.Sire)
		out.Text(r.Dam)
		out.Number(r.Inbreeding)
		out.Number(r.MeanKinship)
		out.Number(r.CompleteGenerations)
		out.Number(r.KnownAncestry)
		out.Number(float64(r.Generation))
		if ancestry.Table == nil {
			out.Text(fmt.Sprint(r.Expected))
			out.Text(r.Name)
			out.Text(r.Species)
			out.Text(string(r.Sex))
			out.Text(string(r.Status))
		}
		out.End()
	}
	a.warn(ancestry.KinWarnings())
	return a.write(out.Bytes())
}

func (a *app) showRelatives(ancestry *frogroom.Ancestry, id string, on civil.Date) error {
	relatives, err := ancestry.Relatives(id, on)
	if err != nil {
		return unknownID(err)
	}
	t := &table.Table{
		Title:   "Kinship with " + id + ", the least related first",
		Empty:   "No other animal of its species is here.",
		Columns: []table.Column{{Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "kinship", Right: true}},
	}
	for _, r := range relatives {
		t.Add(r.ID, r.Name, string(r.Sex), coefficient(r.Kinship, r.Expected))
	}
	if slices.ContainsFunc(relatives, func(r frogroom.Relative) bool { return marked(r.Kinship, r.Expected) }) {
		a.warn([]string{markWarning})
	}
	return a.show("relatives", relatives, t)
}
