package main

import (
	"errors"
	"fmt"
	"io"
	"math"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/picture"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func kinCommand(a *app) *cobra.Command {
	var k kinFlags
	c := &cobra.Command{
		Use:   "kin [ANIMAL [ANIMAL]]",
		Short: "inbreeding of all, the relatives of one, how two are related",
		Long: `kin without an animal lists inbreeding and mean kinship of all animals in the
room. With one animal it lists the others of the species, the least related
first. With two, or --pair, it tells their kinship, which is the inbreeding
coefficient that their young would have, and how they are related. With --summary
it tells what a line is judged by: gene diversity, what is left of the founders,
effective size.

With --pedigree it works on a plain table of parents with the columns id, sire
and dam, its rows in any order. With --format csv there is a row for every animal,
in the order of the input, with all digits. With -o and a name that ends in .svg it
draws the living animals against each other.`,
		Example: `  spawnwright kin
  spawnwright kin AC-14
  spawnwright kin --pair AC-14 AC-21
  spawnwright kin --summary
  spawnwright kin -o kinship.svg
  spawnwright kin --pedigree herd.csv --format csv -o kin.csv
  spawnwright kin --pedigree herd.csv --columns id=Tier,sire=Vater,dam=Mutter --living living.txt`,
		Args:              atMost(2, "animals"),
		ValidArgsFunction: a.completeAnimals(2),
		RunE: func(c *cobra.Command, args []string) error {
			if err := k.check(args, c.Flags().Changed("drops") || c.Flags().Changed("seed")); err != nil {
				return err
			}
			return a.kin(&k, args)
		},
	}
	c.Flags().BoolVar(&k.all, "all", false, "also list animals that died or left, and those still to come")
	c.Flags().BoolVar(&k.pair, "pair", false, "how the two animals that are named are related")
	c.Flags().BoolVar(&k.summary, "summary", false, "what a line is judged by: inbreeding, gene diversity, founders, effective size")
	c.Flags().StringVar(&k.living, "living", "", "the animals that means and the summary are taken over, a `FILE` with an id a line; - reads standard input (default: all that neither died nor left)")
	c.Flags().IntVar(&k.drops.Count, "drops", 1000, "how often --summary plays heredity, a `NUMBER`, to count the founders' genes that are left")
	c.Flags().Uint64Var(&k.drops.Seed, "seed", 1, "where the chance of --drops begins, a `NUMBER`")
	k.table.register(c)
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c, ".svg")
	return c
}

type kinFlags struct {
	all, pair, summary bool
	living             string
	drops              diversity.Drops
	table              tableFlags
}

// check finds flags that do not go together.
func (k *kinFlags) check(args []string, drops bool) error {
	switch {
	case k.all && len(args) > 0:
		return usagef("--all lists all animals, so name none with it")
	case k.pair && len(args) != 2:
		return usagef("--pair takes two animals, such as --pair AC-14 AC-21, but got %d", len(args))
	case k.summary && (len(args) > 0 || k.all):
		return usagef("--summary is about the living animals together; --living says which these are")
	case k.living != "" && len(args) > 0:
		return usagef("--living is for the list of animals and for --summary")
	case k.living == "-" && (k.table.file == "-"):
		return usagef("--living and --pedigree cannot both read standard input")
	case drops && !k.summary:
		return usagef("--drops and --seed are for --summary")
	case k.drops.Count < 1:
		return usagef("--drops %d: there must be at least one", k.drops.Count)
	}
	return nil
}

func (a *app) kin(k *kinFlags, args []string) error {
	on, err := a.on()
	if err != nil {
		return err
	}
	if a.draws() && (k.summary || len(args) > 0) {
		return usagef("-o %s: only the whole list is drawn; name the file otherwise, or leave out animals and --summary", a.out)
	}
	ancestry, err := a.ancestry(&k.table)
	if err != nil {
		return err
	}
	switch len(args) {
	case 1:
		return a.showRelatives(ancestry, args[0], on)
	case 2:
		return a.showPair(ancestry, args[0], args[1])
	}
	living, err := a.living(k.living, ancestry)
	switch {
	case err != nil:
		return err
	case a.draws():
		return a.drawKin(ancestry, on, living)
	case k.summary:
		return a.showSummary(ancestry.Diversity(on, living, k.drops))
	case a.format == "csv":
		return a.writeKin(ancestry, on, living)
	}
	return a.showKin(ancestry.List(on, living), k.all, k.table.given())
}

// drawKin draws the living animals against each other.
func (a *app) drawKin(ancestry *kin.Ancestry, on civil.Date, living []int) error {
	squares, err := ancestry.Squares(on, living)
	if err != nil {
		return usagef("%v; name fewer with --living", err)
	}
	a.warn(ancestry.Warnings())
	return a.write(picture.Kinship(squares))
}

// living reads the list of living animals; without one it gives nil.
func (a *app) living(file string, ancestry *kin.Ancestry) (living []int, err error) {
	if file == "" {
		return nil, nil
	}
	err = a.input(file, func(name string, r io.Reader) error {
		numbers, warnings, err := ancestry.ReadLiving(r)
		if err != nil {
			return a.badTable(name, err)
		}
		a.printTable(name, strictyaml.Warning, warnings, 0)
		living = numbers
		return nil
	})
	return living, err
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

// lists says where the ids of a kind are listed.
var lists = map[string]string{
	"animal":  "`spawnwright kin --all` lists the animals",
	"clutch":  "`spawnwright clutch` lists the clutches that are running",
	"pairing": "`spawnwright season` lists the pairings",
	"species": "`spawnwright species list` lists the species",
}

// unknownID ends a command for an id that is not in the input, or a pairing
// that cannot be planned.
func unknownID(err error) error {
	var (
		unknown *collection.UnknownError
		cycle   *frogroom.NoCycleError
	)
	switch {
	case errors.As(err, &unknown) && lists[unknown.Kind] != "":
		return &exitError{exitUsage, err, lists[unknown.Kind]}
	case errors.As(err, &cycle):
		return &exitError{code: exitNoPlan, err: err}
	}
	return inputError(err)
}
