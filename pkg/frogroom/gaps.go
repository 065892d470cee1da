package frogroom

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// gaps collects what the rules about a pairing could not look at, rule by rule.
type gaps struct {
	animals int // in the pairing
	rules   []pairing.Rule
	of      map[pairing.Rule][]string
}

func newGaps(animals int) *gaps { return &gaps{animals: animals, of: make(map[pairing.Rule][]string)} }

func (g *gaps) add(f pairing.Finding) {
	if _, seen := g.of[f.Rule]; !seen {
		g.rules = append(g.rules, f.Rule)
	}
	for _, id := range f.Animals {
		if !slices.Contains(g.of[f.Rule], id) {
			g.of[f.Rule] = append(g.of[f.Rule], id)
		}
	}
}

// String gives "locality, age of AC-08 and AC-14": the animals only where the
// gap is not about all of them.
func (g *gaps) String() string {
	parts := make([]string, len(g.rules))
	for i, rule := range g.rules {
		parts[i] = string(rule)
		if ids := g.of[rule]; len(ids) < g.animals {
			parts[i] += " of " + joined(ids)
		}
	}
	return strings.Join(parts, ", ")
}
