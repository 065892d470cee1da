// Package picture draws the results of frogroom as SVG: the kinship of the
// living, the years ahead, the season. A picture shows what the tables say,
// nothing else; it can be read in black and white and by people who are
// colour-blind, and says in words what is in it to those who do not see it.
//
// The same result gives the same bytes.
package picture

import "github.com/spawnwright/spawnwright/pkg/svg"

// alarm is [svg.Red] for text, which has to be darker to be read.
var alarm = svg.Paint{Light: "#b34700", Dark: "#ee7a26"}

// heading puts the name of the keeper before a title, where there is one.
func heading(what, keeper string) string {
	if keeper == "" {
		return what
	}
	return keeper + ": " + what
}
