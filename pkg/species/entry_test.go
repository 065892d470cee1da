package species

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func entry(t *testing.T, yaml string) (*Profile, strictyaml.Diagnostics) {
	t.Helper()
	doc := strictyaml.Parse("c.yaml", []byte(yaml))
	require.NotNil(t, doc.Root, "%v", doc.Problems())
	p := FromMapping(doc.Mapping(doc.Root, "a species"))
	return p, doc.Problems()
}

func TestEntryUse(t *testing.T) {
	p, problems := entry(t, "use: xenopus-laevis\ntadpoles_per_litre: 5\n")
	assert.Empty(t, problems)
	want, _ := Find("xenopus-laevis")
	want.TadpolesPerLitre = Number{5, KeepersFile}
	assert.Empty(t, cmp.Diff(want, p))
}

func TestEntryLike(t *testing.T) {
	p, problems := entry(t, "id: hyperolius-sp\nname: Hyperolius species\nlike: hyla-cinerea\nsafe_c: [20, 29]\n")
	assert.Empty(t, problems)
	assert.Equal(t, []string{"hyperolius-sp", "Hyperolius species", ""}, []string{p.ID, p.Name, p.CommonName})

	like, _ := Find("hyla-cinerea")
	rows, others := p.Rows(), like.Rows()
	require.Len(t, rows, len(others))
	for i, row := range rows {
		if row.Key == "safe_c" {
			assert.Equal(t, Row{"", "safe_c", "20 to 29 °C", KeepersFile}, row)
			continue
		}
		assert.Equal(t, others[i].Value, row.Value)
		assert.Equal(t, "as in Hyla cinerea: "+others[i].Source, row.Source, "a value of another species says so")
	}
}

func TestEntryWhole(t *testing.T) {
	p, problems := entry(t, `
id: hyperolius-argus
name: Hyperolius argus
source: own notes
development:
  egg: {days: [3, 4, 5], at_c: 25}
cycle:
  rest: {days: [20, 30, 40]}
  rain: {days: [3, 5, 7], sources: {days: a friend}}
`)
	assert.Empty(t, problems)
	want := &Profile{
		ID: "hyperolius-argus", Name: "Hyperolius argus",
		Cycle: []Phase{
			{Name: Rain, Days: Days{3, 5, 7, "a friend"}},
			{Name: Rest, Days: Days{20, 30, 40, "own notes"}},
		},
		Development: []Step{{Name: Egg, Days: Percentiles{3, 4, 5, "own notes"}, AtC: Range{25, 25, "own notes"}}},
	}
	assert.Empty(t, cmp.Diff(want, p), "phases and steps come in their order, whatever the order of the file")
	_, ok := p.Step(Tadpole)
	assert.False(t, ok)
	_, ok = p.Phase(Cooling)
	assert.False(t, ok)
}

func TestEntryRefuses(t *testing.T) {
	all := "built in are agalychnis-callidryas, bombina-orientalis, "
	for _, c := range []struct {
		name, yaml, want string
		usable           bool // a profile comes back in spite of the problem
	}{
		{"no species", "safe_c: 5", "c.yaml:1:1: a species does not say which species it is about; add use: and a built-in profile, or id: and a name of your own", false},
		{"a slip in the name", "use: hyla-cinera", `c.yaml:1:6: there is no built-in profile "hyla-cinera"; did you mean "hyla-cinerea"?`, false},
		{"a species nobody has", "use: homo-sapiens", `c.yaml:1:6: there is no built-in profile "homo-sapiens"; ` + all, false},
		{"like one nobody has", "{id: a, name: A, like: b}", `c.yaml:1:24: there is no built-in profile "b"; ` + all, false},
		{"use beside id", "{use: hyla-cinerea, id: hyla}", "c.yaml:1:7: use stands beside id or like; keep use to change a built-in profile, or id for one of your own", false},
		{"like without id", "like: hyla-cinerea", "c.yaml:1:1: a species does not say which species it is about; add use: and a built-in profile, or id: and a name of your own", false},
		{"an id with blanks", "id: Hyla cinerea", `c.yaml:1:5: "Hyla cinerea" is not an id of a species; write small letters, digits and hyphens, such as agalychnis-callidryas`, false},
		{"a built-in id", "{id: hyla-cinerea, name: H}", "c.yaml:1:6: hyla-cinerea is built in; write use: hyla-cinerea to change it, or choose another id", false},
		{"no name", "id: hyla-sp", "c.yaml:1:5: the species hyla-sp has no name; add name: and the scientific name", true},
		{"a name with nothing behind it", "{id: hyla-sp, name: }", "c.yaml:1:6: the species hyla-sp has no name", true},
		{"days with nothing behind them", "{id: a, name: A, development: {egg: {days: , at_c: 12}}}", "c.yaml:1:37: the step egg has no days", true},
		{"days of a phase with nothing behind them", "{id: a, name: A, cycle: {rain: {days: }}}", "c.yaml:1:32: the phase rain has no days", true},
		{"a phase without days", "{id: a, name: A, cycle: {rain: {light_h: 12}}}", "c.yaml:1:32: the phase rain has no days; add days: [at least, usually, at most]", true},
		{"a step without days", "{id: a, name: A, development: {egg: {at_c: 12}}}", "c.yaml:1:37: the step egg has no days; add days: [10th, 50th, 90th percentile]", true},
		{"a step without a temperature", "{id: a, name: A, development: {egg: {days: [1, 2, 3]}}}", "c.yaml:1:38: warning: the step egg has no temperature, so its days hold at any; add at_c: the temperature of these days", true},
		{"not a mapping", "- use", "c.yaml:1:1: a species is a set of keys and values, not a list; write it as {key: value, …} or as indented lines", false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, problems := entry(t, c.yaml)
			require.Len(t, problems, 1)
			assert.True(t, strings.HasPrefix(problems[0].String(), c.want), problems[0].String())
			assert.Equal(t, c.usable, p != nil)
		})
	}
}
