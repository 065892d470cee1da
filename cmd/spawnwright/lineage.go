package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func lineageCommand(a *app) *cobra.Command {
	var ancestors, descendants bool
	var parents tableFlags
	c := &cobra.Command{
		Use:   "lineage [ANIMAL…]",
		Short: "the family tree as a graph, drawn when Graphviz is installed",
		Long: `lineage writes the ancestors and descendants of the animals that are named, or
of all, as Graphviz DOT. With -o and a name that ends in .svg, .png or .pdf it
runs the program dot of Graphviz to draw it.`,
		Example: `  spawnwright lineage -o tree.svg
  spawnwright lineage --ancestors AC-22 > ac-22.dot`,
		ValidArgsFunction: a.completeAnimals(0),
		RunE: func(_ *cobra.Command, args []string) error {
			if (ancestors || descendants) && len(args) == 0 {
				return usagef("name the animals whose ancestors or descendants to show")
			}
			on, err := a.on()
			if err != nil {
				return err
			}
			ancestry, err := a.ancestry(&parents)
			if err != nil {
				return err
			}
			direction := frogroom.Both
			switch {
			case ancestors && !descendants:
				direction = frogroom.Ancestors
			case descendants && !ancestors:
				direction = frogroom.Descendants
			}
			dot, err := ancestry.Lineage(on, direction, args...)
			if err != nil {
				return unknownID(err)
			}
			return a.draw(dot)
		},
	}
	c.Flags().BoolVar(&ancestors, "ancestors", false, "only ancestors of the animals that are named")
	c.Flags().BoolVar(&descendants, "descendants", false, "only descendants of the animals that are named")
	parents.register(c)
	a.outFlag(c)
	return c
}

// draw writes the graph, as a picture when -o asks for one. Without Graphviz
// the DOT is written beside where the picture would be, and how to go on is said.
func (a *app) draw(dot string) error {
	kind := strings.TrimPrefix(strings.ToLower(filepath.Ext(a.out)), ".")
	switch kind {
	case "svg", "png", "pdf":
	case "", "dot", "gv":
		return a.write([]byte(dot))
	default:
		return usagef("-o %s: a lineage is written as .svg, .png, .pdf, or as .dot", a.out)
	}
	program, err := exec.LookPath("dot")
	if err != nil {
		picture := a.out
		a.out = strings.TrimSuffix(a.out, filepath.Ext(a.out)) + ".dot"
		if err := a.write([]byte(dot)); err != nil {
			return err
		}
		return fileError(fmt.Errorf("%s is the graph; to draw it, install the package graphviz of your system (or see graphviz.org), and run the command again or `dot -T%s %s -o %s`", a.out, kind, a.out, picture))
	}
	run := exec.Command(program, "-T"+kind)
	run.Stdin = strings.NewReader(dot)
	var picture, complaint bytes.Buffer
	run.Stdout, run.Stderr = &picture, &complaint
	if err := run.Run(); err != nil {
		return fileError(fmt.Errorf("dot could not draw the graph: %w: %s", err, strings.TrimSpace(complaint.String())))
	}
	return a.write(picture.Bytes())
}
