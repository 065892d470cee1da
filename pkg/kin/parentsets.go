package kin

import (
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// parentSets are the parents that are one of several, each made once.
type parentSets struct {
	list []pedigree.Group
	made map[string]bool
}

// parent gives the name of a parent in the pedigree: its id, or that of a group.
func (g *parentSets) parent(name string, ids []string, mix collection.Mix) string {
	switch {
	case len(ids) == 0:
		return ""
	case len(ids) == 1:
		return ids[0]
	case g.made[name]:
		return name
	case g.made == nil:
		g.made = make(map[string]bool)
	}
	g.made[name] = true
	group := pedigree.Group{ID: name, Kind: pedigree.OneUnknown}
	if mix == collection.Several {
		group.Kind = pedigree.Several
	}
	for _, id := range ids {
		group.Candidates = append(group.Candidates, pedigree.Candidate{ID: id})
	}
	g.list = append(g.list, group)
	return name
}
