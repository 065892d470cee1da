package main

import (
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
)

// newRoot builds the command tree around a.
func newRoot(a *app) *cobra.Command {
	root := &cobra.Command{
		Use:   "spawnwright",
		Short: "plans a frog-breeding season from one YAML file",
		Long: `spawnwright reads one YAML file about a frog room and answers what a breeder
asks: is the file right, how closely are these two related, when does each
pairing run, when do the eggs hatch, what is due.`,
		Example: `  spawnwright init -o collection.yaml     write a file to start from
  spawnwright check                       say what is wrong with collection.yaml
  spawnwright season                      plan the pairings in it
  spawnwright calendar -o season.ics      a calendar for the phone
  spawnwright lineage -o tree.svg         draw the family tree`,
		Version:       version(),
		SilenceUsage:  true,
		SilenceErrors: true,
		Args:          subcommand,
		RunE:          func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	root.SetVersionTemplate("spawnwright {{.Version}}\n")
	root.SetFlagErrorFunc(wrongFlag)
	flags := root.PersistentFlags()
	flags.StringVarP(&a.file, "file", "f", defaultFile, "the keeper's `FILE`; - reads standard input")
	flags.StringVar(&a.onText, "on", "", "the `DATE` that counts as today, YYYY-MM-DD (default: the computer's)")
	flags.BoolVarP(&a.quiet, "quiet", "q", false, "do not print warnings and what was written")
	root.AddCommand(
		initCommand(a), checkCommand(a), speciesCommand(a), kinCommand(a), seasonCommand(a),
		clutchCommand(a), agendaCommand(a), readyCommand(a), calendarCommand(a), lineageCommand(a), pairsCommand(a), horizonCommand(a),
		schemaCommand(a), recordCommand(a),
	)
	root.InitDefaultHelpCmd()
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		switch c.Name() {
		case "help":
			c.Short = "how to use a command"
		case "completion":
			c.Short = "a script with which the shell completes commands and ids"
		}
	}
	return root
}

// version gives what the build knows of itself.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "(unknown build)"
	}
	parts := []string{info.Main.Version}
	if parts[0] == "" {
		parts[0] = "(devel)"
	}
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			parts = append(parts, s.Value[:min(len(s.Value), 12)])
		case "vcs.modified":
			if s.Value == "true" {
				parts = append(parts, "modified")
			}
		}
	}
	return strings.Join(append(parts, info.GoVersion), " ")
}
