package parentage

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// membersShown is how many animals of a loop are told one by one.
const membersShown = 50

// Locate turns the loops among the errors of [pedigree.New] for t.Records into an
// *[Error] with the lines of their animals. The original is still found with
// errors.As. Other errors, which no table of this package has, and nil are given
// back as they are.
func (t *Table) Locate(err error) error {
	loops := loopsOf(err)
	if len(loops) == 0 {
		return err
	}
	lines := make(map[string]int, t.Rows)
	for i, r := range t.Records[:t.Rows] {
		lines[r.ID] = t.Line(i)
	}
	located := &Error{Warnings: t.Warnings, cause: err}
	for _, loop := range loops {
		if len(located.Problems) == Most {
			located.More = len(loops) - Most
			break
		}
		located.Problems = append(located.Problems, Problem{
			Line: lines[loop.Members[0]], Column: 1,
			Message: around(loop.Members, lines),
			Cure:    "one of these parents must be wrong",
		})
	}
	return located
}

func loopsOf(err error) (loops []*pedigree.LoopError) {
	var joined interface{ Unwrap() []error }
	if errors.As(err, &joined) {
		for _, e := range joined.Unwrap() {
			loops = append(loops, loopsOf(e)...)
		}
		return loops
	}
	var loop *pedigree.LoopError
	if errors.As(err, &loop) {
		loops = append(loops, loop)
	}
	return loops
}

// around tells a loop, each animal with its line.
func around(members []string, lines map[string]int) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s descends from itself: ", quoted([]byte(members[0])))
	for i, id := range members {
		if i == membersShown {
			fmt.Fprintf(&b, "... %d more ..., ", len(members)-i)
			break
		}
		fmt.Fprintf(&b, "%s (line %d) is from ", quoted([]byte(id)), lines[id])
	}
	b.WriteString(quoted([]byte(members[0])))
	return b.String()
}
