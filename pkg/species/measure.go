package species

import (
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// A measure is the unit of a number and the limits that a slip of the finger
// crosses.
type measure struct {
	unit      string // as shown behind the number, with its blank
	low, high float64
}

var (
	celsius   = measure{" °C", -5, 50}
	percent   = measure{" %", 0, 100}
	hours     = measure{" hours a day", 0, 24}
	ageDays   = measure{" days", 1, 20000}
	lengthMM  = measure{" mm", 1, 400}
	weightG   = measure{" g", 0.01, 5000}
	lifeYears = measure{" years", 0.1, 100}
	males     = measure{"", 0.1, 100}
	perLitre  = measure{" per litre", 0.01, 1000}
	eggs      = measure{" eggs", 1, 100000}
	nights    = measure{" nights", 0.1, 365}
	stepDays  = measure{" days", 0.01, 3650}
	times     = measure{" times", 1, 100}
	minutes   = measure{" minutes a day", 0, 1440}
	held      = measure{" days", 1, 730}
	feeders   = measure{" feeders", 0.1, 1000}
	feederMM  = measure{" mm", 0.1, 100}
	dryMG     = measure{" mg", 0.1, 100000}
	gosner    = measure{"", 15, 30}
	mealDays  = measure{" days", 0.25, 60}

	partOfStep = measure{" %", 0.1, 99.9}

	tenDegrees = measure{"", 1, 20}
)

func (m measure) schema() *strictyaml.Schema { return strictyaml.NumberFrom(m.low, m.high) }

// longestPhase is the most days that a phase may have.
const longestPhase = 730

func read(doc *strictyaml.Document, n *yaml.Node, key string, m measure) (float64, bool) {
	return doc.Float(n, key, m.low, m.high)
}

// readList reads a list of count numbers; cure says how to write one.
func readList(doc *strictyaml.Document, n *yaml.Node, key string, m measure, count int, cure string) ([]float64, bool) {
	if n.Kind != yaml.SequenceNode || len(n.Content) != count {
		doc.Errorf(n, cure, "%s is not a list of %d numbers", key, count)
		return nil, false
	}
	numbers := make([]float64, count)
	good := true
	for i, item := range n.Content {
		v, ok := read(doc, item, key, m)
		numbers[i], good = v, good && ok
	}
	return numbers, good
}

// rising reports numbers that fall, with the sorted ones as the cure.
func rising(doc *strictyaml.Document, n *yaml.Node, key, order string, numbers []float64) bool {
	if slices.IsSorted(numbers) {
		return true
	}
	sorted := slices.Sorted(slices.Values(numbers))
	doc.Errorf(n, "if the numbers are right, write ["+join(sorted, ", ")+"]", "%s must not fall: %s", key, order)
	return false
}

// plain writes a number as short as it can be read back.
func plain(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

func join(numbers []float64, between string) string {
	words := make([]string, len(numbers))
	for i, v := range numbers {
		words[i] = plain(v)
	}
	return strings.Join(words, between)
}
