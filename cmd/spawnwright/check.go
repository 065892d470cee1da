package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func checkCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "check",
		Short: "say what is wrong with the file, and what could not be checked",
		Long: `check reads the file and reports everything at once, the worst first: errors,
warnings about the welfare of animals and about dates, and notes on what was not
checked. It ends with exit code 1 when there is an error.`,
		Example: "  spawnwright check -f collection.yaml",
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			on, err := a.on()
			if err != nil {
				return err
			}
			room, problems, err := a.read()
			if err != nil {
				return err
			}
			if room != nil {
				problems = room.Check(on)
			}
			return a.report(problems)
		},
	}
	a.formatFlag(c, "text", "json", "csv")
	a.outFlag(c)
	return c
}

// report prints the result of a check and turns errors into the exit code.
func (a *app) report(ds strictyaml.Diagnostics) error {
	var err error
	switch a.format {
	case "text":
		err = a.write([]byte(a.checkText(ds)))
	default:
		t := &table.Table{Columns: []table.Column{{Name: "file"}, {Name: "line"}, {Name: "column"}, {Name: "severity"}, {Name: "message"}, {Name: "cure"}}}
		for _, d := range ds {
			t.Add(d.File, fmt.Sprint(d.Line), fmt.Sprint(d.Column), d.Severity.String(), d.Message, d.Cure)
		}
		if ds == nil {
			ds = strictyaml.Diagnostics{}
		}
		err = a.show("problems", ds, t)
	}
	if err == nil && ds.HasErrors() {
		return &exitError{code: exitInput}
	}
	return err
}

// checkText is the report for people: each problem with its line, then a count.
func (a *app) checkText(ds strictyaml.Diagnostics) string {
	count := make(map[strictyaml.Severity]int)
	var text strings.Builder
	for _, d := range ds {
		count[d.Severity]++
		text.WriteString(a.diagnosticText(d, a.stdout))
	}
	fmt.Fprintf(&text, "%s, %s, %s\n",
		plural(count[strictyaml.Error], "error"), plural(count[strictyaml.Warning], "warning"), plural(count[strictyaml.Note], "note"))
	return text.String()
}

func plural(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
