package breedingplan

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// RelaxedRule is a rule that was set aside, see [pairing.Relaxable].
type RelaxedRule struct {
	Rule pairing.Rule `json:"rule"`
	By   string       `json:"by"` // "file" for the rules of the [Stock], or "asked"; both say "asked"
}

// terms are what pairings are judged by when a wish sets rules aside, too.
func (s *Stock) terms(w Wish) pairing.Terms {
	t := s.Terms
	t.Rules.Relaxed = slices.Concat(t.Rules.Relaxed, w.Relax)
	return t
}

// relaxed says which rules are set aside, in their order, and by what.
func (s *Stock) relaxed(w Wish) []RelaxedRule {
	var out []RelaxedRule
	for _, rule := range pairing.Relaxable() {
		switch {
		case slices.Contains(w.Relax, rule):
			out = append(out, RelaxedRule{rule, "asked"})
		case slices.Contains(s.Terms.Rules.Relaxed, rule):
			out = append(out, RelaxedRule{rule, "file"})
		}
	}
	return out
}

func words(rules []pairing.Rule) []string {
	out := make([]string, len(rules))
	for i, r := range rules {
		out[i] = string(r)
	}
	return out
}
