package almanac_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/almanac"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

// season is a pairing of which the rain has begun, with two entries of the diary up to
// today and one to come, and a target.
func season(t *testing.T) almanac.Season {
	t.Helper()
	c, problems := collection.Read("room.yaml", []byte(`
animals:
  - {id: D, species: hyla-cinerea, sex: female}
  - {id: S, species: hyla-cinerea, sex: male}
pairings:
  - {id: P/1, dam: D, sire: S, start: 2027-03-01}
targets:
  - {name: show, on: 2027-09-18, species: hyla-cinerea, froglets: 20}
diary:
  - {on: 2027-02-01, animal: D, weight_g: 9}
  - {on: 2027-03-01, pairing: P/1, began: rain}
  - {on: 2027-05-01, pairing: P/1, began: rest}
`))
	require.NotNil(t, c, "%v", problems)
	return almanac.Season{
		Collection: c, On: day("2027-03-10"), Shipping: calendar.Shipping{TransitDays: 1},
		Pairings: []almanac.Pairing{{
			ID: "P/1", Species: "hyla-cinerea", Dams: []string{"D"}, Sires: []string{"S"},
			Phases: []almanac.Phase{
				{Name: "rain", Span: civil.Span{First: day("2027-03-01"), Last: day("2027-03-14")}, Recorded: true},
				{Name: "warm-up", Span: civil.Span{First: day("2027-03-15"), Last: day("2027-03-14")}}, // it is left out
				{Name: "rest", Span: civil.Span{First: day("2027-03-15"), Last: day("2027-05-14")}},
			},
			Stages: []almanac.Stage{{Stage: "laid", Window: civil.Window{Early: day("2027-03-03"), Likely: day("2027-03-06"), Late: day("2027-03-12")}}},
		}},
	}
}

func byKey(events []calendar.Event) map[string]calendar.Event {
	out := make(map[string]calendar.Event)
	for _, e := range events {
		out[e.Key] = e
	}
	return out
}

func TestEvents(t *testing.T) {
	all := byKey(season(t).Events())
	require.Len(t, all, 6)
	rain, rest := all["pairing/P%2F1/rain"], all["pairing/P%2F1/rest"]
	assert.Equal(t, almanac.SeenCategory, rain.Category, "it is recorded")
	assert.Equal(t, "P/1: rain began (D × S)", rain.Summary)
	assert.Contains(t, rain.Description, "residual-current device", "water and electricity")
	assert.Regexp(t, `\nDay 2[^\n]*, night [^\n]*\(from memory\)\.`, rain.Description, "values of one source stand together")
	assert.Equal(t, almanac.PairingCategory, rest.Category)
	assert.Equal(t, civil.Day(day("2027-03-15")), rest.Span)
	assert.Equal(t, civil.Day(day("2027-05-15")), all["pairing/P%2F1/over"].Span)
	eggs := all["pairing/P%2F1/young/laid"]
	assert.Equal(t, "P/1: eggs, if all goes to plan, likely 2027-03-06", eggs.Summary)
	assert.Equal(t, civil.Span{First: day("2027-03-03"), Last: day("2027-03-12")}, eggs.Span)
	assert.False(t, eggs.Cancelled)
	assert.Equal(t, 1, rest.Sequence, "one entry about the pairing up to today; a weight moves nothing")
	assert.Equal(t, day("2027-03-01"), rest.Changed)
	assert.Contains(t, all, "target/show")
	assert.Equal(t, almanac.ParcelCategory, all["target/show/last parcel"].Category)
}

// TestLaid: once there is a clutch it speaks for itself.
func TestLaid(t *testing.T) {
	s := season(t)
	s.Laid = map[string][]civil.Date{"P/1": {day("2027-03-05"), day("2027-04-01")}}
	eggs := byKey(s.Events())["pairing/P%2F1/young/laid"]
	assert.True(t, eggs.Cancelled)
	assert.Equal(t, 2, eggs.Sequence, "the rain and the first clutch, for the second is still to come")
	assert.Equal(t, day("2027-03-05"), eggs.Changed)
}

// TestRested: nobody looks for young of a pairing that was put to rest without a clutch.
func TestRested(t *testing.T) {
	s := season(t)
	s.Pairings[0].NoYoung = true
	all := byKey(s.Events())
	assert.True(t, all["pairing/P%2F1/young/laid"].Cancelled)
	assert.False(t, all["pairing/P%2F1/over"].Cancelled)
}

func TestRefused(t *testing.T) {
	s := season(t)
	s.Pairings[0].Refused, s.Pairings[0].Findings = true, []string{"D is held for health"}
	rest := byKey(s.Events())["pairing/P%2F1/rest"]
	assert.Equal(t, almanac.RefusedCategory, rest.Category, "no work for anybody")
	assert.Contains(t, rest.Description, "Should not be made: D is held for health.")
}
