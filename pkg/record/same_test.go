package record

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// TestSame changes one thing of a file beside the entry that was meant.
func TestSame(t *testing.T) {
	const before = `keeper: Lindenhof
species: [{use: hyla-cinerea, development: {tadpole: {days: [40, 50, 60]}}}]
rules: {pairings_a_season: 3}
animals:
  - {id: A, species: hyla-cinerea, sex: male}
  - {id: B, clutch: K}
clutches:
  - {id: K, laid: 2027-01-01, species: hyla-cinerea, eggs: 40}
pairings:
  - {id: P, dam: B, sire: A, start: 2027-06-01}
diary:
  - {on: 2027-01-03, animal: A, weight_g: 7.1}
`
	const added = "  - {on: 2027-02-03, clutch: K, saw: hatched, count: 30}\n"
	old, problems := collection.Read("f", []byte(before))
	require.NotNil(t, old, "%v", problems)
	count := collection.Given[int]{Value: 30, Known: true}
	e := Edit{Entry: Entry{Entry: collection.Entry{On: testDay, Clutch: "K", Saw: "hatched", Count: count}}}
	for _, row := range []struct{ was, is, want string }{
		{"", "", ""},
		{"weight_g: 7.1", "weight_g: 7.2", "the diary entry in line 12 is not what it was"},
		{"sex: male", "sex: unknown", `animal "A" is not what it was`},
		{"eggs: 40", "eggs: 41", `clutch "K" is not what it was`},
		{"count: 30", "count: 31", "the new diary entry is not what it should be"},
		{"count: 30}\n", "count: 30}\n  - {on: 2027-02-03, animal: A, note: x}\n", "it has 3 diary entries instead of 2"},
		{"  - {id: B, ", "  - {id: C, clutch: K}\n  - {id: B, ", "it has 3 animals instead of 2"},
		{"pairings:", "  - {id: L, laid: 2027-01-01, species: hyla-cinerea}\npairings:", "it has 2 clutches instead of 1"},
		{"start: 2027-06-01", "start: 2027-06-02", "Pairings is not what it was"},
		{"keeper: Lindenhof", "keeper: Lindenhoff", "Keeper is not what it was"},
		{"season: 3", "season: 4", "Rules is not what it was"},
		{"40, 50, 60", "40, 50, 61", "species hyla-cinerea is not what it was"},
	} {
		text := strings.Replace(before+added, row.was, row.is, 1)
		now, problems := collection.Read("f", []byte(text))
		require.NotNil(t, now, "%v", problems)
		assert.Equal(t, row.want, same(old, now, e), "%s → %s", row.was, row.is)
	}
}

// TestSameLooksAtNewRecords holds what was meant against what was read.
func TestSameLooksAtNewRecords(t *testing.T) {
	const text = "animals:\n  - {id: A, species: hyla-cinerea}\n"
	b, _ := Read("f", []byte(text))
	laid, err := b.Laid(testDay, Laying{Dams: []string{"A"}, Eggs: 40})
	require.NoError(t, err)
	p, err := b.Plan(laid)
	require.NoError(t, err)
	now, _ := collection.Read("f", p.Text)
	laid.Clutch.Eggs = 41
	assert.Equal(t, `clutch "C-27-01" is not what it should be`, same(b.Collection, now, laid))

	b, _ = Read("f", p.Text)
	held, err := b.HeldBack(testDay, Holding{Count: 1})
	require.NoError(t, err)
	p, err = b.Plan(held)
	require.NoError(t, err)
	now, _ = collection.Read("f", p.Text)
	held.Animals[0].Sex = collection.Male
	assert.Equal(t, `animal "B" is not what it should be`, strings.Replace(same(b.Collection, now, held), held.Animals[0].ID, "B", 1))
}

// TestFresh counts problems that say the same, wherever they stand.
func TestFresh(t *testing.T) {
	problem := func(line int, message string) strictyaml.Diagnostic {
		return strictyaml.Diagnostic{Line: line, Severity: strictyaml.Warning, Message: message}
	}
	before := strictyaml.Diagnostics{problem(3, "more than in line 2"), problem(9, "x")}
	after := strictyaml.Diagnostics{problem(4, "more than in line 3"), problem(9, "more than in line 8"), problem(10, "x")}
	assert.Equal(t, after[1:2], fresh(after, before), "one more that says the same")
	assert.Empty(t, fresh(before, after))
}
