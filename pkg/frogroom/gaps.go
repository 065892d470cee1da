package frogroom

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// gaps collects what the rules about a pairing could not look at.
type gaps struct {
	animals int // in the pairing
	whats   []string
	of      map[string][]string // animals, by what is not known
}

func newGaps(animals int) *gaps { return &gaps{animals: animals, of: make(map[string][]string)} }

func (g *gaps) add(f pairing.Finding) {
	what := string(f.Rule)
	if f.Value != "" && f.Limit == "" && f.Rule != pairing.RuleAncestry {
		what = "the " + what + " that the species needs" // the animal's own is known
	}
	if _, seen := g.of[what]; !seen {
		g.whats = append(g.whats, what)
	}
	for _, id := range f.Animals {
		if !slices.Contains(g.of[what], id) {
			g.of[what] = append(g.of[what], id)
		}
	}
}

// String gives "locality, age of AC-08 and AC-14": the animals only where the
// gap is not about all of them.
func (g *gaps) String() string {
	parts := make([]string, len(g.whats))
	for i, what := range g.whats {
		parts[i] = what
		if ids := g.of[what]; len(ids) < g.animals {
			parts[i] += " of " + words.And(ids)
		}
	}
	return strings.Join(parts, ", ")
}
