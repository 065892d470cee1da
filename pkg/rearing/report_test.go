package rearing_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// report gives the report of the clutch C, laid on 2027-02-10, with a diary of
// these entries; see [one].
func report(t *testing.T, on string, entries ...string) rearing.Report {
	t.Helper()
	text := strings.Replace(clockwork.Spelled(basic), "    maturity:", "    tadpoles_per_litre: 2\n    sale: {age_days: 50, length_mm: 20, seen_eating: 2}\n    maturity:", 1) + `
equipment: {tadpole_tubs: {count: 2, litres: 5}, froglet_bins: {count: 4, froglets: 8}}
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, eggs: 40, place: tub 1}
diary:
`
	for _, e := range entries {
		text += "  - {" + e + "}\n"
	}
	k, err := room(t, text).Report("C", day(on))
	require.NoError(t, err)
	return k
}

func TestReportHeads(t *testing.T) {
	k := report(t, "2027-02-10")
	require.NotEmpty(t, k.Heads)
	assert.Equal(t, rearing.Heads{Expected: 40, Low: 40, High: 40}, k.Heads[0].Eggs)
	assert.Zero(t, k.Heads[0].Litres)
	tadpoles := k.Heads[1]
	assert.Equal(t, day("2027-02-17"), tadpoles.On, "a week later")
	assert.Equal(t, 40, tadpoles.InWater.High)
	assert.Equal(t, 20.0, tadpoles.Litres, "two in a litre")
	assert.Equal(t, 4, tadpoles.Tubs, "of five litres")
	last := k.Heads[len(k.Heads)-1]
	assert.Greater(t, last.On, day("2027-05-24"), "until all can be old enough")
	assert.InDelta(t, 20, last.OnLand.Expected, 0.1, "half of the tadpoles live")
	assert.Equal(t, (last.OnLand.High+7)/8, last.Bins)
	assert.Equal(t, 20, k.SiblingsOf)

	counted := report(t, "2027-04-05", "on: 2027-04-04, clutch: C, saw: out-of-water, count: 12", "on: 2027-04-05, clutch: C, losses: 2")
	assert.Equal(t, rearing.Heads{Expected: 10, Low: 10, High: 10}, counted.Heads[0].Living, "the last count, less what died since")
	some := report(t, "2027-04-05", "on: 2027-04-04, clutch: C, saw: out-of-water, count: 12, some: true")
	assert.Greater(t, some.Heads[0].Living.High, 12, "a count of some is no count of all")
	dead := report(t, "2027-04-05", "on: 2027-04-04, clutch: C, count: 0")
	assert.Zero(t, dead.SiblingsOf)
	assert.Empty(t, dead.Siblings)
	assert.Empty(t, dead.Due)
	assert.Empty(t, dead.Heads)
	assert.Equal(t, "none is alive by the last count", dead.Uncounted)
}

func TestReportSiblings(t *testing.T) {
	k := report(t, "2027-03-20", "on: 2027-03-18, clutch: C, saw: toes, count: 30")
	require.Len(t, k.Siblings, 3)
	for _, s := range k.Siblings {
		assert.Less(t, s.First.Likely, s.Half.Likely, s.Stage)
		assert.Less(t, s.Half.Likely, s.Last.Likely, s.Stage)
	}
	assert.Equal(t, stage(k.Clutch, "front-legs").Window, k.Siblings[0].Half)
	k = report(t, "2027-05-10", "on: 2027-04-04, clutch: C, saw: out-of-water")
	require.Len(t, k.Siblings, 1, "nobody waits for the last with front legs any more")
	assert.Equal(t, "sale-ready", k.Siblings[0].Stage)
}

func TestReportDue(t *testing.T) {
	said := func(k rearing.Report) string {
		var out []string
		for _, d := range k.Due {
			assert.NotEmpty(t, d.Source)
			text, _, _ := strings.Cut(d.What, ":")
			if d.ByNow {
				text += ", by now"
			}
			if d.Now {
				text += ", now"
			}
			out = append(out, d.On.String()[5:]+" "+text)
		}
		return strings.Join(out, "\n")
	}
	assert.Equal(t, `02-20 look at the eggs every day, take out white and mouldy ones, keep clutches above the water damp, now
02-12 have tubs ready with aged water, free of chlorine, at the set temperature, by now
02-15 no food yet, by now
02-17 begin to feed, by now`, said(report(t, "2027-02-20")), "what the eggs need, until they are seen to have hatched")
	assert.Equal(t, `03-22 begin to feed, now
03-21 start the first foods, by now
03-22 a way out of the water
03-28 bins for froglets
03-29 no food while the tail goes`, said(report(t, "2027-03-22", "on: 2027-02-17, clutch: C, saw: feeding")), "03-29 is the early date of the front legs, 04-04 that of the land")
	assert.Equal(t, `04-07 offer first food every day
04-11 see that each one eats`, said(report(t, "2027-04-05", "on: 2027-04-04, clutch: C, saw: out-of-water")))
}

// What froglets are fed follows the length of the smallest, and the profile until one
// is measured.
func TestReportPrey(t *testing.T) {
	const out = "on: 2027-04-04, clutch: C, saw: out-of-water"
	first := func(k rearing.Report) string { require.NotEmpty(t, k.Due); return k.Due[0].What }
	assert.Regexp(t, "; prey of 3.0 to 4.5 mm for one of 15 mm$", first(report(t, "2027-04-06", out, "on: 2027-04-05, clutch: C, length_mm: 15")))
	assert.Regexp(t, "gap between the eyes$", first(report(t, "2027-04-06", out)), "neither is known")
	leaf, err := room(t, `
animals: [{id: A, species: agalychnis-callidryas}, {id: B, species: agalychnis-callidryas}]
clutches: [{id: C, laid: 2027-02-10, dam: B, sire: A, eggs: 40}]
diary: [{`+out+`}]
`).Report("C", day("2027-04-06"))
	require.NoError(t, err)
	assert.Regexp(t, "; prey of 2 to 3 mm until one is measured$", first(leaf))
	assert.Regexp(t, "; the mm from memory$", leaf.Due[0].Source)
}

func TestLeaves(t *testing.T) {
	const out = "on: 2027-04-04, clutch: C, saw: out-of-water"
	for _, row := range []struct {
		name, on  string
		entries   []string
		held, ask string
		ready     bool
	}{
		{"a date alone is nothing", "2027-12-01", nil, "", "when did it leave the water?; how long is it? (at least 20 mm); was it seen eating, and how often? (at least 2)", false},
		{"some that are out are not all", "2027-12-01", []string{out + ", some: true"}, "", "when did it leave the water?; how long is it? (at least 20 mm); was it seen eating, and how often? (at least 2)", false},
		{
			"old enough is not large enough", "2027-06-01",
			[]string{out, "on: 2027-05-30, clutch: C, length_mm: 17", "on: 2027-05-01, clutch: C, saw: eating", "on: 2027-05-02, clutch: C, saw: eating"},
			"17 mm long, at least 20 are wanted: froglets of delicate species die when they are sent out too small", "", false,
		},
		{
			"large enough is not old enough", "2027-05-23",
			[]string{out, "on: 2027-05-20, clutch: C, length: 2.1 cm", "on: 2027-05-01, clutch: C, saw: eating", "on: 2027-05-02, clutch: C, saw: eating"},
			"out of water for 49 days, at least 50 are wanted: from 2027-05-24", "", false,
		},
		{
			"all three, a day later", "2027-05-24",
			[]string{out, "on: 2027-05-20, clutch: C, length: 2.1 cm", "on: 2027-05-01, clutch: C, saw: eating", "on: 2027-05-02, clutch: C, saw: eating"},
			"", "", true,
		},
		{
			"seen eating tomorrow", "2027-06-01",
			[]string{out, "on: 2027-05-20, clutch: C, length_mm: 21", "on: 2027-05-01, clutch: C, saw: eating", "on: 2027-06-02, clutch: C, saw: eating"},
			"seen eating 1 time, at least 2 are wanted", "", false,
		},
	} {
		sale := report(t, row.on, row.entries...).Sale
		assert.Equal(t, row.held, strings.Join(sale.Held, "; "), row.name)
		assert.Equal(t, row.ask, strings.Join(sale.Ask, "; "), row.name)
		assert.Equal(t, row.ready, sale.Ready, row.name)
	}
}

func TestDistribution(t *testing.T) {
	k := report(t, "2027-02-16", "on: 2027-02-15, clutch: C, saw: hatched")
	require.Len(t, k.Distribution, 7, "what was seen is certain")
	for _, d := range k.Distribution {
		sum := 0.0
		for _, p := range d.Chances {
			sum += p
		}
		assert.InDelta(t, 1, sum, 1e-4, d.Stage)
	}
	_, err := room(t, basic).Report("C", day("2027-02-16"))
	var unknown *collection.UnknownError
	require.ErrorAs(t, err, &unknown)
}

// TestEarlyLegs: in the working example one more line of the diary, front legs
// seen earlier than was likely, moves all that follows ahead and makes it surer.
func TestEarlyLegs(t *testing.T) {
	text, err := os.ReadFile("../../examples/working/collection.yaml")
	require.NoError(t, err)
	for _, saw := range []string{"front-legs", "front-legs, some: true"} {
		more := string(text) + "  - {on: 2027-01-28, clutch: C-26-08, saw: " + saw + "}\n"
		before, err := room(t, string(text)).Clutch("C-26-08", day("2027-02-01"))
		require.NoError(t, err)
		after, err := room(t, more).Clutch("C-26-08", day("2027-02-01"))
		require.NoError(t, err)
		for i, s := range before.Stages[2:] {
			now := after.Stages[i+2]
			assert.Less(t, now.Window.Likely, s.Window.Likely, "%s: %s", saw, s.Stage)
			assert.Less(t, now.Window.Late.Sub(now.Window.Early), s.Window.Late.Sub(s.Window.Early), "%s: %s", saw, s.Stage)
		}
	}
}
