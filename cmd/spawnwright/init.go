package main

import (
	_ "embed"
	"errors"
	"io/fs"
	"os"

	"github.com/spf13/cobra"
)

//go:embed starter.yaml
var starter []byte

func initCommand(a *app) *cobra.Command {
	var force bool
	c := &cobra.Command{
		Use:   "init",
		Short: "write a commented collection file to start from",
		Long: `init writes a small, commented collection file that "spawnwright check" accepts.
Without -o it goes to standard output. A file that exists is left alone unless
--force is given.`,
		Example: "  spawnwright init -o collection.yaml",
		Args:    noArguments,
		RunE: func(*cobra.Command, []string) error {
			if a.toFile() && !force {
				if _, err := os.Lstat(a.out); err == nil {
					return fileError(&fs.PathError{Op: "write", Path: a.out, Err: errors.New("the file exists; --force replaces it")})
				}
			}
			return a.put(starter)
		},
	}
	c.Flags().BoolVar(&force, "force", false, "replace a file that exists")
	a.outFlag(c)
	return c
}
