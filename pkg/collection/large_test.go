package collection_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// A line of descent as long as the file, youngest first, is no reason to run
// out of stack or of time.
func TestReadLongDescent(t *testing.T) {
	const n = 100_000
	var b strings.Builder
	b.WriteString("animals:\n")
	for i := range n - 1 {
		fmt.Fprintf(&b, "- {id: A%d, species: hyla-cinerea, sire: A%d}\n", i, i+1)
	}
	open := fmt.Sprintf("- {id: A%d, species: hyla-cinerea}\n", n-1)
	closed := fmt.Sprintf("- {id: A%d, species: hyla-cinerea, sire: A0}\n", n-1)

	c := must(t, b.String()+open)
	assert.Len(t, c.Animals, n)

	c, problems := collection.Read("f", []byte(b.String()+closed))
	assert.Nil(t, c)
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].Message, `animal "A0" is its own ancestor: it comes from animal "A1" (line 3), `)
	assert.Contains(t, problems[0].Message, "100000 members in all")
	assert.Less(t, len(problems[0].Message), 1000)
}

// Many wrong ids among many right ones: only the first are compared with all.
func TestReadManyWrongIDs(t *testing.T) {
	const n = 10_000
	var b strings.Builder
	b.WriteString("animals:\n")
	for i := range n {
		fmt.Fprintf(&b, "- {id: A%d, species: hyla-cinere, sire: A%d, dam: [B%d]}\n", i, i+1_000_000, i)
	}
	b.WriteString("diary:\n")
	for i := range n {
		fmt.Fprintf(&b, "- {on: 2027-01-01, clutch: A%d, status: died}\n", i)
	}
	start := time.Now()
	_, problems := collection.Read("f", []byte(b.String()))
	// Comparing each with all would take minutes; seconds allow for a slow machine.
	assert.Less(t, time.Since(start), 20*time.Second)
	assert.Len(t, problems, 5*n, "every one is reported")
	guessed := 0
	for _, p := range problems {
		if strings.HasPrefix(p.Cure, "did you mean") {
			guessed++
		}
	}
	assert.GreaterOrEqual(t, guessed, n, "one slip of the species is shared by all")
	assert.LessOrEqual(t, guessed, n+19, "with the 19 others that may be guessed")
}

// The count of guesses goes for all checks together.
func TestReadManyWrongSexes(t *testing.T) {
	var b strings.Builder
	b.WriteString("animals:\n")
	for i := 100; i < 130; i++ {
		fmt.Fprintf(&b, "- {id: M%d, species: hyla-cinerea, sex: male}\n- {id: F%d, species: hyla-cinerea, sex: female, dam: M%d}\n", i, i, i)
	}
	_, problems := collection.Read("f", []byte(b.String()))
	guessed := 0
	for _, p := range problems {
		if strings.HasPrefix(p.Cure, `did you mean "F`) {
			guessed++
		}
	}
	assert.Len(t, problems, 30)
	assert.Equal(t, 20, guessed)
}

func TestReadRefusesEndlessListOfParents(t *testing.T) {
	list := strings.Repeat("x, ", 1000)
	_, problems := collection.Read("f", []byte("animals: [{id: A, species: hyla-cinerea, sire: ["+list+"y]}]\n"))
	require.Len(t, problems, 1)
	assert.Equal(t, "the list sire has 1001 ids, more than 1000", problems[0].Message)
	assert.Equal(t, at(1, 48), at(problems[0].Line, problems[0].Column))
}
