package spreadsheet

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// strips are the keys that are taken from an animal that contradicts itself or
// others, step by step. After the last step the row itself is left out.
var strips = []struct {
	keys []string
	what string
}{
	{[]string{"sire", "dam"}, "its parents are left out"},
	{[]string{"hatched", "out_of_water", "acquired", "died", "left"}, "its dates are left out"},
	{[]string{"weight", "length", "sex_sign", "place", "promised", "food", "note", "name", "line", "locality"}, "all but its id, species and sex is left out"},
}

// settle reads back what was written, and takes away what the reader of
// collection files does not take, until it takes the rest. Each round takes
// something from every animal with an error, so that it ends.
func (c *converter) settle() {
	for {
		text, lines := c.write()
		_, problems := collection.Read(c.File, []byte(text))
		if len(c.animals) == 0 {
			c.fail(0, 0, "no row of the table could be taken", "look at what was left out, and why")
			return
		}
		if !problems.HasErrors() {
			c.result.YAML, c.result.Animals = []byte(text), len(c.animals)
			c.pass(problems, lines)
			return
		}
		if !c.strip(problems, lines) {
			panic("spreadsheet: the file that was written cannot be read: " + problems.Err().Error())
		}
	}
}

// strip takes something from each animal with an error. It is false when there
// is none.
func (c *converter) strip(problems strictyaml.Diagnostics, lines map[int]*animal) bool {
	done := make(map[*animal]bool)
	for _, p := range problems {
		a := lines[p.Line]
		if p.Severity != strictyaml.Error || a == nil || done[a] {
			continue
		}
		done[a] = true
		c.warn(cell{line: a.row.line, column: a.row.column}, fmt.Sprintf("%s: %s", inTable(p.Message, lines), a.less()), "correct the table")
	}
	c.animals = slices.DeleteFunc(c.animals, func(a *animal) bool { return a.gone })
	return len(done) > 0
}

// less takes the next step, and says what it was.
func (a *animal) less() string {
	for a.strips < len(strips) {
		step, found := strips[a.strips], false
		a.strips++
		for _, key := range step.keys {
			if _, ok := a.values[key]; ok {
				delete(a.values, key)
				found = true
			}
		}
		if found {
			return step.what
		}
	}
	a.gone = true
	return "the row is left out"
}

var lineOf = regexp.MustCompile(`line (\d+)`)

// inTable puts the lines of the table for those of the file into a message.
func inTable(message string, lines map[int]*animal) string {
	return lineOf.ReplaceAllStringFunc(message, func(found string) string {
		n, _ := strconv.Atoi(strings.TrimPrefix(found, "line "))
		if a := lines[n]; a != nil {
			return "line " + strconv.Itoa(a.row.line)
		}
		return found
	})
}

// pass hands on the warnings of the reader with their place in the table.
func (c *converter) pass(problems strictyaml.Diagnostics, lines map[int]*animal) {
	for _, p := range problems {
		if a := lines[p.Line]; a != nil {
			c.warn(cell{line: a.row.line, column: a.row.column}, inTable(p.Message, lines), p.Cure)
		}
	}
}
