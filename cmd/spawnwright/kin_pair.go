package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"

	"github.com/spawnwright/spawnwright/pkg/kin"
)

func (a *app) showPair(ancestry *kin.Ancestry, one, other string) error {
	p, err := ancestry.Pair(one, other)
	if err != nil {
		return unknownID(err)
	}
	if marked(p.Kinship, p.Expected) {
		a.warn([]string{kin.ExpectedWarning})
	}
	a.warn(p.Warnings)
	if a.format == "csv" {
		return a.writePair(p)
	}
	tables := []*table.Table{sharedTable(p)}
	if ancestry.Table != nil {
		tables[0].Drop("name") // there are none
	}
	if len(p.Shared) > 0 {
		tables = append(tables, pathTable(p))
	}
	return a.show("pair", p, tables...)
}

// What people are shown of long lists; JSON and CSV have more.
const (
	sharedShown = 20
	pathsShown  = 12
)

func sharedTable(p kin.Pair) *table.Table {
	t := &table.Table{
		Title: pairTitle(p), Empty: "No shared ancestor is known.",
		Columns: []table.Column{{Name: "shared ancestor"}, {Name: "name"}, {Name: "share", Right: true}, {Name: "paths", Right: true}},
	}
	rest := 0.0
	for i, s := range p.Shared {
		if i < sharedShown {
			t.Add(s.ID, s.Name, coefficient(s.Share, false), fmt.Sprint(s.PathCount))
		} else {
			rest += s.Share
		}
	}
	if more := len(p.Shared) - sharedShown; more > 0 {
		t.Add(fmt.Sprintf("and %d more", more), "", coefficient(rest, false), "")
	}
	return t
}

// pathTable lists the strongest paths over all ancestors.
func pathTable(p kin.Pair) *table.Table {
	t := &table.Table{Columns: []table.Column{{Name: "share", Right: true}, {Name: "path", Width: 120}}}
	var paths []kin.Path
	count := uint64(0)
	for _, s := range p.Shared {
		paths = append(paths, s.Paths...)
		count = max(count, count+s.PathCount) // there may be more than can be counted
	}
	slices.SortStableFunc(paths, func(x, y kin.Path) int { return cmp.Compare(y.Share, x.Share) })
	paths = paths[:min(len(paths), pathsShown)]
	for _, path := range paths {
		t.Add(coefficient(path.Share, false), pathText(path))
	}
	if more := count - uint64(len(paths)); more > 0 {
		t.Add("", fmt.Sprintf("and %d more", more))
	}
	return t
}

// pairTitle says how close two animals are, in words and as a number.
func pairTitle(p kin.Pair) string {
	kinship := coefficient(p.Kinship, p.Expected)
	if p.Least != nil && *p.Least < *p.Greatest {
		kinship += fmt.Sprintf(" (%s to %s, as the parents may have been)", coefficient(*p.Least, false), coefficient(*p.Greatest, false))
	}
	return fmt.Sprintf("%s and %s: %s\nkinship %s, the inbreeding to expect in their young", p.A, p.B, p.Relationship, kinship)
}

// pathText writes a path from the first animal up to the ancestor and down to the
// second.
func pathText(path kin.Path) string {
	text := strings.Join(path.Up, " ← ")
	for _, id := range path.Down[1:] {
		text += " → " + id
	}
	return text
}

// writePair writes a row for each shared ancestor, or path, with all digits.
func (a *app) writePair(p kin.Pair) error {
	out := table.NewStream(0, "a", "b", "kinship", "young inbreeding", "relationship", "shared ancestor", "name", "share", "paths")
	shared := slices.Clone(p.Shared)
	if len(shared) == 0 {
		shared = append(shared, kin.Shared{})
	}
	for _, s := range shared {
		out.Text(p.A, p.B)
		out.Number(p.Kinship, p.YoungInbreeding)
		out.Text(p.Relationship, s.ID, s.Name)
		out.Number(s.Share, float64(s.PathCount))
		out.End()
	}
	return a.write(out.Bytes())
}
