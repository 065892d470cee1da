package main

import (
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"
)

// drawn is the annotation of a command with the endings of -o for which it draws.
const drawn = "drawn"

// outFlag gives c the flag -o; drawn are the endings for which it draws.
func (a *app) outFlag(c *cobra.Command, endings ...string) {
	c.Flags().StringVarP(&a.out, "output", "o", "", "write to this `FILE`; - or none is standard output")
	c.Annotations = map[string]string{drawn: strings.Join(endings, " ")}
}

// formatFlag gives c the flag --format; the first of the formats is the default.
func (a *app) formatFlag(c *cobra.Command, formats ...string) {
	format := c.Flags().String("format", formats[0], "how to print, a `WORD`: "+strings.Join(formats, ", "))
	_ = c.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(formats, cobra.ShellCompDirectiveNoFileComp))
	c.PreRunE = func(c *cobra.Command, _ []string) (err error) {
		if !slices.Contains(formats, *format) {
			return usagef("--format %q is not known here; write one of %s", *format, strings.Join(formats, ", "))
		}
		a.format, err = a.formatOf(c, formats, *format)
		return err
	}
}

// saidBy are the formats that an ending says.
var saidBy = map[string]string{".csv": "csv", ".json": "json", ".ics": "ics", ".md": "markdown"}

// noText are the endings of pictures and pages.
var noText = []string{".svg", ".png", ".pdf", ".html", ".htm"}

// formatOf gives the format of the product: that of --format, or what the name of the file
// says. It refuses a file that would hold something else than its name says.
func (a *app) formatOf(c *cobra.Command, formats []string, format string) (string, error) {
	ending := strings.ToLower(filepath.Ext(a.out))
	given := c.Flags().Changed("format")
	word := saidBy[ending]
	can := strings.Fields(c.Annotations[drawn])
	switch {
	case slices.Contains(can, ending) && given && format != formats[0]:
		return "", usagef("-o %s is drawn, and --format %s is a text; leave --format out, or name the file otherwise", a.out, format)
	case slices.Contains(noText, ending) && len(can) == 0:
		return "", usagef("-o %s: %s draws nothing, it writes %s; name the file otherwise", a.out, c.Name(), strings.Join(formats, ", "))
	case slices.Contains(noText, ending) && !slices.Contains(can, ending):
		return "", usagef("-o %s: %s draws %s, no %s", a.out, c.Name(), strings.Join(can, " and "), ending)
	case !slices.Contains(formats, word):
		return format, nil
	case given && format != word:
		return "", usagef("-o %s and --format %s say different things; leave one out", a.out, format)
	}
	return word, nil
}
