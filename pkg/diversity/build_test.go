package diversity_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// build makes a pedigree from words "id,sire,dam", 0 for an unknown parent.
func build(t testing.TB, text string, groups ...pedigree.Group) *pedigree.Pedigree {
	t.Helper()
	var records []pedigree.Record
	for word := range strings.FieldsSeq(text) {
		part := strings.Split(word, ",")
		require.Len(t, part, 3, word)
		for i := range part {
			if part[i] == "0" {
				part[i] = ""
			}
		}
		records = append(records, pedigree.Record{ID: part[0], Sire: part[1], Dam: part[2]})
	}
	p, err := pedigree.New(records, groups...)
	require.NoError(t, err)
	return p
}

// numbers gives the numbers of the animals with these ids, written as "4 5 6".
func numbers(t testing.TB, p *pedigree.Pedigree, ids string) []int {
	t.Helper()
	var all []int
	for id := range strings.FieldsSeq(ids) {
		i, ok := p.Index(id)
		require.True(t, ok, id)
		all = append(all, i)
	}
	return all
}

func everyone(p *pedigree.Pedigree) []int {
	all := make([]int, p.Len())
	for i := range all {
		all[i] = i
	}
	return all
}

// named gives contributions by words: "1" for founder 1, "sire of 1" and "dam of
// 1" for unknown parents, "from s" for a source.
func named(p *pedigree.Pedigree, c diversity.Contributions) map[string]float64 {
	m := map[string]float64{}
	for _, x := range c {
		m[name(p, x.Founder)] += x.Share
	}
	return m
}

func name(p *pedigree.Pedigree, f diversity.Founder) string {
	switch f.Role {
	case diversity.UnknownSire:
		return "sire of " + p.ID(f.Animal)
	case diversity.UnknownDam:
		return "dam of " + p.ID(f.Animal)
	case diversity.OneSource:
		return "from " + f.Source
	}
	return p.ID(f.Animal)
}

// fullSibLine is a line of brother and sister matings: s2 and d2 are of the
// founders' young s1 and d1, and so on. The last cohort is a single animal.
func fullSibLine(t testing.TB, generations int) *pedigree.Pedigree {
	text := "s0,0,0 d0,0,0"
	for g := range generations {
		for _, x := range []string{"s", "d"} {
			text += fmt.Sprintf(" %s%d,s%d,d%d", x, g+1, g, g)
		}
	}
	return build(t, text)
}
