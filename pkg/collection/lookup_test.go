package collection_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func TestLookups(t *testing.T) {
	c := full(t)
	a, ok := c.Animal("007")
	require.True(t, ok)
	assert.Equal(t, "Otto", a.Name)
	k, ok := c.Clutch("C-21")
	require.True(t, ok)
	assert.Equal(t, 40, k.Eggs)
	p, ok := c.Pairing("P-27")
	require.True(t, ok)
	assert.Equal(t, "again", p.Note)
	target, ok := c.Target("club day")
	require.True(t, ok)
	assert.Equal(t, 5, target.Froglets)

	assert.PanicsWithValue(t, `collection: there is no species "nobody"`, func() { c.MustProfile("nobody") })
	_, ok = c.Animal("C-21")
	assert.False(t, ok, "a clutch is no animal")
	_, ok = c.Clutch("P-27")
	assert.False(t, ok)
	_, ok = c.Pairing("007")
	assert.False(t, ok)
	_, ok = c.Target("none")
	assert.False(t, ok)
}

func TestDiagnostic(t *testing.T) {
	c := full(t)
	a, _ := c.Animal("R1")
	got := c.Diagnostic(strictyaml.Warning, a.At, "it looks thin", "feed it")
	assert.Equal(t, "testdata/full.yaml:32:10: warning: it looks thin; feed it", got.String())
	assert.Equal(t, "  - {id: R1, species: hyperolius-sp, sex: male}", got.Excerpt)
}

func TestWeightAndLength(t *testing.T) {
	c := full(t)
	for _, row := range []struct {
		animal, on string
		weight     float64
		taken      string
		reason     string
	}{
		{"1e3", "2026-03-29", 0, "", "nothing before the first entry"},
		{"1e3", "2026-03-30", 12.4, "2026-03-30", "the day itself counts"},
		{"1e3", "2026-04-29", 12.4, "2026-03-30", "the newest until then"},
		{"1e3", "2030-01-01", 13, "2026-04-30", "the newest of all"},
		{"Y", "2020-01-01", 5.5, "", "the list has no date and is older than any day"},
		{"C-21", "2030-01-01", 0, "", "a clutch is not weighed"},
		{"nobody", "2030-01-01", 0, "", "there is none"},
	} {
		got, ok := c.Weight(row.animal, day(row.on))
		assert.Equal(t, row.weight > 0, ok, row.reason)
		assert.InDelta(t, row.weight, got.Value, 1e-9, row.reason)
		if row.taken != "" {
			assert.Equal(t, day(row.taken), got.On, row.reason)
		}
	}
	newest, ok := c.Weight("1e3", 0)
	require.True(t, ok)
	assert.Equal(t, collection.Measure{Value: 13, On: day("2026-04-30"), At: at(48, 5)}, newest, "an unknown day is the end")
	length, ok := c.Length("1e3", 0)
	require.True(t, ok)
	assert.Equal(t, 61.0, length.Value, "a later entry without a length changes nothing")
	listed, ok := c.Length("7", 0)
	require.True(t, ok)
	assert.Equal(t, collection.Measure{Value: 65, At: at(26, 10)}, listed)
}

func TestStatus(t *testing.T) {
	a := &collection.Animal{Left: day("2026-01-01"), Died: day("2026-02-01")}
	for _, row := range []struct {
		on, since string
		want      collection.Status
	}{
		{"2025-12-31", "", collection.Here},
		{"2026-01-01", "2026-01-01", collection.Left},
		{"2026-01-31", "2026-01-01", collection.Left},
		{"2026-02-01", "2026-02-01", collection.Died},
	} {
		got, since := a.Status(day(row.on))
		assert.Equal(t, row.want, got, row.on)
		if row.since != "" {
			assert.Equal(t, day(row.since), since, row.on)
		}
	}
	got, _ := a.Status(0)
	assert.Equal(t, collection.Died, got, "an unknown day is the end")
	got, _ = (&collection.Animal{}).Status(0)
	assert.Equal(t, collection.Here, got)
}

func TestLooksAndCounts(t *testing.T) {
	c := full(t)
	looks := []collection.Look{
		{On: day("2021-05-07"), Saw: "hatched", At: at(45, 5)},
		{On: day("2021-07-01"), Saw: "out-of-water", Some: true, At: at(44, 5)},
		{On: day("2021-07-11"), Gosner: 46, At: at(46, 5)},
	}
	if diff := cmp.Diff(looks, c.Looks("C-21")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	counts := []collection.Count{
		{On: day("2021-05-07"), Living: known(38), At: at(45, 5)},
		{On: day("2021-07-01"), Living: known(3), Some: true, Losses: 2, At: at(44, 5)},
		{On: day("2021-09-01"), Sold: 3, HeldBack: 2, At: at(57, 5)},
	}
	if diff := cmp.Diff(counts, c.Counts("C-21")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	assert.Equal(t, 5, counts[2].Gone())
	assert.Empty(t, c.Looks("C-27"))
	assert.Empty(t, c.Counts("nobody"))
}

func TestPlaceAndTemperatures(t *testing.T) {
	c := full(t)
	assert.Equal(t, "tub-3", c.PlaceOf("C-21", day("2021-07-10")))
	assert.Equal(t, "bin-1", c.PlaceOf("C-21", day("2021-07-11")))
	assert.Equal(t, "tank-1", c.PlaceOf("7", 0), "from the list")
	assert.Equal(t, "tank-2", c.PlaceOf("1e3", 0), "from the diary")
	assert.Empty(t, c.PlaceOf("Y", 0))

	want := []collection.Temperature{
		{On: day("2021-06-01"), WaterC: known(24.5), At: at(52, 5)},
		{On: day("2021-07-11"), WaterC: known(0.0), AirC: known(20.0), At: at(46, 5)},
		{On: day("2021-08-01"), AirC: known(23.0), At: at(54, 5)},
	}
	if diff := cmp.Diff(want, c.Temperatures("C-21")); diff != "" {
		t.Errorf("not before it was laid, not of the tub it had left, not after its end (-want +got):\n%s", diff)
	}
	assert.Empty(t, c.Temperatures("C-27"))
}

// TestTemperaturesOfAMove: a clutch meets what its new place was last measured at.
func TestTemperaturesOfAMove(t *testing.T) {
	for _, row := range []struct {
		name, diary string
		want        string // water and air, by day
	}{
		{"the last one", "{on: 2027-01-10, place: tub-2, water_c: 22}, {on: 2027-01-12, place: tub-2, water_c: 23, air_c: 20}", "01-15 23 -, 01-15 - 20"},
		{"water and air at their times", "{on: 2027-01-10, place: tub-2, air_c: 19}, {on: 2027-01-12, place: tub-2, water_c: 23}", "01-15 - 19, 01-15 23 -"},
		{"something on the day", "{on: 2027-01-12, place: tub-2, water_c: 23, air_c: 20}, {on: 2027-01-15, place: tub-2, water_c: 24}", "01-15 - 20, 01-15 24 -"},
		{"in the clutch itself on the day", "{on: 2027-01-12, place: tub-2, water_c: 23}, {on: 2027-01-15, clutch: C, water_c: 24}", "01-15 24 -"},
		{"too long ago", "{on: 2026-12-15, place: tub-2, water_c: 23}", ""},
		{"just not too long ago", "{on: 2026-12-16, place: tub-2, water_c: 23}", "01-15 23 -"},
		{"where it was laid nothing counts from before", "{on: 2027-01-01, place: tub-1, water_c: 23}", ""},
		{"only passed through", "{on: 2027-01-12, place: tub-2, water_c: 23}, {on: 2027-01-15, clutch: C, moved_to: tub-3}", ""},
	} {
		c := must(t, `
animals: [{id: D, species: hyla-cinerea, sex: female}]
clutches: [{id: C, laid: 2027-01-02, dam: D, place: tub-1}]
diary: [{on: 2027-01-15, clutch: C, moved_to: tub-2}, `+row.diary+"]\n")
		var got []string
		for _, m := range c.Temperatures("C") {
			shown := func(g collection.Given[float64]) string {
				if !g.Known {
					return "-"
				}
				return fmt.Sprint(g.Value)
			}
			got = append(got, m.On.String()[5:]+" "+shown(m.WaterC)+" "+shown(m.AirC))
		}
		assert.Equal(t, row.want, strings.Join(got, ", "), row.name)
	}
}

func TestBegan(t *testing.T) {
	want := []collection.Beginning{
		{Phase: species.Conditioning, On: day("2027-01-01"), At: at(51, 5)},
		{Phase: species.WarmUp, On: day("2027-02-01"), At: at(50, 5)},
	}
	if diff := cmp.Diff(want, full(t).Began("P-27")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestDiaryOfKeepsTheOrderOfADay(t *testing.T) {
	c := must(t, `
animals: [{id: A, species: hyla-cinerea}, {id: B, species: hyla-cinerea}]
diary:
  - {on: 2027-01-02, animal: A, note: "3"}
  - {on: 2027-01-01, animal: A, note: "1"}
  - {on: 2027-01-01, animal: B, note: other}
  - {on: 2027-01-01, animal: A, note: "2"}
  - {on: 2027-01-01, place: A, note: a place may be called like an animal}
`)
	var notes []string
	for _, e := range c.DiaryOf("A") {
		notes = append(notes, e.Note)
		assert.Equal(t, "A", e.Subject())
	}
	assert.Equal(t, []string{"1", "2", "3"}, notes)
	assert.Len(t, c.DiaryAt("A"), 1)
	assert.Empty(t, c.DiaryAt("B"))
	assert.Empty(t, c.DiaryOf("nobody"))
}
