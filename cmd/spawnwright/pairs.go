package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strconv"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/terminal"
	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

func pairsCommand(a *app) *cobra.Command {
	f := &pairsFlags{}
	c := &cobra.Command{
		Use:   "pairs [--why ANIMAL [ANIMAL]]",
		Short: "the best pairings for a season, and why each animal is in or out",
		Long: `pairs chooses the pairings of a season, and how many young of each to hold back
for breeding, so that the line keeps as much of its gene diversity as it can. A
pair whose young would be too inbred, or that another rule refuses, is never
chosen; the inbreeding of the others counts with the weight of --weight. The
best plan is proven to be the best, or marked as not proven.

With --together it plans groups for the rain chambers instead, of so many males
and females, and says what will not be known of their young.

With --keep it selects young to keep for breeding, and with --exchange it says what
an animal from outside would do for the line. With --unrelated it selects animals
for a buyer who wants them as little related as can be, grown ones as well as
young; ready --group does so among the young that may leave, with those of a clutch
that have no line of their own, and says when they can travel.

With --why and two animals it prints every rule for them, with its values; with one, the
rules for it and what they say of each mate.

It ends with exit code 3 when no plan exists, and names the smallest set of
rules and wishes that together leave none.`,
		Example: `  spawnwright pairs
  spawnwright pairs --species agalychnis-callidryas --pairings 3
  spawnwright pairs --want AC-13,AC-14 --without AC-05
  spawnwright pairs --relax rest,age
  spawnwright pairs --species hyla-cinerea --together 2,1
  spawnwright pairs --unrelated 4 --species hyla-cinerea
  spawnwright pairs --exchange --outside sex=female,line=Limón,sire=AC-05
  spawnwright pairs --why AC-13 AC-14`,
		Args:              atMost(2, "animals"),
		ValidArgsFunction: a.completeAnimals(2),
		RunE:              func(c *cobra.Command, args []string) error { return a.pairs(c, f, args) },
	}
	f.register(a, c)
	_ = c.RegisterFlagCompletionFunc("species", a.completeSpecies())
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

func (f *pairsFlags) register(a *app, c *cobra.Command) {
	flags := c.Flags()
	flags.BoolVar(&f.why, "why", false, "print every rule for the animals that are named: a pair, or one and all its mates")
	flags.StringVar(&f.species, "species", "", "only this `SPECIES`")
	flags.IntVar(&f.pairings, "pairings", 0, "most pairings of the season, a `NUMBER` (default: rules.pairings_a_season of the file)")
	flags.IntVar(&f.young, "hold-back", 2, "young to hold back for each pairing on average, a `NUMBER`")
	flags.IntVar(&f.rounds, "rounds", 0, "how often each rain chamber is filled in the season, a `NUMBER`; 0 does not count chambers")
	flags.IntVar(&f.maleUses, "male-uses", 2, "pairings of one male at most, a `NUMBER`")
	flags.IntVar(&f.femaleUses, "female-uses", 1, "pairings of one female at most, a `NUMBER`")
	flags.Float64Var(&f.weight, "weight", 0.1, "what the mean inbreeding of the young weighs against the mean kinship of the line, a `NUMBER`")
	flags.BoolVar(&f.apart, "apart", false, "keep lines apart this season: of mates that do as much for the line take kin, below max_inbreeding")
	flags.StringArrayVar(&f.want, "want", nil, "a pair that has to be in the plan, `A,B`; may be given again")
	flags.StringArrayVar(&f.without, "without", nil, "a pair `A,B`, or an animal A, that may not be in it; may be given again")
	flags.StringArrayVar(&f.goals, "at-least", nil, "pairings that a species, or a line of the dam, needs: `NAME=NUMBER`; may be given again")
	flags.StringSliceVar(&f.relax, "relax", nil, "a `RULE` that refuses nothing: "+strings.Join(relaxable(), ", ")+"; several as A,B")
	flags.StringVar(&f.together, "together", "", "plan groups of so many males and females in one chamber: `MALES,FEMALES`")
	flags.IntVar(&f.keep, "keep", 0, "select so many young of each species to keep for breeding, a `NUMBER`")
	flags.IntVar(&f.unrelated, "unrelated", 0, "select so many animals of each species that are least related to each other, a `NUMBER`")
	flags.BoolVar(&f.exchange, "exchange", false, "what animals from outside would do: those that left, an unrelated one, and those of --outside")
	flags.StringArrayVar(&f.outside, "outside", nil, "for --exchange: an animal, described as `KEY=VALUE,...` with sex, line, sire, dam, inbreeding, name, species; may be given again")
	flags.IntVar(&f.nodes, "effort", 20_000, "partial plans to look at for each species before the search ends, a `NUMBER`")
	flags.DurationVar(&f.limit, "time-limit", 0, "end the search after this `TIME`, such as 10s, with the best plan so far; the same question may then have another answer")
	_ = c.RegisterFlagCompletionFunc("relax", cobra.FixedCompletions(relaxable(), cobra.ShellCompDirectiveNoFileComp))
	_ = c.RegisterFlagCompletionFunc("without", a.completeAnimals(0))
}

func (a *app) pairs(c *cobra.Command, f *pairsFlags, args []string) error {
	if f.why != (len(args) > 0) {
		return usagef("--why goes with one animal or two, as in: spawnwright pairs --why AC-13 AC-14")
	}
	on, err := a.on()
	if err != nil {
		return err
	}
	for _, flag := range []string{"pairings", "hold-back", "male-uses", "female-uses", "keep", "unrelated", "effort"} {
		if c.Flags().Changed(flag) && c.Flags().Lookup(flag).Value.String() == "0" {
			return usagef("--%s cannot be 0; leave it out for what is usual", flag)
		}
	}
	wish, err := f.wish()
	if err != nil {
		return err
	}
	if wish.Apart = f.apart; f.apart {
		if c.Flags().Changed("weight") {
			return usagef("--apart goes without --weight: kin are sought, and not weighed against")
		}
		wish.Weight = 0
	}
	room, err := a.open()
	if err != nil {
		return err
	}
	if f.why {
		return a.why(room, on, args, wish)
	}
	if err := f.oneThing(); err != nil {
		return err
	}
	if f.limit < 0 {
		return usagef("--time-limit %s: write a time such as 10s", f.limit)
	}
	interrupted, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	if f.limit > 0 {
		var enough context.CancelFunc
		interrupted, enough = context.WithTimeout(interrupted, f.limit)
		defer enough()
	}
	wish.Stop = func() bool { return interrupted.Err() != nil }
	return a.plan(room, on, f, wish)
}

// why prints the rules for one animal, or for two.
func (a *app) why(room *frogroom.Room, on civil.Date, animals []string, wish breedingplan.Wish) error {
	if len(animals) == 1 {
		v, err := room.WhyAnimal(on, animals[0], wish)
		if err != nil {
			return pairsError(err)
		}
		return a.showWhyOne(room, v)
	}
	v, err := room.WhyPair(on, animals[0], animals[1], wish)
	if err != nil {
		return pairsError(err)
	}
	return a.showWhy(room, v)
}

// plan looks for pairings, groups or animals, whichever is asked for.
func (a *app) plan(room *frogroom.Room, on civil.Date, f *pairsFlags, wish breedingplan.Wish) error {
	males, females, grouped, err := f.group()
	if err != nil {
		return err
	}
	if terminal.Is(a.stderr) && !a.quiet {
		fmt.Fprintln(a.stderr, "looking for the best pairings; Ctrl-C ends with the best so far")
	}
	if f.selects() {
		return a.showSelected(room, on, f, wish)
	}
	if grouped {
		g, err := room.Groups(on, wish, males, females)
		if err != nil {
			return pairsError(err)
		}
		return a.showGroups(room, g)
	}
	p, err := room.Pairs(on, wish)
	if err != nil {
		return pairsError(err)
	}
	return a.showPairs(room, p)
}

// pairsFlags are what the keeper asks of a plan.
type pairsFlags struct {
	keep, unrelated                   int
	exchange, apart                   bool
	together                          string
	why                               bool
	species                           string
	pairings, young, rounds, maleUses int
	femaleUses, nodes                 int
	weight                            float64
	want, without, goals, relax       []string
	outside                           []string
	limit                             time.Duration
}

func (f *pairsFlags) wish() (breedingplan.Wish, error) {
	w := breedingplan.Wish{
		Species: f.species, Pairings: f.pairings, Young: f.young, Rounds: f.rounds,
		MaleUses: f.maleUses, FemaleUses: f.femaleUses, Weight: f.weight, Nodes: f.nodes,
	}
	for _, text := range f.want {
		one, other, two := strings.Cut(text, ",")
		if !two || strings.Contains(other, ",") {
			return w, usagef("--want %q: write two animals, as in --want AC-13,AC-14", text)
		}
		w.Want = append(w.Want, [2]string{one, other})
	}
	for _, text := range f.without {
		one, other, _ := strings.Cut(text, ",")
		if one == "" || strings.Contains(other, ",") {
			return w, usagef("--without %q: write one animal, or two as in --without AC-13,AC-14", text)
		}
		w.Without = append(w.Without, [2]string{one, other})
	}
	for _, text := range f.goals {
		of, number, _ := strings.Cut(text, "=")
		n, err := strconv.Atoi(number)
		if err != nil || n < 1 || n > 100_000 {
			return w, usagef("--at-least %q: write a species or a line and a number, as in --at-least hyla-cinerea=2", text)
		}
		w.Goals = append(w.Goals, breedingplan.Goal{Of: of, Pairings: n})
	}
	for _, rule := range f.relax {
		w.Relax = append(w.Relax, pairing.Rule(rule))
	}
	return w, nil
}

// relaxable are the words of --relax.
func relaxable() []string {
	rules := pairing.Relaxable()
	out := make([]string, len(rules))
	for i, r := range rules {
		out[i] = string(r)
	}
	return out
}

// group gives the size of the groups that are wanted.
func (f *pairsFlags) group() (males, females int, wanted bool, err error) {
	if f.together == "" {
		return 0, 0, false, nil
	}
	one, other, _ := strings.Cut(f.together, ",")
	males, errMales := strconv.Atoi(one)
	females, errFemales := strconv.Atoi(other)
	if errMales != nil || errFemales != nil || len(f.goals) > 0 {
		return 0, 0, false, usagef("--together %q: write two numbers, as in --together 2,1, and no --at-least", f.together)
	}
	return males, females, true, nil
}

// pairsError gives the exit code of what stands against a plan.
func pairsError(err error) error {
	var (
		none *breedingplan.NoPlanError
		wish *breedingplan.WishError
	)
	switch {
	case errors.As(err, &none):
		return &exitError{exitNoPlan, err, "`spawnwright pairs --why MALE FEMALE` prints every rule for a pair; --relax sets one aside"}
	case errors.As(err, &wish):
		return usage(err)
	}
	return unknownID(err)
}
