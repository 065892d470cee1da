package main

import (
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/departure"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/record"
)

func recordWeight(r *recorder) *cobra.Command {
	return r.entry(&cobra.Command{
		Use:               "weight ID WEIGHT",
		Short:             "an animal, or the smallest of a clutch, was weighed",
		Example:           "  spawnwright record weight AC-02 12.4g\n  spawnwright record weight AC-02 0.44oz",
		Args:              measured("an animal or a clutch", "a weight with its unit"),
		ValidArgsFunction: r.completeAnimals(1),
	}, func(b *record.Book, on civil.Date, args []string) (record.Edit, error) {
		return b.Weight(on, args[0], measureOf(args))
	})
}

// measureOf gives the measure behind the subject, as one text.
func measureOf(args []string) string { return strings.Join(args[1:], " ") }

func recordLength(r *recorder) *cobra.Command {
	return r.entry(&cobra.Command{
		Use:               "length ID LENGTH",
		Short:             "an animal, or the smallest of a clutch, was measured from snout to vent",
		Example:           "  spawnwright record length AC-02 69mm",
		Args:              measured("an animal or a clutch", "a length with its unit"),
		ValidArgsFunction: r.completeAnimals(1),
	}, func(b *record.Book, on civil.Date, args []string) (record.Edit, error) {
		return b.Length(on, args[0], measureOf(args))
	})
}

func recordAte(r *recorder) *cobra.Command {
	return r.entry(&cobra.Command{
		Use:               "ate ID",
		Short:             "an animal, or half of a clutch, was seen eating",
		Example:           "  spawnwright record ate AC-29",
		Args:              exactly("an animal or a clutch"),
		ValidArgsFunction: r.completeAnimals(1),
	}, func(b *record.Book, on civil.Date, args []string) (record.Edit, error) {
		return b.Ate(on, args[0])
	})
}

func recordMoved(r *recorder) *cobra.Command {
	return r.entry(&cobra.Command{
		Use:               "moved ID PLACE",
		Short:             "an animal or a clutch got another place",
		Example:           "  spawnwright record moved C-27-03 tub-3",
		Args:              exactly("an animal or a clutch", "a place"),
		ValidArgsFunction: r.completeAnimals(1),
	}, func(b *record.Book, on civil.Date, args []string) (record.Edit, error) {
		return b.Moved(on, args[0], args[1])
	})
}

func recordHold(r *recorder) *cobra.Command {
	var until string
	c := &cobra.Command{
		Use:   "hold ANIMAL KIND",
		Short: "an animal may not be paired or leave: quarantine, health, or lifted",
		Example: `  spawnwright record hold AC-02 quarantine --until 2027-03-31
  spawnwright record hold AC-02 lifted`,
		Args:              exactly("an animal", "quarantine, health or lifted"),
		ValidArgsFunction: then(r.completeAnimals(1), string(collection.Quarantine), string(collection.Health), string(collection.Lifted)),
		RunE: func(_ *cobra.Command, args []string) error {
			var last civil.Date
			if until != "" {
				d, err := civil.Parse(until)
				if err != nil {
					return usagef("--until: %w", err)
				}
				last = d
			}
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) {
				return b.Hold(on, args[0], collection.HoldKind(args[1]), last)
			})
		},
	}
	c.Flags().StringVar(&until, "until", "", "last `DATE` of the hold (default: until it is lifted)")
	r.noteFlag(c)
	return c
}

func recordDied(r *recorder) *cobra.Command {
	count := 0
	c := &cobra.Command{
		Use:               "died ID",
		Short:             "an animal died, or some of a clutch",
		Example:           "  spawnwright record died AC-02\n  spawnwright record died C-27-03 --count 3",
		Args:              exactly("an animal or a clutch"),
		ValidArgsFunction: r.completeAnimals(1),
	}
	c.Flags().IntVar(&count, "count", 0, "of a clutch: `NUMBER` of dead ones that were found")
	return r.entry(c, func(b *record.Book, on civil.Date, args []string) (record.Edit, error) {
		return b.Died(on, args[0], count)
	})
}

// tooEarly says why an animal or the young of a clutch should not have left yet. What
// happened is written down in any case, and what is wrong with the file or the id is
// told by whoever writes.
func (r *recorder) tooEarly(b *record.Book, on civil.Date, id string) []string {
	room, _ := frogroom.Of(r.file, b.Collection)
	if room == nil {
		return nil
	}
	d, err := room.Ready(on, departure.Wish{IDs: []string{id}})
	if err != nil || len(d.Young) == 0 {
		return nil
	}
	var out []string
	for _, why := range slices.Concat(d.Young[0].Held, d.Young[0].Ask) {
		out = append(out, id+" was not ready to leave: "+why)
	}
	return out
}

func recordSold(r *recorder) *cobra.Command {
	var (
		count int
		to    string
	)
	c := &cobra.Command{
		Use:               "sold ID",
		Aliases:           []string{"left"},
		Short:             "an animal, or some young of a clutch, left the room",
		Example:           "  spawnwright record sold AC-29 --to \"a keeper in the next town\"\n  spawnwright record sold C-27-03 --count 4",
		Args:              exactly("an animal or a clutch"),
		ValidArgsFunction: r.completeAnimals(1),
		RunE: func(_ *cobra.Command, args []string) error {
			var doubts []string
			err := r.add(func(b *record.Book, on civil.Date) (record.Edit, error) {
				if !r.quiet {
					doubts = r.tooEarly(b, on, args[0])
				}
				return b.Sold(on, args[0], count, to)
			})
			if err != nil {
				return err
			}
			r.warn(doubts)
			return nil
		},
	}
	c.Flags().IntVar(&count, "count", 0, "of a clutch: `NUMBER` of young that left")
	c.Flags().StringVar(&to, "to", "", "`NAME` of the one who has them now")
	r.noteFlag(c)
	return c
}
