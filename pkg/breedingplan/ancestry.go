package breedingplan

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// ancestryWarnings says what kinships of some lines rest on, and names those of which
// nothing at all is known.
func ancestryWarnings(lines ...*line) []string {
	warnings := []string{pedigree.FounderWarning}
	for _, l := range lines {
		known := slices.ContainsFunc(l.here, func(i int) bool { return l.stock.Terms.Pedigree.CompleteGenerations(i) > 0 })
		if !known && len(l.here) > 1 {
			warnings = append(warnings, "no parent of any "+l.species+" is known: every kinship of theirs is a lower bound, and who is rare cannot be told")
		}
	}
	return warnings
}
