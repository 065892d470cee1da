package main

import (
	"fmt"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func (a *app) showPair(ancestry *frogroom.Ancestry, one, other string) error {
	p, err := ancestry.Pair(one, other)
	if err != nil {
		return unknownID(err)
	}
	title := fmt.Sprintf("%s and %s: kinship %s", p.A, p.B, coefficient(p.Kinship, p.Expected))
	if len(p.Shared) > 0 {
		title += ", through:"
	}
	t := &table.Table{
		Title: title, Empty: "No shared ancestor is known.",
		Columns: []table.Column{{Name: "shared ancestor"}, {Name: "name"}, {Name: "share", Right: true}},
	}
	for _, s := range p.Shared {
		t.Add(s.ID, s.Name, coefficient(s.Share, false))
	}
	if marked(p.Kinship, p.Expected) {
		a.warn([]string{markWarning})
	}
	a.warn(p.Warnings)
	return a.show("pair", p, t)
}
