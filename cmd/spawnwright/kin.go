package main

import (
	"errors"
	"fmt"
	"math"
	"os"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func kinCommand(a *app) *cobra.Command {
	var all bool
	var pedigree string
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
		Args:              cobra.MaximumNArgs(2),
		ValidArgsFunction: a.completeAnimals(2),
		RunE: func(_ *cobra.Command, args []string) error {
			on, err := a.on()
			if err != nil {
				return err
			}
			ancestry, kin, err := a.ancestry(pedigree, on)
			if err != nil {
				return err
			}
			switch len(args) {
			case 1:
				return a.showRelatives(ancestry, args[0], on)
			case 2:
				return a.showPair(ancestry, args[0], args[1])
			}
			return a.showKin(kin(), all || pedigree != "")
		},
	}
	c.Flags().BoolVar(&all, "all", false, "also list animals that died or left")
	c.Flags().StringVar(&pedigree, "pedigree", "", "read parents from this table (CSV) instead of the keeper's file")
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

// ancestry opens the keeper's file or a plain table of parents.
func (a *app) ancestry(table string, on civil.Date) (*frogroom.Ancestry, func() frogroom.Kin, error) {
	if table == "" {
		room, err := a.open()
		if err != nil {
			return nil, nil, err
		}
		return room.Ancestry, func() frogroom.Kin { return room.Kin(on) }, nil
	}
	in := a.stdin
	if table != "-" {
		f, err := os.Open(table)
		if err != nil {
			return nil, nil, fileError(err)
		}
		defer f.Close()
		in = f
	}
	ancestry, err := frogroom.ReadPedigree(in)
	if err != nil {
		return nil, nil, inputError(fmt.Errorf("%s: %w", table, err))
	}
	return ancestry, ancestry.Kin, nil
}

func (a *app) showKin(k frogroom.Kin, all bool) error {
	rows := &table.Table{Columns: []table.Column{
		{Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "generation", Right: true}, {Name: "inbreeding", Right: true},
		{Name: "mean kinship", Right: true}, {Name: "known generations", Right: true}, {Name: "status"},
	}}
	shown := k.Animals[:0:0]
	for _, r := range k.Animals {
		if all || r.Status == collection.Here {
			shown = append(shown, r)
			rows.Add(r.ID, r.Name, string(r.Sex), fmt.Sprint(r.Generation), coefficient(r.Inbreeding, r.Expected),
				coefficient(r.MeanKinship, false), fmt.Sprintf("%.2f", r.CompleteGenerations), string(r.Status))
		}
	}
	k.Animals = shown
	groups := &table.Table{Columns: []table.Column{
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
		Columns: []table.Column{{Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "kinship", Right: true}},
	}
	for _, r := range relatives {
		t.Add(r.ID, r.Name, string(r.Sex), coefficient(r.Kinship, false))
	}
	return a.show("relatives", relatives, t)
}

func (a *app) showPair(ancestry *frogroom.Ancestry, one, other string) error {
	p, err := ancestry.Pair(one, other)
	if err != nil {
		return unknownID(err)
	}
	title := fmt.Sprintf("%s and %s: kinship %s", p.A, p.B, coefficient(p.Kinship, p.Expected))
	if len(p.Shared) == 0 {
		title += ", no shared ancestor is known"
	} else {
		title += ", through:"
	}
	t := &table.Table{Title: title, Columns: []table.Column{{Name: "shared ancestor"}, {Name: "name"}, {Name: "share", Right: true}}}
	for _, s := range p.Shared {
		t.Add(s.ID, s.Name, coefficient(s.Share, false))
	}
	a.warn(p.Warnings)
	return a.show("pair", p, t)
}

// coefficient writes a probability; a ~ marks a mean over possible parents. A
// mean of 0 needs no mark, for then it is 0 whoever the parents are.
func coefficient(x float64, expected bool) string {
	x = math.Round(x*1e9) / 1e9 // two ways to the same sum can differ in the last bit
	if expected && x > 0 {
		return fmt.Sprintf("~%.4f", x)
	}
	return fmt.Sprintf("%.4f", x)
}

// unknownID ends a command for an id that is not in the input.
func unknownID(err error) error {
	var (
		animal *frogroom.UnknownAnimalError
		clutch *frogroom.UnknownClutchError
		pair   *frogroom.UnknownPairingError
	)
	if errors.As(err, &animal) || errors.As(err, &clutch) || errors.As(err, &pair) {
		return usage(err)
	}
	return inputError(err)
}
