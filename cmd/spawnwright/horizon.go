package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"runtime"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/terminal"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/horizon"
	"github.com/spawnwright/spawnwright/pkg/picture"
)

func horizonCommand(a *app) *cobra.Command {
	w := horizon.Wish{}
	c := &cobra.Command{
		Use:   "horizon",
		Short: "gene diversity and inbreeding of the next years, if it goes on like this",
		Long: `horizon plays the next years of each line many times: with the plan of the
season repeated, with equal families, and with young taken by chance. With
--cross-every it also plays lines that are kept apart and crossed now and then. For each
year it gives the mean and an 80 % band over the runs, and the chance that the
line is under the goal. When the plan does not keep the goal it says how many
unrelated animals would, and from which year.

With -o and a name that ends in .svg it draws them. The same seed gives the same
numbers on every machine.`,
		Example: `  spawnwright horizon
  spawnwright horizon --species agalychnis-callidryas --years 20 --goal 0.85
  spawnwright horizon --cross-every 5
  spawnwright horizon --deaths 10 --format csv -o horizon.csv
  spawnwright horizon -o horizon.svg`,
		Args: noArguments,
	}
	flags := c.Flags()
	deaths := flags.Float64("deaths", 5, "animals that die each year, in `PERCENT`")
	flags.StringVar(&w.Species, "species", "", "only this `SPECIES`")
	flags.IntVar(&w.Years, "years", 10, "how far to look, a `NUMBER`")
	flags.IntVar(&w.Runs, "runs", 1000, "how often to play each way, a `NUMBER`")
	flags.Uint64Var(&w.Seed, "seed", 1, "another `NUMBER` gives other chances")
	flags.Float64Var(&w.Goal, "goal", 0.9, "gene diversity below which the line should not fall, 0 to 1, a `NUMBER`")
	flags.Float64Var(&w.Weight, "weight", 0.1, "what the inbreeding of the young weighs in the plan, a `NUMBER`")
	flags.IntVar(&w.CrossEvery, "cross-every", 0, "also keep lines apart, as pairs --apart does, and cross them every `NUMBER` of years")
	flags.IntVar(&w.Pairings, "pairings", 0, "most pairings a year, a `NUMBER` (default: as in the plan of the season)")
	flags.IntVar(&w.Lives, "breeds-until", 8, "age in `YEARS` at which an animal breeds for the last time")
	c.RunE = func(*cobra.Command, []string) error {
		for _, n := range []struct {
			flag  string
			wrong bool
		}{{"--years", w.Years == 0}, {"--runs", w.Runs == 0}, {"--goal", w.Goal == 0}, {"--breeds-until", w.Lives == 0}, {"--cross-every", w.CrossEvery == 0 && flags.Changed("cross-every")}} {
			if n.wrong {
				return usagef("%s cannot be 0", n.flag)
			}
		}
		w.Death = *deaths / 100
		return a.horizon(w)
	}
	_ = c.RegisterFlagCompletionFunc("species", a.completeSpecies())
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c, ".svg")
	return c
}

// horizon plays the years ahead until it is done or Ctrl-C ends it.
func (a *app) horizon(w horizon.Wish) error {
	room, on, err := a.today()
	if err != nil {
		return err
	}
	interrupted, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	w.Stop = func() bool { return interrupted.Err() != nil }
	w.Workers = runtime.GOMAXPROCS(0)
	if terminal.Is(a.stderr) && !a.quiet {
		w.Progress = func(done, of int) {
			if done%50 == 0 || done == of {
				fmt.Fprintf(a.stderr, "\r%d of %d runs ", done, of)
			}
		}
		defer fmt.Fprintln(a.stderr)
	}
	h, err := room.Horizon(on, w)
	if err != nil {
		var wish *horizon.WishError
		if errors.As(err, &wish) {
			return usage(err)
		}
		return unknownID(err)
	}
	return a.showHorizon(room.Collection.Keeper, h, w.Runs)
}

func (a *app) showHorizon(keeper string, h frogroom.Horizon, runs int) error {
	a.warn(h.Warnings)
	for _, s := range h.Species {
		if s.NoFuture == "" && s.Runs < runs {
			a.warn([]string{fmt.Sprintf("%s: ended after %d of %d runs", s.Species, s.Runs, runs)})
		}
	}
	if a.draws() {
		return a.write(picture.Horizon(keeper, h))
	}
	if a.format != "table" {
		return a.show("horizon", h, horizonRows(h))
	}
	var b bytes.Buffer
	if len(h.Species) == 0 {
		b.WriteString("No animal is in the room.\n")
	}
	for i, s := range h.Species {
		if i > 0 {
			b.WriteString("\n")
		}
		if err := horizonText(&b, h, s); err != nil {
			return err
		}
	}
	return a.write(b.Bytes())
}

// horizonText is a line a year: the plan with its bands, and beside it the means of
// equal families and chance.
func horizonText(b *bytes.Buffer, h frogroom.Horizon, s horizon.Prospect) error {
	fmt.Fprintf(b, "%s: %s, from %s, goal %.4g\n\n", s.Species, counted(s.Living, "animal"), h.On, h.Goal)
	if s.NoFuture != "" {
		fmt.Fprintf(b, "  Nothing was played: %s.\n", s.NoFuture)
		return nil
	}
	t := &table.Table{Indent: "  ", Columns: []table.Column{{Name: "year", Right: true}}}
	for i, w := range s.Ways {
		name := w.Way + ": gene diversity"
		if i == 0 {
			name = w.Way + ": gene diversity (80 % band)"
		}
		t.Columns = append(t.Columns, table.Column{Name: name, Right: true}, table.Column{Name: "inbreeding", Right: true})
		if i == 0 {
			t.Columns = append(t.Columns, table.Column{Name: "under goal", Right: true})
		}
	}
	for year := range s.Ways[0].Years {
		cells := []string{fmt.Sprint(year)}
		for i, w := range s.Ways {
			y := w.Years[year]
			if i == 0 {
				cells = append(cells, bandText(y.GeneDiversity), bandText(y.Inbreeding), fmt.Sprintf("%.0f %%", 100*y.Below))
			} else {
				cells = append(cells, fmt.Sprintf("%.3f", y.GeneDiversity.Mean), fmt.Sprintf("%.3f", y.Inbreeding.Mean))
			}
		}
		t.Add(cells...)
	}
	if err := t.Text(b); err != nil {
		return err
	}
	b.WriteString("\n  Means of the runs; eight runs of ten lie in the band. JSON and CSV have the bands of all ways.\n")
	switch {
	case s.Enough:
		b.WriteString("  The plan keeps the line at its goal in at least four runs of five.\n")
	case s.Help != nil:
		fmt.Fprintf(b, "  With %s in year %d the plan is under the goal in %.0f %% of the runs at the end.\n",
			counted(s.Help.Animals, "unrelated animal"), s.Help.Year, 100*s.Help.Below)
	case s.HelpOpen:
		b.WriteString("  It was stopped before it was known how many unrelated animals would help.\n")
	default:
		b.WriteString("  Ten unrelated animals in one year would not keep the line at its goal.\n")
	}
	if last := s.Ways[0].Years[len(s.Ways[0].Years)-1]; last.Lost > 0 {
		fmt.Fprintf(b, "  In %.0f %% of the runs the line has no male or no female any more.\n", 100*last.Lost)
	}
	b.WriteString("  Taken for granted:\n")
	for _, text := range s.Assumptions {
		fmt.Fprintf(b, "  - %s\n", text)
	}
	fmt.Fprintf(b, "  %s, seed %d.\n", counted(s.Runs, "run"), h.Seed)
	return nil
}

func bandText(band horizon.Band) string {
	return fmt.Sprintf("%.3f (%.3f to %.3f)", band.Mean, band.Low, band.High)
}

func horizonRows(h frogroom.Horizon) *table.Table {
	t := &table.Table{Columns: []table.Column{
		{Name: "species"},
		{Name: "way"},
		{Name: "year"},
		{Name: "gene diversity low"},
		{Name: "gene diversity"},
		{Name: "gene diversity high"},
		{Name: "inbreeding low"},
		{Name: "inbreeding"},
		{Name: "inbreeding high"},
		{Name: "under goal"},
	}}
	for _, s := range h.Species {
		for _, w := range s.Ways {
			for _, y := range w.Years {
				cells := []string{s.Species, w.Way, fmt.Sprint(y.Year)}
				for _, x := range []float64{
					y.GeneDiversity.Low, y.GeneDiversity.Mean, y.GeneDiversity.High,
					y.Inbreeding.Low, y.Inbreeding.Mean, y.Inbreeding.High, y.Below,
				} {
					cells = append(cells, fmt.Sprintf("%.4f", x))
				}
				t.Add(cells...)
			}
		}
	}
	return t
}
