package lineage

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// lindenhof is a colony of 15: four founders, a clutch with two possible
// fathers, a father with his daughter, full sibs, and their young.
func lindenhof(t testing.TB) (*pedigree.Pedigree, []Animal) {
	t.Helper()
	rows := []struct {
		pedigree.Record
		Animal
	}{
		{pedigree.Record{ID: "AC-01"}, Animal{Name: "Quill", Sex: Male, Line: "Tarcoles 2021", Gone: true}},
		{pedigree.Record{ID: "AC-02"}, Animal{Name: "Sedge", Sex: Female, Line: "Tarcoles 2021"}},
		{pedigree.Record{ID: "AC-03"}, Animal{Name: "Moss", Sex: Male, Line: "Limón 2019"}},
		{pedigree.Record{ID: "AC-05"}, Animal{Name: "Fenna", Sex: Female, Line: "Limón 2019", Gone: true}},
		{pedigree.Record{ID: "AC-04", Sire: "AC-01", Dam: "AC-02"}, Animal{Name: "Bram", Sex: Male, Clutch: "C-24-01", Line: "Tarcoles 2021"}},
		{pedigree.Record{ID: "AC-06", Sire: "AC-01", Dam: "AC-02"}, Animal{Name: "Ottilie", Sex: Female, Clutch: "C-24-01", Line: "Tarcoles 2021"}},
		{pedigree.Record{ID: "AC-07", Sire: "AC-03", Dam: "AC-05"}, Animal{Name: "Piet", Sex: Male, Clutch: "C-24-02", Line: "Limón 2019"}},
		{pedigree.Record{ID: "AC-08", Sire: "AC-03", Dam: "AC-05"}, Animal{Name: "Greta", Sex: Female, Clutch: "C-24-02", Line: "Limón 2019"}},
		{pedigree.Record{ID: "AC-11", Sire: "fathers", Dam: "AC-08"}, Animal{Clutch: "C-26-03"}},
		{pedigree.Record{ID: "AC-12", Sire: "fathers", Dam: "AC-08"}, Animal{Name: "Wren", Sex: Female, Clutch: "C-26-03"}},
		{pedigree.Record{ID: "AC-13", Sire: "fathers", Dam: "AC-08"}, Animal{Name: "Hob", Sex: Male, Clutch: "C-26-03", Gone: true}},
		{pedigree.Record{ID: "AC-14", Sire: "AC-03", Dam: "AC-08"}, Animal{Name: "Tilde", Sex: Female, Line: "Limón 2019"}},
		{pedigree.Record{ID: "AC-15", Sire: "AC-04", Dam: "AC-06"}, Animal{Name: "Juno", Sex: Female, Clutch: "C-26-05", Line: "Tarcoles 2021"}},
		{pedigree.Record{ID: "AC-16", Sire: "AC-04", Dam: "AC-12"}, Animal{Clutch: "C-27-01"}},
		{pedigree.Record{ID: "AC-17", Dam: "AC-15"}, Animal{Clutch: "C-27-02"}},
	}
	var records []pedigree.Record
	var animals []Animal
	for _, r := range rows {
		records = append(records, r.Record)
		animals = append(animals, r.Animal)
	}
	p, err := pedigree.New(records, pedigree.Group{
		ID:         "fathers",
		Candidates: []pedigree.Candidate{{ID: "AC-04", Weight: 2}, {ID: "AC-07", Weight: 1}},
	})
	require.NoError(t, err)
	return p, animals
}

func TestBoxes(t *testing.T) {
	p, animals := lindenhof(t)
	boxes := read(t, Draw(p, animals, Everything()).DOT()).nodes
	for _, tc := range []struct {
		why, id string
		want    map[string]string
	}{
		{"a founder that is gone has a thin grey double border, and no F", "AC-01", map[string]string{
			"label": "Quill\nAC-01, male\nTarcoles 2021", "style": "rounded,filled", "penwidth": "1",
			"peripheries": "2", "color": "#8c8c8c", "fontcolor": "#3d3d3d", "fillcolor": "#ffffff",
			"tooltip": "AC-01, Quill, male, line Tarcoles 2021, F 0, died or left",
		}},
		{"a living female has a thin border", "AC-06", map[string]string{
			"label": "Ottilie\nAC-06, female\nTarcoles 2021\nF 0", "style": "rounded,filled", "penwidth": "1",
			"fillcolor": "#ffffff", "tooltip": "AC-06, Ottilie, female, line Tarcoles 2021, clutch C-24-01, F 0",
		}},
		{"a living male has a thick border", "AC-04", map[string]string{
			"label": "Bram\nAC-04, male\nTarcoles 2021\nF 0", "style": "rounded,filled", "penwidth": "2.4",
			"fillcolor": "#ffffff", "tooltip": "AC-04, Bram, male, line Tarcoles 2021, clutch C-24-01, F 0",
		}},
		{"no name, no sex, one of two fathers: one third of 1/4", "AC-11", map[string]string{
			"label": "AC-11\nsex unknown\nF 0.0833 expected", "style": "rounded,filled,dotted", "penwidth": "1",
			"fillcolor": "#efe0b6", "tooltip": "AC-11, sex unknown, clutch C-26-03, F 0.0833 expected",
		}},
		{"young of a father and his daughter", "AC-14", map[string]string{
			"label": "Tilde\nAC-14, female\nLimón 2019\nF 0.25", "style": "rounded,filled", "penwidth": "1",
			"fillcolor": "#cfa45a", "tooltip": "AC-14, Tilde, female, line Limón 2019, F 0.25",
		}},
		{"two thirds of 1/4", "AC-16", map[string]string{
			"label": "AC-16\nsex unknown\nF 0.1667 expected", "style": "rounded,filled,dotted", "penwidth": "1",
			"fillcolor": "#e2c586", "tooltip": "AC-16, sex unknown, clutch C-27-01, F 0.1667 expected",
		}},
	} {
		t.Run(tc.why, func(t *testing.T) {
			got := boxes["animal-"+tc.id]
			for _, same := range []string{"id", "fontname", "fontsize", "margin", "shape"} {
				require.Contains(t, got, same)
				delete(got, same)
			}
			if diff := cmp.Diff(tc.want, got); diff != "" {
				t.Errorf("%s (-want +got):\n%s", tc.id, diff)
			}
		})
	}
}

func TestRowsAreGenerations(t *testing.T) {
	p, animals := lindenhof(t)
	got := read(t, Draw(p, animals, Everything()).DOT()).rows
	want := [][]string{
		{"animal-AC-01", "animal-AC-02", "animal-AC-03", "animal-AC-05"},
		{"animal-AC-04", "animal-AC-06", "animal-AC-07", "animal-AC-08"},
		{"animal-AC-11", "animal-AC-12", "animal-AC-13", "animal-AC-14", "animal-AC-15"},
		{"animal-AC-16", "animal-AC-17"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("rows (-want +got):\n%s", diff)
	}
}

func TestMatings(t *testing.T) {
	p, animals := lindenhof(t)
	got := read(t, Draw(p, animals, Descendants(6, 12)).DOT()) // Piet, Juno
	want := map[string]map[string]string{
		"animal-AC-04 -> young-AC-11": {
			"dir": "none", "style": "dashed", "label": "67 %", "fontname": font, "fontsize": "9", "tooltip": "possible parent, 67 %",
		},
		"animal-AC-07 -> young-AC-11": {
			"dir": "none", "style": "dashed", "label": "33 %", "fontname": font, "fontsize": "9", "tooltip": "possible parent, 33 %",
		},
		"animal-AC-08 -> young-AC-11": {"dir": "none"},
		"young-AC-11 -> animal-AC-11": {"arrowsize": "0.6"},
		"young-AC-11 -> animal-AC-12": {"arrowsize": "0.6"},
		"young-AC-11 -> animal-AC-13": {"arrowsize": "0.6"},
		"animal-AC-04 -> young-AC-16": {"dir": "none"},
		"animal-AC-12 -> young-AC-16": {"dir": "none"},
		"young-AC-16 -> animal-AC-16": {"arrowsize": "0.6"},
		"animal-AC-04 -> young-AC-15": {"dir": "none"}, // the other parent, Ottilie, is no parent of a descendant
		"young-AC-15 -> animal-AC-15": {"arrowsize": "0.6"},
		"animal-AC-15 -> young-AC-17": {"dir": "none"},
		"young-AC-17 -> animal-AC-17": {"arrowsize": "0.6"},
		"young-AC-07 -> animal-AC-07": {"arrowsize": "0.6"}, // no parents shown, but two of one clutch
		"young-AC-07 -> animal-AC-08": {"arrowsize": "0.6"},
	}
	if diff := cmp.Diff(want, got.edges); diff != "" {
		t.Errorf("edges (-want +got):\n%s", diff)
	}
	assert.Equal(t, "clutch C-26-03; sire AC-04 or AC-07, the same for all young; dam AC-08", got.nodes["young-AC-11"]["tooltip"])
	assert.Equal(t, "clutch C-27-02; sire not known; dam AC-15", got.nodes["young-AC-17"]["tooltip"])
	assert.Equal(t, "C-26-03", got.nodes["young-AC-11"]["label"])
	assert.Contains(t, got.nodes["animal-AC-15"]["label"], "(not all parents shown)", "Juno's dam is not in the view")
	assert.NotContains(t, got.nodes["animal-AC-16"]["label"], "shown", "both parents are")
}

func TestMatingWithoutClutch(t *testing.T) {
	p, animals := lindenhof(t)
	point := read(t, Draw(p, animals, Everything()).DOT()).nodes["young-AC-14"]
	assert.Equal(t, map[string]string{
		"id": "young-AC-14", "shape": "point", "width": "0.08", "tooltip": "sire AC-03; dam AC-08",
	}, point)
}

func TestMatingsAreKeptApart(t *testing.T) {
	group := func(id string, kind pedigree.GroupKind) pedigree.Group {
		return pedigree.Group{ID: id, Kind: kind, Candidates: []pedigree.Candidate{{ID: "s"}, {ID: "t"}}}
	}
	p, err := pedigree.New([]pedigree.Record{
		{ID: "s"},
		{ID: "t"},
		{ID: "d"},
		{ID: "a", Sire: "s", Dam: "d"},
		{ID: "b", Sire: "s", Dam: "d"},
		{ID: "c", Sire: "s", Dam: "d"},
		{ID: "e", Sire: "g", Dam: "d"},
		{ID: "f", Sire: "h", Dam: "d"},
		{ID: "k", Sire: "h", Dam: "d"},
	}, group("g", pedigree.OneUnknown), group("h", pedigree.Several))
	require.NoError(t, err)
	animals := make([]Animal, p.Len())
	animals[5].Clutch = "second"
	got := read(t, Draw(p, animals, Everything()).DOT())
	var points []string
	for id, n := range got.nodes {
		if strings.HasPrefix(id, "young-") {
			points = append(points, id+": "+n["tooltip"])
		}
	}
	slices.Sort(points)
	assert.Equal(t, []string{
		"young-a: sire s; dam d",
		"young-c: clutch second; sire s; dam d",
		"young-e: sire s or t, the same for all young; dam d",
		"young-f: sire s or t, not the same for each young; dam d",
	}, points)
	assert.Contains(t, got.edges, "young-a -> animal-b", "no clutch, same parents: together")
	assert.Contains(t, got.edges, "young-f -> animal-k")
	assert.NotContains(t, got.edges["animal-s -> young-e"], "label", "equal chances need no number")
}

func TestFoundersOfOneClutch(t *testing.T) {
	p, err := pedigree.New([]pedigree.Record{{ID: "a"}, {ID: "b"}, {ID: "c"}})
	require.NoError(t, err)
	got := read(t, Draw(p, []Animal{{Clutch: "wild"}, {Clutch: "wild"}, {Clutch: "other"}}, Everything()).DOT())
	assert.Contains(t, got.edges, "young-a -> animal-b", "clutch mates are seen to be so")
	assert.NotContains(t, got.nodes, "young-c", "a point with one line says nothing")
	assert.Equal(t, "2", got.nodes["animal-a"]["peripheries"])
}

func TestViews(t *testing.T) {
	p, animals := lindenhof(t)
	all := make([]string, p.Len())
	for i := range all {
		all[i] = p.ID(i)
	}
	slices.Sort(all)
	for _, tc := range []struct {
		why  string
		view View
		want []string
	}{
		{"everything", Everything(), all},
		{"ancestors through both possible fathers", Ancestors(8), []string{"AC-01", "AC-02", "AC-03", "AC-04", "AC-05", "AC-07", "AC-08", "AC-11"}},
		{"ancestors of two", Ancestors(11, 4), []string{"AC-01", "AC-02", "AC-03", "AC-04", "AC-05", "AC-08", "AC-14"}},
		{"a founder has none", Ancestors(0), []string{"AC-01"}},
		{"descendants with their other parents", Descendants(6), []string{"AC-04", "AC-07", "AC-08", "AC-11", "AC-12", "AC-13", "AC-16"}},
		{"no descendants", Descendants(14), []string{"AC-17"}},
		{"around", Around(12), []string{"AC-01", "AC-02", "AC-04", "AC-06", "AC-15", "AC-17"}},
		{"of nobody", Ancestors(), nil},
	} {
		t.Run(tc.why, func(t *testing.T) {
			assert.Equal(t, tc.want, read(t, Draw(p, animals, tc.view).DOT()).boxes())
		})
	}
}

func TestKeyExplainsWhatIsUsed(t *testing.T) {
	p, animals := lindenhof(t)
	whole := read(t, Draw(p, animals, Everything()).DOT()).graph["label"]
	for _, mark := range []string{"double", "thick", "thin", "dotted", "grey", "darker", "expected", "dashed"} {
		assert.Contains(t, whole, mark)
	}
	assert.Equal(t, "\ndouble border: founder, no parent known  |  thick border: male",
		read(t, Draw(p, animals, Ancestors(2)).DOT()).graph["label"])
	assert.NotContains(t, read(t, Draw(p, animals, Ancestors()).DOT()).graph, "label")
}

func TestSameInputSameBytes(t *testing.T) {
	p, animals := lindenhof(t)
	for _, view := range []View{Everything(), Around(8, 12)} {
		first := Draw(p, animals, view).DOT()
		for range 50 {
			require.Equal(t, first, Draw(p, animals, view).DOT())
		}
	}
}

func TestManyAnimals(t *testing.T) {
	records := make([]pedigree.Record, slow+1)
	for i := range records {
		records[i].ID = fmt.Sprint(i)
	}
	p, err := pedigree.New(records)
	require.NoError(t, err)
	animals := make([]Animal, len(records))
	assert.Equal(t, "line", read(t, Draw(p, animals, Everything()).DOT()).graph["splines"])
	assert.NotContains(t, read(t, Draw(p, animals, Ancestors(1, 2)).DOT()).graph, "splines")
}

func TestMisuse(t *testing.T) {
	p, animals := lindenhof(t)
	assert.PanicsWithValue(t, "lineage: 14 animals for a pedigree of 15", func() { Draw(p, animals[1:], Everything()).DOT() })
	assert.PanicsWithValue(t, "lineage: the pedigree has no animal 15", func() { Draw(p, animals, Ancestors(15)).DOT() })
	assert.PanicsWithValue(t, "lineage: the pedigree has no animal -1", func() { Draw(p, animals, Descendants(-1)).DOT() })
}
