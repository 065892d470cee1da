package almanac_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/almanac"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// ofClutch gives the events of the clutch C, laid on 2027-02-10, by a diary.
func ofClutch(t *testing.T, on, diary string) map[string]calendar.Event {
	t.Helper()
	c, problems := collection.Read("room.yaml", []byte(clockwork.Spelled(clockwork.Basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, place: tub 1}
  - {id: old, laid: 2026-02-10, dam: D, sire: A, ended: 2026-08-01}
diary:
`+diary)))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	models := make(map[string]*development.Model)
	for _, p := range c.Species {
		models[p.ID], err = rearing.ModelOf(p)
		require.NoError(t, err)
	}
	today := day(on)
	s := almanac.Season{Collection: c, On: today, Clutches: rearing.New(c, a, models).Tended(today)}
	return byKey(s.Events())
}

func TestClutchEvents(t *testing.T) {
	const diary = `
  - {on: 2027-02-15, clutch: C, saw: hatched}
  - {on: 2027-03-01, clutch: C, saw: hind-legs}
  - {on: 2027-03-02, animal: D, weight_g: 9}
  - {on: 2027-03-09, place: tub 9, water_c: 23}
  - {on: 2027-04-01, clutch: C, saw: front-legs}
`
	all := ofClutch(t, "2027-03-10", diary)
	hatched, feeding, legs, out := all["clutch/C/hatched"], all["clutch/C/feeding"], all["clutch/C/front-legs"], all["clutch/C/out-of-water"]
	assert.Equal(t, "C (tub 1): hatched, seen", hatched.Summary)
	assert.Equal(t, civil.Day(day("2027-02-15")), hatched.Span)
	assert.Equal(t, []string{almanac.SeenCategory, almanac.SeenCategory, almanac.ClutchCategory}, []string{hatched.Category, feeding.Category, legs.Category})
	assert.Equal(t, "C (tub 1): feeding, passed without being seen", feeding.Summary)
	assert.Regexp(t, `^C \(tub 1\): out of water expected, likely 2027-04-0`, out.Summary)
	assert.False(t, out.Cancelled)
	assert.Equal(t, 3, out.Sequence, "two looks and a temperature; what comes after today, and the weight of a female, move nothing")
	assert.Equal(t, day("2027-03-09"), out.Changed)
	tubs := all["clutch/C/care/hatched/3 before"]
	assert.Equal(t, almanac.PrepareCategory, tubs.Category)
	assert.True(t, tubs.Cancelled, "they have hatched")
	assert.False(t, all["clutch/C/ramp"].Cancelled)
	assert.NotContains(t, all, "clutch/old/hatched", "it does not run")
}

// TestDeadClutch: what was seen stays, and nothing is expected any more.
func TestDeadClutch(t *testing.T) {
	all := ofClutch(t, "2027-03-10", `
  - {on: 2027-02-15, clutch: C, saw: hatched}
  - {on: 2027-03-01, clutch: C, count: 0}
`)
	assert.False(t, all["clutch/C/hatched"].Cancelled)
	assert.True(t, all["clutch/C/out-of-water"].Cancelled)
	assert.True(t, all["clutch/C/ramp"].Cancelled)
}
