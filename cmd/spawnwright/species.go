package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/species"
)

func speciesCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "species",
		Short: "list the species profiles, or show one with the source of every value",
		Args:  subcommand,
		RunE:  func(c *cobra.Command, _ []string) error { return c.Help() },
	}
	c.AddCommand(speciesListCommand(a), speciesShowCommand(a))
	return c
}

func speciesListCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "list",
		Short: "list all profiles: those built in, and those of the file when there is one",
		Args:  noArguments,
		RunE: func(c *cobra.Command, _ []string) error {
			profiles, err := a.profiles(c)
			if err != nil {
				return err
			}
			t := &table.Table{Columns: []table.Column{{Name: "id"}, {Name: "name"}, {Name: "common name"}}}
			rows := make([]speciesRow, len(profiles))
			for i, p := range profiles {
				rows[i] = speciesRow{p.ID, p.Name, p.CommonName}
				t.Add(p.ID, p.Name, p.CommonName)
			}
			return a.show("species", rows, t)
		},
	}
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

type speciesRow struct {
	ID         string `json:"id"`
	Name       string `json:"name"`
	CommonName string `json:"common_name,omitempty"`
}

func speciesShowCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:     "show SPECIES",
		Short:   "show a profile with the source of every value",
		Example: "  spawnwright species show agalychnis-callidryas",
		Args:    oneSpecies,
		ValidArgsFunction: func(c *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			profiles, err := a.silent().profiles(c)
			if err != nil || len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			ids := make([]string, len(profiles))
			for i, p := range profiles {
				ids[i] = p.ID
			}
			return ids, cobra.ShellCompDirectiveNoFileComp
		},
		RunE: func(c *cobra.Command, args []string) error {
			profiles, err := a.profiles(c)
			if err != nil {
				return err
			}
			p, err := frogroom.FindProfile(profiles, args[0])
			if err != nil {
				return &exitError{exitUsage, err, "`spawnwright species list` shows those that are known"}
			}
			title := fmt.Sprintf("%s (%s)", p.Name, p.ID)
			if p.CommonName != "" {
				title = fmt.Sprintf("%s, %s (%s)", p.Name, p.CommonName, p.ID)
			}
			t := &table.Table{Title: title, Columns: []table.Column{{Name: "part"}, {Name: "key"}, {Name: "value", Width: 60}, {Name: "source", Width: 48}}}
			rows := p.Rows()
			out := make([]valueRow, len(rows))
			for i, r := range rows {
				out[i] = valueRow{r.Section, r.Key, r.Value, r.Source}
				t.Add(r.Section, r.Key, r.Value, r.Source)
			}
			return a.show("values", out, t)
		},
	}
	a.formatFlag(c, "table", "json", "csv")
	a.outFlag(c)
	return c
}

func oneSpecies(_ *cobra.Command, args []string) error {
	if len(args) != 1 {
		return usagef("name one species, such as agalychnis-callidryas; `spawnwright species list` shows them")
	}
	return nil
}

type valueRow struct {
	Part   string `json:"part,omitempty"`
	Key    string `json:"key"`
	Value  string `json:"value"`
	Source string `json:"source"`
}

// profiles gives the built-in profiles with the changes and additions of the
// file. Without -f, a file that is not there is no fault.
func (a *app) profiles(c *cobra.Command) ([]*species.Profile, error) {
	if !c.Flags().Changed("file") {
		if _, err := os.Stat(a.file); errors.Is(err, fs.ErrNotExist) {
			return species.Builtin(), nil
		}
	}
	room, err := a.open()
	if err != nil {
		return nil, err
	}
	return room.Profiles(), nil
}
