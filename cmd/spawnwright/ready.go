package main

import (
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/departure"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/parcel"
)

// readyFlags are the flags of ready.
type readyFlags struct {
	species, forecast, outside, card string
	group                            int
}

func readyCommand(a *app) *cobra.Command {
	var f readyFlags
	c := &cobra.Command{
		Use:   "ready [ANIMAL|CLUTCH…]",
		Short: "which young may leave, which stay and why, and when they can travel",
		Long: `ready looks at the young: animals that are promised or too young to be bred, and
clutches of which some have left the water. They leave when they are old enough,
and large enough, and were seen eating, and nothing holds them; never by the date
alone. For each that may go it gives the next days on which a parcel can: days of
the carrier, no holiday on the way, and, with a forecast, neither too cold nor
too hot outside.

With --group it also finds the young that are least related, for a buyer; pairs
--unrelated looks for such animals among the grown ones too.

A forecast is a table with the columns date, low_c and high_c (or low_f and
high_f), one line for each day and place on the way.`,
		Example: `  spawnwright ready
  spawnwright ready C-26-04 --forecast week.csv
  spawnwright ready --group 4 --species agalychnis-callidryas
  spawnwright ready --card AC-28 --format markdown -o AC-28.md`,
		ValidArgsFunction: a.completeYoung(),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := f.check(a.format, args); err != nil {
				return err
			}
			if f.card != "" {
				return a.showCard(f.card)
			}
			return a.showReady(f, args)
		},
	}
	flags := c.Flags()
	flags.StringVar(&f.species, "species", "", "only young of this `SPECIES`")
	flags.StringVar(&f.forecast, "forecast", "", "temperatures outside by day, a CSV `FILE`")
	flags.StringVar(&f.outside, "outside", "", "the temperature outside on every day, a `RANGE` such as 3C..12C")
	flags.IntVar(&f.group, "group", 0, "also the `NUMBER` of ready young that are least related, for a buyer")
	flags.StringVar(&f.card, "card", "", "the card that goes with this animal or the young of this clutch, an `ID`")
	_ = c.RegisterFlagCompletionFunc("card", a.completeYoung())
	_ = c.RegisterFlagCompletionFunc("species", a.completeSpecies())
	a.formatFlag(c, "text", "markdown", "json", "csv")
	a.outFlag(c)
	return c
}

// check refuses flags that do not go together.
func (f *readyFlags) check(format string, args []string) error {
	switch {
	case f.card != "" && (len(args) > 0 || f.group != 0 || f.forecast != "" || f.outside != "" || f.species != ""):
		return usagef("--card is a question of its own; it goes with --format and -o only")
	case f.card != "" && format == "csv":
		return usagef("a card is written as text, markdown or json")
	case f.card == "" && format == "markdown":
		return usagef("--format markdown goes with --card")
	case f.group != 0 && format == "csv":
		return usagef("--group goes with --format text or json")
	case f.forecast != "" && f.outside != "":
		return usagef("--forecast and --outside say the same thing; give one")
	case f.group < 0:
		return usagef("--group %d is not a number of young", f.group)
	}
	return nil
}

func (a *app) showReady(f readyFlags, ids []string) error {
	weather, err := a.weather(f)
	if err != nil {
		return err
	}
	room, on, err := a.today()
	if err != nil {
		return err
	}
	d, err := room.Ready(on, departure.Wish{IDs: ids, Species: f.species, Forecast: weather, Group: f.group})
	if err != nil {
		return readyError(err)
	}
	a.warn(d.Warnings)
	if a.format == "text" {
		return a.write([]byte(readyText(d)))
	}
	t := &table.Table{Columns: []table.Column{
		{Name: "id"}, {Name: "name"}, {Name: "species"}, {Name: "living", Right: true}, {Name: "ready"}, {Name: "earliest"}, {Name: "pack"}, {Name: "then"}, {Name: "no day"}, {Name: "held"}, {Name: "to record"}, {Name: "promised"}, {Name: "permit"},
	}}
	for _, y := range d.Young {
		t.Add(readyRow(y)...)
	}
	return a.show("departures", d, t)
}

// readyError gives a wish that cannot be meant its exit code.
func readyError(err error) error {
	var (
		wish    *departure.WishError
		unknown *collection.UnknownError
	)
	switch {
	case errors.As(err, &wish):
		return usage(err)
	case errors.As(err, &unknown) && unknown.Kind == "species":
		return unknownID(err)
	case errors.As(err, &unknown):
		return &exitError{exitUsage, err, "`spawnwright kin --all` lists the animals, `spawnwright clutch` the clutches that run"}
	}
	return err
}

// weather gives the temperatures on the way, as a file or a flag has them.
func (a *app) weather(f readyFlags) (parcel.Forecast, error) {
	switch {
	case f.outside != "":
		o, err := outsideRange(f.outside)
		return parcel.Always(o), err
	case f.forecast == "":
		return parcel.Forecast{}, nil
	}
	file, err := os.Open(f.forecast)
	if err != nil {
		return parcel.Forecast{}, fileError(err)
	}
	defer file.Close()
	a.inputs = append(a.inputs, f.forecast)
	weather, err := parcel.ReadForecast(file)
	var bad *parcel.ForecastError
	switch {
	case errors.As(err, &bad):
		return weather, inputError(fmt.Errorf("%s: %s", f.forecast, strings.ReplaceAll(err.Error(), "\n", "\n"+f.forecast+": ")))
	case err != nil:
		return weather, fileError(err)
	}
	return weather, nil
}

// outsideRange reads a range such as 3C..12C or 38F..54F.
func outsideRange(text string) (parcel.Outside, error) {
	low, high, two := strings.Cut(text, "..")
	if !two {
		high = low
	}
	from, okFrom := degrees(low)
	to, okTo := degrees(high)
	if !okFrom || !okTo || from > to {
		return parcel.Outside{}, usagef("--outside %q is not a range of temperatures; write the lowest and the highest with their unit, such as 3C..12C or 38F..54F", text)
	}
	return parcel.Outside{LowC: from, HighC: to}, nil
}

// degrees reads a temperature with its unit, in °C.
func degrees(text string) (float64, bool) {
	for _, unit := range []string{"°C", "C", "°F", "F"} {
		number, ok := strings.CutSuffix(strings.TrimSpace(text), unit)
		if !ok {
			continue
		}
		x, err := strconv.ParseFloat(strings.TrimSpace(number), 64)
		if strings.HasSuffix(unit, "F") {
			x = (x - 32) * 5 / 9
		}
		return x, err == nil && x >= -60 && x <= 60
	}
	return 0, false
}

// completeYoung offers animals and clutches.
func (a *app) completeYoung() completer {
	return a.completeIDs(0, func(room *frogroom.Room) []string {
		var ids []string
		for _, animal := range room.Collection.Animals {
			ids = append(ids, cobra.CompletionWithDesc(animal.ID, animal.Name))
		}
		for _, c := range room.Collection.Clutches {
			ids = append(ids, c.ID)
		}
		return ids
	})
}
