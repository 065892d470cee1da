package main

import (
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/record"
	"github.com/spawnwright/spawnwright/pkg/species"
)

func recordTemperature(r *recorder) *cobra.Command {
	var air, isNew bool
	c := &cobra.Command{
		Use:   "temperature WHERE TEMPERATURE",
		Short: "what the thermometer showed: of the water, or of the air with --air",
		Example: `  spawnwright record temperature tub-3 23.5C
  spawnwright record temperature tank-2 74F --air`,
		Args:              measured("a place, a clutch or an animal", "a temperature with its unit"),
		ValidArgsFunction: r.completeClutches(1),
		RunE: func(_ *cobra.Command, args []string) error {
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) {
				return b.Temperature(on, args[0], measureOf(args), air, isNew)
			})
		},
	}
	c.Flags().BoolVar(&air, "air", false, "of the air")
	c.Flags().BoolVar(&isNew, "new", false, "the place is not in the file yet")
	r.noteFlag(c)
	return c
}

func recordNote(r *recorder) *cobra.Command {
	isNew := false
	c := &cobra.Command{
		Use:   "note WHERE TEXT…",
		Short: "anything else, about an animal, a clutch, a pairing or a place",
		Example: `  spawnwright record note AC-02 calls from the third night on
  spawnwright record note tub-3 new filter --new`,
		Args:              atLeast("an animal, a clutch, a pairing or a place", "a text"),
		ValidArgsFunction: r.completeAnimals(1),
		RunE: func(_ *cobra.Command, args []string) error {
			return r.add(func(b *record.Book, on civil.Date) (record.Edit, error) {
				return b.Note(on, args[0], strings.Join(args[1:], " "), isNew)
			})
		},
	}
	c.Flags().BoolVar(&isNew, "new", false, "the place is not in the file yet")
	return c
}

func recordBegan(r *recorder) *cobra.Command {
	return r.entry(&cobra.Command{
		Use:               "began PAIRING PHASE",
		Short:             "a phase of a pairing began: conditioning, cooling, warm-up, rain, rest",
		Example:           "  spawnwright record began P-27-01 rain",
		Args:              exactly("a pairing", "a phase"),
		ValidArgsFunction: then(r.completePairings(), collection.Phases()...),
	}, func(b *record.Book, on civil.Date, args []string) (record.Edit, error) {
		return b.Began(on, args[0], species.PhaseName(args[1]))
	})
}

func recordUndo(r *recorder) *cobra.Command {
	return &cobra.Command{
		Use:   "undo",
		Short: "take the last entry of the diary back",
		Long: `record undo takes the last entry of the diary away, with the clutch or the animals
that came with it, and shows the lines. It does so only when it is clear what came
with the entry, nothing else in the file rests on it, and no comment would go.`,
		Example: "  spawnwright record undo --dry-run",
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			return r.change(func(b *record.Book) (*record.Plan, error) { return b.Undo() })
		},
	}
}
