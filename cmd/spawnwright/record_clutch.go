package main

import (
	"strconv"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/record"
)

func recordLaid(r *recorder) *cobra.Command {
	var (
		l       record.Laying
		several bool
	)
	c := &cobra.Command{
		Use:   "laid [PAIRING]",
		Short: "a clutch was laid",
		Long: `record laid creates the clutch, with the next free id in the pattern of the file,
and says which it took. The parents are those of the pairing, or named: several
when it was one of them.`,
		Example: `  spawnwright record laid P-27-01 --eggs 43
  spawnwright record laid --dam AC-02 --sire AC-01,AC-04 --eggs 43 --place tub-3`,
		Args:              atMost(1, "pairing"),
		ValidArgsFunction: r.completePairings(),
		RunE: func(c *cobra.Command, args []string) error {
			if c.Flags().Changed("eggs") && l.Eggs < 1 {
				return usagef("--eggs %d is no number of eggs; leave it out when they were not counted", l.Eggs)
			}
			l.Pairing = first(args)
			l.Note = r.note
			r.note = ""
			if several {
				l.SireMix = collection.Several
			}
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) { return b.Laid(on, l) })
		},
	}
	f := c.Flags()
	f.StringSliceVar(&l.Dams, "dam", nil, "`ID` of the dam, or several with commas")
	f.StringSliceVar(&l.Sires, "sire", nil, "`ID` of the sire, or several with commas")
	f.BoolVar(&several, "several", false, "each egg has its own sire of those that are named")
	f.IntVar(&l.Eggs, "eggs", 0, "`NUMBER` of eggs")
	f.StringVar(&l.ID, "id", "", "`ID` of the clutch (default: the next free one)")
	f.StringVar(&l.Place, "place", "", "`PLACE` where it is")
	f.StringVar(&l.Line, "line", "", "`LINE` of the young, when it is not the dam's")
	f.StringVar(&l.Species, "species", "", "`ID` of the species, when no parent is known")
	_ = c.RegisterFlagCompletionFunc("dam", r.completeAnimals(0))
	_ = c.RegisterFlagCompletionFunc("sire", r.completeAnimals(0))
	_ = c.RegisterFlagCompletionFunc("species", r.completeSpecies())
	r.noteFlag(c)
	return c
}

func first(args []string) string {
	if len(args) == 0 {
		return ""
	}
	return args[0]
}

// sight is the flags for what was seen of a clutch.
type sight struct {
	some          bool
	count, losses int
}

func (s *sight) flags(c *cobra.Command, some bool) {
	if some {
		c.Flags().BoolVar(&s.some, "some", false, "only some of them are that far")
	}
	c.Flags().IntVar(&s.count, "count", -1, "`NUMBER` of living ones that were counted")
	c.Flags().Lookup("count").DefValue = "0" // so that help shows none
	c.Flags().IntVar(&s.losses, "losses", 0, "`NUMBER` of dead ones that were found")
}

// at gives what was seen at a stage.
func (s *sight) at(stage string) record.Sight {
	return record.Sight{
		Stage: stage, Some: s.some, Losses: s.losses,
		Count: collection.Given[int]{Value: max(s.count, 0), Known: s.count >= 0},
	}
}

func recordHatched(r *recorder) *cobra.Command {
	var s sight
	c := &cobra.Command{
		Use:               "hatched [CLUTCH]",
		Short:             "a clutch hatched",
		Example:           "  spawnwright record hatched C-27-03 --count 38",
		Args:              atMost(1, "clutch"),
		ValidArgsFunction: r.completeClutches(1),
		RunE: func(_ *cobra.Command, args []string) error {
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) {
				return b.Seen(on, first(args), s.at("hatched"))
			})
		},
	}
	s.flags(c, true)
	r.noteFlag(c)
	return c
}

func recordSeen(r *recorder) *cobra.Command {
	var (
		s      sight
		gosner int
	)
	c := &cobra.Command{
		Use:   "seen [CLUTCH] [STAGE]",
		Short: "a stage was seen: a word, or a Gosner stage",
		Long: `record seen is a look at a clutch. The stage is a word (hatched, feeding,
hind-legs, toes, front-legs, out-of-water, eating, sale-ready) or a Gosner (1960)
stage, 1 to 46. The day counts as that by which half of them were that far; with --some
as one on which some were, and others not.`,
		Example: `  spawnwright record seen C-27-03 front-legs --some
  spawnwright record seen C-27-03 --gosner 42 --count 31`,
		Args:              atMost(2, "arguments, a clutch and a stage"),
		ValidArgsFunction: then(r.completeClutches(1), collection.Stages()...),
		RunE: func(c *cobra.Command, args []string) error {
			if gosner != 0 && len(args) == 2 {
				return usagef("--gosner and a stage say the same thing; keep one of them")
			}
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) {
				clutch, stage := clutchAndStage(b, args)
				if c.Flags().Changed("gosner") {
					clutch, stage = first(args), strconv.Itoa(gosner)
				}
				return b.Seen(on, clutch, s.at(stage))
			})
		},
	}
	c.Flags().IntVar(&gosner, "gosner", 0, "the Gosner `STAGE` that was seen, 1 to 46")
	s.flags(c, true)
	r.noteFlag(c)
	return c
}

// clutchAndStage tells a stage that stands alone from a clutch.
func clutchAndStage(b *record.Book, args []string) (clutch, stage string) {
	if len(args) == 2 {
		return args[0], args[1]
	}
	if _, ok := b.Collection.Clutch(first(args)); !ok && record.IsStage(first(args)) {
		return "", first(args)
	}
	return first(args), ""
}

func recordCount(r *recorder) *cobra.Command {
	var s sight
	c := &cobra.Command{
		Use:               "count CLUTCH NUMBER",
		Short:             "the living ones of a clutch were counted",
		Example:           "  spawnwright record count C-27-03 35",
		Args:              exactly("a clutch", "a number"),
		ValidArgsFunction: r.completeClutches(1),
		RunE: func(_ *cobra.Command, args []string) error {
			n, err := strconv.Atoi(args[1])
			if err != nil || n < 0 {
				return usagef("%q is not a number of tadpoles or froglets", args[1])
			}
			s.count = n
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) { return b.Seen(on, args[0], s.at("")) })
		},
	}
	c.Flags().IntVar(&s.losses, "losses", 0, "`NUMBER` of dead ones that were found")
	r.noteFlag(c)
	return c
}

func recordHeldBack(r *recorder) *cobra.Command {
	var (
		h   record.Holding
		sex string
	)
	c := &cobra.Command{
		Use:   "held-back [CLUTCH]",
		Short: "young became animals of the collection",
		Long: `record held-back creates the animals, with the next free ids in the pattern of the
file or those of --as, and says which it took.`,
		Example:           "  spawnwright record held-back C-27-03 --count 2 --as AC-29,AC-30",
		Args:              atMost(1, "clutch"),
		ValidArgsFunction: r.completeClutches(1),
		RunE: func(_ *cobra.Command, args []string) error {
			h.Clutch, h.Sex = first(args), collection.Sex(sex)
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) { return b.HeldBack(on, h) })
		},
	}
	c.Flags().IntVar(&h.Count, "count", 0, "`NUMBER` of young")
	c.Flags().StringSliceVar(&h.IDs, "as", nil, "their `IDS`, with commas (default: the next free ones)")
	c.Flags().StringVar(&sex, "sex", "", "`SEX` of all of them: male, female (default: not known)")
	c.Flags().StringVar(&h.Place, "place", "", "`PLACE` where they live")
	r.noteFlag(c)
	return c
}
