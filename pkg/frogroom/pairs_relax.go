package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// RelaxedRule is a rule that was set aside, see [pairing.Relaxable].
type RelaxedRule struct {
	Rule pairing.Rule `json:"rule"`
	By   string       `json:"by"` // "file" or "asked"; both say "asked"
}

// terms are what pairings of a day are judged by, with rules that are asked to be set
// aside, beside those of the file.
func (r *Room) terms(on civil.Date, asked []pairing.Rule) pairing.Terms {
	rules := r.Collection.Rules
	return pairing.Terms{
		Pedigree: r.Ancestry.Pedigree, Needs: r.needs, On: on,
		Rules: pairing.Rules{
			WarnInbreeding: rules.WarnInbreeding, MaxInbreeding: rules.MaxInbreeding,
			ClutchesASeason: rules.ClutchesASeason,
			Relaxed:         slices.Concat(r.relaxed, asked),
		},
	}
}

// relaxedRules says which rules are set aside, in their order, and by what.
func (r *Room) relaxedRules(asked []pairing.Rule) []RelaxedRule {
	var out []RelaxedRule
	for _, rule := range pairing.Relaxable() {
		switch {
		case slices.Contains(asked, rule):
			out = append(out, RelaxedRule{rule, "asked"})
		case slices.Contains(r.relaxed, rule):
			out = append(out, RelaxedRule{rule, "file"})
		}
	}
	return out
}

// mayRelax says why a rule cannot be set aside, and nothing when it can.
func mayRelax(rule pairing.Rule) (problem, cure string) {
	if slices.Contains(pairing.Relaxable(), rule) {
		return "", ""
	}
	can := words(pairing.Relaxable())
	if near := strictyaml.Nearest(string(rule), can); near != "" {
		return fmt.Sprintf("there is no rule %q", rule), fmt.Sprintf("did you mean %q? these can be relaxed: %s", near, joined(can))
	}
	return fmt.Sprintf("the rule %q cannot be relaxed", rule), "these can: " + joined(can)
}

func words(rules []pairing.Rule) []string {
	out := make([]string, len(rules))
	for i, r := range rules {
		out[i] = string(r)
	}
	return out
}
