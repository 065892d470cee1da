package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/lineage"
)

// lineageFlags are the flags of lineage.
type lineageFlags struct {
	ancestors, descendants, pair, living, families bool
	parents                                        tableFlags
}

func lineageCommand(a *app) *cobra.Command {
	var f lineageFlags
	c := &cobra.Command{
		Use:   "lineage [ANIMAL…]",
		Short: "the family tree as a graph, drawn when Graphviz is installed",
		Long: `lineage writes the ancestors and descendants of the animals that are named, or
of all, as Graphviz DOT. With -o and a name that ends in .svg, .png or .pdf it
runs the program dot of Graphviz to draw it.

With --pair it draws the young that two animals would have, with their ancestors.
With --families the young of a mating that have no young themselves stand in one
box; from 1000 animals on they do so in any case.`,
		Example: `  spawnwright lineage -o tree.svg
  spawnwright lineage --ancestors AC-22 > ac-22.dot
  spawnwright lineage --pair AC-22 AC-26 -o young.svg
  spawnwright lineage --living --families --format mermaid`,
		ValidArgsFunction: a.completeAnimals(0),
		RunE: func(_ *cobra.Command, args []string) error {
			if err := f.check(a, args); err != nil {
				return err
			}
			on, err := a.on()
			if err != nil {
				return err
			}
			ancestry, err := a.ancestry(&f.parents)
			if err != nil {
				return err
			}
			drawing, err := ancestry.Lineage(on, f.wish(args))
			if err != nil {
				return unknownID(err)
			}
			a.noteSize(drawing, f.families)
			if a.format == "mermaid" {
				return a.write([]byte(drawing.Mermaid()))
			}
			return a.draw(drawing.DOT())
		},
	}
	flags := c.Flags()
	flags.BoolVar(&f.ancestors, "ancestors", false, "only ancestors of the animals that are named")
	flags.BoolVar(&f.descendants, "descendants", false, "only descendants of the animals that are named")
	flags.BoolVar(&f.pair, "pair", false, "the young that the two animals that are named would have, and its ancestors")
	flags.BoolVar(&f.living, "living", false, "leave out the animals that died or left")
	flags.BoolVar(&f.families, "families", false, "young without young of their own in one box for each mating")
	f.parents.register(c)
	a.formatFlag(c, "dot", "mermaid")
	a.outFlag(c, ".svg", ".png", ".pdf")
	return c
}

// check finds flags that do not go together.
func (f *lineageFlags) check(a *app, args []string) error {
	switch {
	case f.pair && len(args) != 2:
		return usagef("--pair takes two animals, such as --pair AC-22 AC-26, but got %d", len(args))
	case f.pair && args[0] == args[1]:
		return usagef("--pair takes two animals, and %s is one", args[0])
	case f.pair && (f.ancestors || f.descendants):
		return usagef("--pair shows all ancestors of the young; leave out --ancestors and --descendants")
	case (f.ancestors || f.descendants) && len(args) == 0:
		return usagef("name the animals whose ancestors or descendants to show")
	}
	return nil
}

func (f *lineageFlags) wish(args []string) kin.LineageWish {
	w := kin.LineageWish{IDs: args, Pair: f.pair, Living: f.living, Families: f.families}
	switch {
	case f.ancestors && !f.descendants:
		w.Direction = kin.Ancestors
	case f.descendants && !f.ancestors:
		w.Direction = kin.Descendants
	}
	return w
}

// manyBoxes is from how many boxes Graphviz takes long.
const manyBoxes = 2000

// noteSize says what was put together to keep the graph drawable, and when it
// will take long all the same.
func (a *app) noteSize(d *lineage.Drawing, asked bool) {
	var notes []string
	if d.Families > 0 && !asked {
		notes = append(notes, fmt.Sprintf("%d animals are many: %d of them, without young of their own, stand in %d boxes for their families", d.Animals, d.Collapsed, d.Families))
	}
	if d.Boxes() > manyBoxes {
		notes = append(notes, fmt.Sprintf("%d boxes may take Graphviz minutes; name animals to draw fewer, or leave out those that are gone with --living", d.Boxes()))
	}
	a.warn(notes)
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
