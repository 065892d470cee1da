package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func kinCommand(a *app) *cobra.Command {
	var all bool
	var parents string
	c := &cobra.Command{
		Use:   "kin [ANIMAL [ANIMAL]]",
		Short: "inbreeding of all, the relatives of one, how two are related",
		Long: `kin without an animal lists inbreeding and mean kinship of all animals in the
room. With one animal it lists the others of the species, the least related
first. With two it tells their kinship, which is the inbreeding coefficient that
their young would have, and the ancestors that it comes from.

With --pedigree it works on a plain table of parents with the columns id, sire
and dam, in any order.`,
		Example: `  spawnwright kin
  spawnwright kin AC-14
  spawnwright kin AC-14 AC-21
  spawnwright kin --pedigree herd.csv 17 23`,
		Args:              atMost(2, "animals"),
		ValidArgsFunction: a.completeAnimals(2),
		RunE: func(_ *cobra.Command, args []string) error {
			if all && len(args) > 0 {
				return usagef("--all lists all animals, so name none with it")
			}
			on, err := a.on()
			if err != nil {
				return err
			}
			ancestry, kin, err := a.ancestry(parents, on)
			if err != nil {
				return err
			}
			switch len(args) {
			case 1:
				return a.showRelatives(ancestry, args[0], on)
			case 2:
				return a.showPair(ancestry, args[0], args[1])
			}
			return a.showKin(kin(), all || parents != "")
		},
	}
	c.Flags().BoolVar(&all, "all", false, "also list animals that died or left")
	pedigreeFlag(c, &parents)
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

func pedigreeFlag(c *cobra.Command, parents *string) {
	c.Flags().StringVar(parents, "pedigree", "", "read parents from this table, a CSV `FILE`, instead of the keeper's file; - reads standard input")
}

// ancestry opens the keeper's file or a plain table of parents.
func (a *app) ancestry(parents string, on civil.Date) (*frogroom.Ancestry, func() frogroom.Kin, error) {
	if parents == "" {
		room, err := a.open()
		if err != nil {
			return nil, nil, err
		}
		return room.Ancestry, func() frogroom.Kin { return room.Kin(on) }, nil
	}
	name, in := "standard input", a.stdin
	if parents != "-" {
		f, err := os.Open(parents)
		if err != nil {
			return nil, nil, fileError(err)
		}
		defer f.Close()
		a.inputs = append(a.inputs, parents)
		name, in = parents, f
	}
	data, err := io.ReadAll(in)
	if err != nil {
		return nil, nil, fileError(err)
	}
	ancestry, err := frogroom.ReadPedigree(bytes.NewReader(data))
	if err != nil {
		return nil, nil, a.badTable(name, err)
	}
	return ancestry, ancestry.Kin, nil
}

// badTable shows all that is wrong with a table of parents, each with its place.
func (a *app) badTable(name string, err error) error {
	list := []error{err}
	var joined interface{ Unwrap() []error }
	if errors.As(err, &joined) {
		list = joined.Unwrap()
	}
	var problems strictyaml.Diagnostics
	for _, e := range list {
		d := strictyaml.Diagnostic{File: name, Severity: strictyaml.Error, Message: strings.TrimPrefix(e.Error(), "pedigree: ")}
		var at *pedigree.TableError
		if errors.As(e, &at) {
			d.Line, d.Column, d.Message = at.Line, at.Column, at.Message
		}
		problems = append(problems, d)
	}
	a.print(problems)
	return &exitError{code: exitInput}
}

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

func (a *app) showPair(ancestry *frogroom.Ancestry, one, other string) error {
	p, err := ancestry.Pair(one, other)
	if err != nil {
		return unknownID(err)
	}
	title := fmt.Sprintf("%s and %s: kinship %s", p.A, p.B, coefficient(p.Kinship, p.Expected))
	if len(p.Shared) > 0 {
		title += ", through:"
	}
	t := &table.Table{Title: title, Empty: "No shared ancestor is known.", Columns: []table.Column{{Name: "shared ancestor"}, {Name: "name"}, {Name: "share", Right: true}}}
	for _, s := range p.Shared {
		t.Add(s.ID, s.Name, coefficient(s.Share, false))
	}
	if marked(p.Kinship, p.Expected) {
		a.warn([]string{markWarning})
	}
	a.warn(p.Warnings)
	return a.show("pair", p, t)
}

// coefficient writes a probability; a ~ marks a mean over possible parents.
func coefficient(x float64, expected bool) string {
	x = math.Round(x*1e9) / 1e9 // two ways to the same sum can differ in the last bit
	if marked(x, expected) {
		return fmt.Sprintf("~%.4f", x)
	}
	return fmt.Sprintf("%.4f", x)
}

// marked reports whether a probability gets the mark of a mean. A mean of 0
// needs none, for then it is 0 whoever the parents are.
func marked(x float64, expected bool) bool { return expected && x > 0 }

const markWarning = "values marked ~ are expectations: a parent or ancestor is one of several"

// unknownID ends a command for an id that is not in the input, or a pairing
// that cannot be planned.
func unknownID(err error) error {
	var (
		animal *frogroom.UnknownAnimalError
		clutch *frogroom.UnknownClutchError
		pair   *frogroom.UnknownPairingError
		cycle  *frogroom.NoCycleError
	)
	switch {
	case errors.As(err, &animal):
		return &exitError{exitUsage, err, "`spawnwright kin --all` lists the animals"}
	case errors.As(err, &clutch):
		return &exitError{exitUsage, err, "`spawnwright clutch` lists the clutches that are running"}
	case errors.As(err, &pair):
		return &exitError{exitUsage, err, "`spawnwright season` lists the pairings"}
	case errors.As(err, &cycle):
		return &exitError{code: exitNoPlan, err: err}
	}
	return inputError(err)
}
