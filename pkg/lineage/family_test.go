package lineage

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestFamilies(t *testing.T) {
	p, animals := lindenhof(t)
	d := Draw(p, animals, Everything().Families())
	got := read(t, d.DOT())
	assert.Equal(t, "2 young, 1 kept\nF 0.0833 expected", got.nodes["family-AC-11"]["label"], "Hob has left; Wren has young")
	assert.Equal(t, "AC-11, AC-13", got.nodes["family-AC-11"]["tooltip"])
	assert.Contains(t, got.edges, "young-AC-11 -> family-AC-11")
	assert.Contains(t, got.edges, "young-AC-11 -> animal-AC-12")
	assert.NotContains(t, got.nodes, "animal-AC-13")
	assert.Contains(t, got.nodes, "animal-AC-14", "one young alone has a box of its own")
	assert.Contains(t, got.graph["label"], "three edges: young of one mating that have no young here")
	assert.Equal(t, []int{15, 1, 2, 14}, []int{d.Animals, d.Families, d.Collapsed, d.Boxes()})

	around := read(t, Draw(p, animals, Around(10).Families()).DOT()) // Hob
	assert.Contains(t, around.nodes, "animal-AC-13", "whom the view is about keeps a box")
	for i := range animals {
		animals[i].Gone = true
	}
	gone := read(t, Draw(p, animals, Everything().Families()).DOT())
	assert.Equal(t, "2 young, none here\nF 0.0833 expected", gone.nodes["family-AC-11"]["label"])
	assert.Equal(t, "#8c8c8c", gone.nodes["family-AC-11"]["color"])
}

func TestLiving(t *testing.T) {
	p, animals := lindenhof(t)
	assert.Equal(t, []string{"AC-03", "AC-07", "AC-08"}, read(t, Draw(p, animals, Ancestors(6, 7).Living()).DOT()).boxes(), "Fenna has died")
	with := read(t, Draw(p, animals, Ancestors(3).Living()).DOT()).boxes()
	assert.Equal(t, []string{"AC-05"}, with, "whom the view is about stays")
	assert.Contains(t, read(t, Draw(p, animals, Ancestors(6).Living()).DOT()).nodes["animal-AC-07"]["label"], "(not all parents shown)")
}

func TestExpectedYoung(t *testing.T) {
	p, animals := lindenhof(t)
	grown, err := p.Grow([]pedigree.Record{{ID: "young of AC-04, AC-06", Sire: "AC-04", Dam: "AC-06"}})
	require.NoError(t, err)
	got := read(t, Draw(grown, append(animals, Animal{Expected: true}), Ancestors(p.Len())).DOT())
	young := got.nodes["animal-young of AC-04, AC-06"]
	assert.Equal(t, "young of AC-04, AC-06\nF 0.25", young["label"])
	assert.Equal(t, "rounded,filled,dashed", young["style"])
	assert.Equal(t, "young of AC-04, AC-06, F 0.25", young["tooltip"])
	assert.Contains(t, got.graph["label"], "dashed border")
}

// clutches is a line of founders and clutches of ten, each of two young of the
// clutches before.
func clutches(tb testing.TB, animals int) (*pedigree.Pedigree, []Animal) {
	tb.Helper()
	records := []pedigree.Record{{ID: "0"}, {ID: "1"}}
	about := make([]Animal, animals)
	for n := 0; len(records) < animals; n++ {
		sire, dam := len(records)*7/11, len(records)*5/9
		for range 10 {
			i := len(records)
			if i == animals {
				break
			}
			records = append(records, pedigree.Record{ID: fmt.Sprint(i), Sire: fmt.Sprint(sire), Dam: fmt.Sprint(dam)})
			about[i].Clutch = fmt.Sprintf("C-%d", n)
		}
	}
	p, err := pedigree.New(records)
	require.NoError(tb, err)
	return p, about
}

// With many animals families are collapsed in any case.
func TestManyBecomeFamilies(t *testing.T) {
	p, animals := clutches(t, Large)
	d := Draw(p, animals, Everything())
	assert.Positive(t, d.Collapsed)
	assert.Equal(t, d.Animals-d.Collapsed+d.Families, d.Boxes())
	assert.Equal(t, d.Boxes(), strings.Count(d.DOT(), "shape=\"box\"")-clutchPoints(d))
	p, animals = clutches(t, Large-1)
	assert.Zero(t, Draw(p, animals, Everything()).Collapsed)
}

// clutchPoints counts the matings that are drawn as the id of their clutch.
func clutchPoints(d *Drawing) (n int) {
	for _, m := range d.matings {
		if !d.bare(m) && m.clutch != "" {
			n++
		}
	}
	return n
}

// Every animal of the view stands in just one box.
func TestEverybodyHasABox(t *testing.T) {
	p, animals := clutches(t, 500)
	d := Draw(p, animals, Everything().Families())
	got := read(t, d.DOT())
	var named []string
	for id, n := range got.nodes {
		switch {
		case strings.HasPrefix(id, "animal-"):
			named = append(named, strings.TrimPrefix(id, "animal-"))
		case strings.HasPrefix(id, "family-"):
			named = append(named, strings.Split(n["tooltip"], ", ")...)
		}
	}
	slices.Sort(named)
	var want []string
	for i := range p.Len() {
		want = append(want, p.ID(i))
	}
	slices.Sort(want)
	assert.Equal(t, want, named)
}

func BenchmarkDOT10000(b *testing.B) {
	p, animals := clutches(b, 10_000)
	boxes := 0
	for b.Loop() {
		d := Draw(p, animals, Everything())
		d.DOT()
		boxes = d.Boxes()
	}
	b.ReportMetric(float64(boxes), "boxes")
}
