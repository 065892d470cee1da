package breeders_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

func room(t testing.TB) *breeders.Breeders {
	t.Helper()
	c, problems := collection.Read("room.yaml", []byte(`
species:
  - {id: plain, name: Rana plana, source: invented, maturity: {male: {age_days: 300}, female: {age_days: 400, weight_g: 10}}, quarantine_days: 30}
animals:
  - {id: Bram, species: plain, sex: male, out_of_water: 2026-01-01}
  - {id: Ulla, species: plain, sex: female}
  - {id: Kai, species: plain, out_of_water: 2026-01-01}
clutches:
  - {id: C1, laid: 2026-05-01, dam: Ulla, sire: Bram}
  - {id: C2, laid: 2026-09-01, dam: Ulla, sire: Bram}
  - {id: C0, laid: 2026-03-01, dam: Ulla, sire: Bram}
pairings:
  - {id: P, dam: Ulla, sire: Bram, start: 2027-01-01}
diary:
  - {on: 2026-04-01, animal: Ulla, weight_g: 9}
  - {on: 2026-10-01, animal: Ulla, weight_g: 12}
`))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	return breeders.New(c, a, []pairing.Rule{pairing.RuleAge})
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

// TestAnimals: only what was known by a day counts.
func TestAnimals(t *testing.T) {
	of := func(on string) pairing.Animal { return room(t).Animals([]string{"Ulla"}, day(on))[0] }
	ulla := of("2026-05-01")
	assert.Equal(t, 9.0, ulla.WeightG)
	assert.Equal(t, []civil.Date{day("2026-03-01"), day("2026-05-01")}, ulla.Clutches, "in order, that of the day too")
	assert.Equal(t, pairing.Female, ulla.Sex)
	assert.Equal(t, 1, ulla.Node, "her place in the file")
	assert.Equal(t, 12.0, of("2026-12-01").WeightG)
	assert.PanicsWithValue(t, `kin: there is no animal "Ula"; did you mean "Ulla"?`, func() { room(t).Animals([]string{"Ula"}, day("2026-05-01")) })
}

// TestGrown: by age where it is known, and by size where it is not.
func TestGrown(t *testing.T) {
	b := breeders.New(room(t).Collection, room(t).Ancestry, nil)
	grown := func(i int, on string) bool { return b.Grown(i, day(on)) }
	assert.False(t, grown(0, "2026-10-27"), "299 days")
	assert.True(t, grown(0, "2026-10-28"), "300 days")
	assert.False(t, grown(1, "2026-09-30"), "9 g, her age is not known")
	assert.True(t, grown(1, "2026-10-01"), "12 g")
	assert.False(t, grown(2, "2026-10-28"), "it may be a female")
	assert.True(t, grown(2, "2027-02-05"), "400 days")
	assert.False(t, room(t).Grown(0, day("2026-10-27")), "a rule that is set aside makes nobody older")
}

// TestJudge: a pairing is held against the rules of its first night of rain, by what is
// known today.
func TestJudge(t *testing.T) {
	b := room(t)
	p, _ := b.Collection.Pairing("P")
	weight := func(on string) pairing.Severity {
		worst := pairing.Fine
		for _, f := range b.Judge(b.Ancestry.Above([]string{"Bram", "Ulla"}), p, day("2027-02-01"), day(on)).Findings {
			if f.Rule == pairing.RuleWeight && slices.Contains(f.Animals, "Ulla") {
				worst = max(worst, f.Severity)
			}
		}
		return worst
	}
	assert.Equal(t, pairing.Fine, weight("2026-12-01"))
	assert.Greater(t, weight("2026-09-01"), pairing.Fine, "she was not weighed again yet")
	early := b.Judge(b.Ancestry.Above([]string{"Bram", "Ulla"}), p, day("2026-09-15"), day("2026-12-01"))
	assert.True(t, slices.ContainsFunc(early.Findings, func(f pairing.Finding) bool {
		return f.Rule == pairing.RuleWeight && f.Severity > pairing.Fine && slices.Contains(f.Animals, "Ulla")
	}), "what was learned after its rain says nothing of it")
	assert.PanicsWithValue(t, `breeders: the pedigree has no animal "Ulla"`, func() {
		b.Judge(b.Ancestry.Above([]string{"Bram"}), p, day("2027-02-01"), day("2026-12-01"))
	})
	assert.Equal(t, 300, b.Needs("plain").Male.AgeDays)
	assert.Equal(t, pairing.Needs{}, b.Needs("hyla-cinerea"), "not of this collection")
	assert.Equal(t, []pairing.Rule{pairing.RuleAge}, b.Terms(day("2027-01-01")).Rules.Relaxed)
}

// TestNeeds: days are whole, and a part of the way to the land is not taken for all.
func TestNeeds(t *testing.T) {
	needs := func(development string) pairing.Needs {
		c, problems := collection.Read("room.yaml", []byte("species:\n  - {id: plain, name: Rana plana, source: invented, quarantine_days: 30.5, maturity: {male: {age_days: 300.5}}, development: {"+development+"}}\n"))
		require.NotNil(t, c, "%v", problems)
		a, err := kin.Of(c)
		require.NoError(t, err)
		return breeders.New(c, a, nil).Needs("plain")
	}
	n := needs("egg: {days: [5, 6, 8], at_c: 25}, hatchling: {days: [2, 3, 4], at_c: 25}, tadpole: {days: [40, 50, 60], at_c: 25}, metamorph: {days: [4, 5, 6], at_c: 25}")
	assert.Equal(t, []int{6, 3 + 50 + 5}, []int{n.EggDays, n.TadpoleDays})
	assert.Equal(t, []int{31, 301}, []int{n.QuarantineDays, n.Male.AgeDays}, "a day more is on the safe side")
	assert.Zero(t, needs("hatchling: {days: [2, 3, 4], at_c: 25}, metamorph: {days: [4, 5, 6], at_c: 25}").TadpoleDays, "nobody knows how long tadpoles take")
}

// TestHolds: those of each kind by themselves, and only what was written by then.
func TestHolds(t *testing.T) {
	c, problems := collection.Read("room.yaml", []byte(`
animals:
  - {id: Bram, species: hyla-cinerea, sex: male, holds: [{kind: health, from: 2027-01-01, until: 2027-01-10}]}
diary:
  - {on: 2027-02-01, animal: Bram, hold: quarantine}
`))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	b := breeders.New(c, a, nil)
	early, late := b.Animals([]string{"Bram"}, day("2027-01-05"))[0], b.Animals([]string{"Bram"}, day("2027-02-01"))[0]
	assert.Equal(t, []pairing.Hold{{From: day("2027-01-01"), Until: day("2027-01-10")}}, early.HealthHolds)
	assert.Empty(t, early.Quarantines)
	assert.Equal(t, []pairing.Hold{{From: day("2027-02-01")}}, late.Quarantines)
}
