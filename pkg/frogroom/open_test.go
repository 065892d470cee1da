package frogroom_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func TestOpen(t *testing.T) {
	path := filepath.Join(t.TempDir(), "collection.yaml")
	_, _, err := frogroom.Open(path)
	var missing *fs.PathError
	require.ErrorAs(t, err, &missing)
	assert.True(t, errors.Is(err, fs.ErrNotExist))

	require.NoError(t, os.WriteFile(path, []byte("keeper: us\n"), 0o600))
	r, problems, err := frogroom.Open(path)
	require.NoError(t, err)
	assert.Empty(t, problems)
	assert.Equal(t, "us", r.Collection.Keeper)
}

// TestExamples keeps the files of the examples free of errors, at any time.
func TestExamples(t *testing.T) {
	for _, name := range []string{"small", "working"} {
		r, problems, err := frogroom.Open("../../examples/" + name + "/collection.yaml")
		require.NoError(t, err)
		require.NotNil(t, r, "%s: %v", name, problems)
		for _, on := range []string{"2019-01-01", "2027-02-01", "2027-07-01", "2031-01-01"} {
			assert.False(t, r.Check(day(on)).HasErrors(), "%s on %s", name, on)
		}
	}
}

func TestRefused(t *testing.T) {
	for _, row := range []struct {
		name, text, want string
	}{
		{
			"what the reader refuses", "keepr: us\n",
			`room.yaml:1:1: unknown key "keepr" in the file; did you mean "keeper"?`,
		},
		{
			"a country that is not known: parcels would go on its holidays", "holidays: xx\n",
			`room.yaml:1:11: no public holidays are known for "xx"; write a country or region code such as de, de-by or us, or remove the line`,
		},
		{
			"days that make no distribution", `
species:
  - {id: own, name: Own frog, development: {egg: {days: [0.1, 3000, 3600], at_c: 20}}}
`, `room.yaml: own: step egg: 0.1, 3000, 3600 (10th, 50th, 90th percentile): the spread reaches beyond ten years; correct these days`,
		},
		{
			"the same for the nights until there are eggs", `
species:
  - {id: own, name: Own frog, breeding: {eggs_after_nights: [0.1, 0.1, 365]}}
`, `room.yaml: own: breeding: eggs_after_nights: 0.1, 0.1, 365 (10th, 50th, 90th percentile): the spread reaches beyond ten years; correct these days`,
		},
	} {
		r, problems := frogroom.Read("room.yaml", []byte(row.text))
		assert.Nil(t, r, row.name)
		assert.Equal(t, row.want, messages(problems, strictyaml.Error), row.name)
	}
}

// TestAllIsRefusedInOneRun is for who has more than one thing to mend.
func TestAllIsRefusedInOneRun(t *testing.T) {
	r, problems := frogroom.Read("room.yaml", []byte(`
holidays: xx
species:
  - {id: own, name: Own frog, breeding: {eggs_after_nights: [0.1, 0.1, 365]}}
`))
	assert.Nil(t, r)
	assert.Len(t, problems, 2)
}

// TestWarningsOfTheReading stay with the room, whatever becomes of the list
// that was given.
func TestWarningsOfTheReading(t *testing.T) {
	r, problems := frogroom.Read("room.yaml", []byte("away: [2027-01-01..2027-01-05, 2027-01-04]\n"))
	require.NotNil(t, r)
	want := messages(problems, strictyaml.Warning)
	assert.Contains(t, want, "overlaps")
	clear(problems)
	assert.Equal(t, want, messages(r.Check(day("2027-01-01")), strictyaml.Warning))
}

func TestUnknownToday(t *testing.T) {
	r := room(t, basic)
	for name, call := range map[string]func(){
		"Check":    func() { r.Check(0) },
		"Kin":      func() { r.Kin(0) },
		"Season":   func() { _, _ = r.Season(0) },
		"SeasonOf": func() { _, _ = r.SeasonOf(0, frogroom.Wish{}) },
		"Clutches": func() { r.Clutches(0) },
		"Clutch":   func() { _, _ = r.Clutch("C", 0) },
		"Events":   func() { r.Events(0) },
		"Agenda":   func() { r.Agenda(0, 1) },
	} {
		assert.PanicsWithValue(t, "frogroom: the day that counts as today is not given", call, name)
	}
	for _, today := range []civil.Date{-5, civil.Last + 1} {
		assert.PanicsWithValue(t, "frogroom: the day that counts as today is in none of the years 1 to 9999", func() { _, _ = r.Season(today) })
	}
	assert.PanicsWithValue(t, "frogroom: an agenda needs at least one day", func() { r.Agenda(day("2027-01-01"), 0) })
}

// TestEmptyCollection has nothing of anything: every answer is empty and whole.
func TestEmptyCollection(t *testing.T) {
	on := day("2027-01-01")
	r := room(t, "{}\n")
	assert.Equal(t, `{"on":"2027-01-01","groups":[],"animals":[],"warnings":["animals without recorded parents count as unrelated, so kinship and inbreeding are lower bounds"]}`, asJSON(t, r.Kin(on)))
	assert.Equal(t, `[]`, asJSON(t, r.Clutches(on)))
	s, err := r.Season(on)
	require.NoError(t, err)
	assert.Empty(t, s.Pairings)
	assert.NotContains(t, asJSON(t, s), "null")
	assert.NotContains(t, asJSON(t, r.Agenda(on, 1)), "null")
	c := r.Events(on)
	assert.Empty(t, c.Events)
	assert.Equal(t, "frog room", c.Name)
	assert.Zero(t, frogroom.Extent(c))
	assert.Empty(t, messages(r.Check(on), strictyaml.Warning))
	dot, err := r.Lineage(on, kin.LineageWish{})
	require.NoError(t, err)
	assert.Contains(t, dot.DOT(), "digraph")
}

// TestRoomDoesNotChange: what is handed out can be written to.
func TestRoomDoesNotChange(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: [A, B]}
pairings:
  - {id: P, dam: D, sire: [A, B], start: 2027-01-04}
`)
	on := day("2027-03-01")
	before := asJSON(t, r.Clutches(on))
	k := r.Clutches(on)[0]
	k.Sires[0], k.Dams[0] = "x", "x"
	s, err := r.Season(on)
	require.NoError(t, err)
	s.Pairings[0].Sires[0] = "x"
	for _, p := range r.Profiles() {
		if p.ID == "clockwork" {
			p.Development[0].Days.P50 = 4000
		}
	}
	assert.Equal(t, before, asJSON(t, r.Clutches(on)))
	assert.Equal(t, []string{"A", "B"}, r.Collection.Pairings[0].Sires)
	p, _ := r.Collection.Profile("clockwork")
	assert.Equal(t, 5.0, p.Development[0].Days.P50)
}
