package main

import (
	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

func schemaCommand(a *app) *cobra.Command {
	c := &cobra.Command{
		Use:   "schema",
		Short: "the form of the file as JSON Schema, for editors that help while writing",
		Long: `schema prints the keys, words and limits of the collection file as JSON Schema
(draft 2020-12), which many editors know how to use. It is found by running the
reader of the file, so that both know the same keys. What hangs together between
values is for "spawnwright check" alone.`,
		Example: `  spawnwright schema -o collection.schema.json
  # then, in the first line of collection.yaml:
  # yaml-language-server: $schema=collection.schema.json`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error {
			text, err := collection.Schema().Text()
			if err != nil {
				return err
			}
			return a.put(text)
		},
	}
	a.outFlag(c)
	return c
}
