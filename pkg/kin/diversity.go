package kin

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Diversity is what a line is judged by, for each species.
type Diversity struct {
	// Summary is that of the only group; nil when there are several or none, for
	// figures over two species mean nothing.
	*diversity.Summary
	Groups   []GroupDiversity `json:"groups"`
	Warnings []string         `json:"warnings,omitempty"`
}

// GroupDiversity is what the living animals of one species are judged by.
type GroupDiversity struct {
	Species string `json:"species,omitempty"` // empty for a plain table
	diversity.Summary
}

// Diversity gives the summaries of the living animals, whose numbers are given;
// nil stands for those that are in the room on that day, or for all of a plain
// table. It panics, and costs, as [diversity.Summarise] does.
func (a *Ancestry) Diversity(on civil.Date, living []int, drops diversity.Drops) Diversity {
	d := Diversity{Groups: []GroupDiversity{}}
	for _, m := range a.members(on, living) {
		d.Groups = append(d.Groups, GroupDiversity{m.species, diversity.Summarise(a.Pedigree, m.living, drops)})
	}
	if len(d.Groups) == 1 {
		d.Summary = &d.Groups[0].Summary
	}
	if slices.ContainsFunc(d.Groups, func(g GroupDiversity) bool { return g.Uncertain > 0 }) {
		d.Warnings = append(d.Warnings, "a parent or ancestor is one of several: these are expectations, or estimates from them")
	}
	d.Warnings = append(d.Warnings, pedigree.FounderWarning)
	return d
}
