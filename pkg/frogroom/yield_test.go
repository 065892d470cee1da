package frogroom_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
)

// TestTargetChance works chances out by hand. A clockwork clutch has 40 eggs, all
// of which hatch; half of the tadpoles live on average, as a beta distribution with
// 5 and 5, which has a chance of one half above one half. The rain is as late as is
// in time, and siblings are ready on one day.
func TestTargetChance(t *testing.T) {
	for _, row := range []struct {
		name, target, pairing, more string
		want                        *int
	}{
		{"20 or more of 40: one half", "froglets: 20", "", "", pct(50)},
		{"1 is nearly sure", "froglets: 1", "", "", pct(99)},
		{"41 cannot be", "froglets: 41", "", "", pct(0)},
		{"of 20 that are raised 11 or more live: beta above 0.55, which is 0.379", "froglets: 11", "raise: 20", "", pct(38)},
		{"of 20 that are raised 21 cannot be", "froglets: 21", "raise: 20", "", pct(0)},
		{"two dams bring 40 or more as often as not; 40 itself has 5 in 100", "froglets: 40", "dam: [D, E]", "", pct(53)},
		{"a clutch that is there, all of which have left the water: 24 live", "froglets: 24", "", `
clutches:
  - {id: C, laid: 2026-11-20, pairing: P, eggs: 40}
diary:
  - {on: 2026-11-25, clutch: C, saw: hatched, count: 40}
  - {on: 2026-11-26, pairing: P, began: rest}
`, nil},
	} {
		t.Run(row.name, func(t *testing.T) {
			if row.pairing == "" {
				row.pairing = "raise: 40"
			}
			dam := "dam: D, "
			if len(row.pairing) > 5 && row.pairing[:4] == "dam:" {
				dam, row.pairing = "", row.pairing+", raise: 40"
			}
			r := room(t, strings.Replace(clockwork.Spelled(basic), "survival: 0.5, stall: 0}", "survival: 0.5, stall: 0, siblings: 0}", 1)+`
targets:
  - {name: show, on: 2027-09-24, species: clockwork, `+row.target+`}
pairings:
  - {id: P, `+dam+`sire: A, target: show, `+row.pairing+"}\n"+row.more)
			s, err := r.Season(day("2026-12-01"))
			require.NoError(t, err)
			require.Len(t, s.Targets, 1)
			require.NotNil(t, s.Targets[0].ChancePct)
			if row.want == nil {
				assert.Greater(t, *s.Targets[0].ChancePct, 5)
				assert.Less(t, *s.Targets[0].ChancePct, 95)
				return
			}
			assert.InDelta(t, *row.want, *s.Targets[0].ChancePct, 4, "the share that lives is looked at in 20 points")
		})
	}
}

// TestNeverSure: what can still go either way is told as 99 and as 1 in 100, however
// near it is to the end.
func TestNeverSure(t *testing.T) {
	chance := func(froglets string) int {
		s, err := room(t, strings.Replace(clockwork.Spelled(basic), "survival: 0.5, stall: 0}", "survival: 0.5, siblings: 0, stall: 0.002}", 1)+`
targets:
  - {name: show, on: 2027-09-24, species: clockwork, froglets: `+froglets+`}
pairings:
  - {id: P, dam: D, sire: A, target: show, raise: 40}
`).Season(day("2026-12-01"))
		require.NoError(t, err)
		return *s.Targets[0].ChancePct
	}
	assert.Equal(t, 99, chance("1"), "two of a thousand clutches stop")
	assert.Equal(t, 1, chance("39"), "of 40 all but one live")
	assert.Equal(t, 0, chance("41"), "of 40")
}

// TestRainAfterTheTarget: who begins to rain on the day after a target, which may be
// missed, brings nothing for it.
func TestRainAfterTheTarget(t *testing.T) {
	for _, on := range []string{"2027-05-04", "2027-05-05", "2027-05-06"} {
		s, err := room(t, basic+`
targets:
  - {name: show, on: `+on+`, species: clockwork, froglets: 1, late_cost: 1}
pairings:
  - {id: P, dam: D, sire: A, target: show}
diary:
  - {on: 2027-04-01, pairing: P, began: conditioning}
`).Season(day("2027-04-02"))
		require.NoError(t, err)
		require.Len(t, s.Pairings, 1)
		rain := slices.IndexFunc(s.Pairings[0].Phases, func(ph frogroom.PlannedPhase) bool { return ph.Name == "rain" })
		assert.Equal(t, day("2027-05-06"), s.Pairings[0].Phases[rain].Span.First, on)
		require.NotNil(t, s.Targets[0].ChancePct, on)
		assert.Zero(t, *s.Targets[0].ChancePct, on)
	}
}

func pct(n int) *int { return &n }

// wet is text with a clockwork species of which two tadpoles live in a litre.
func wet(text string) string {
	return strings.Replace(clockwork.Spelled(text), "safe_c: [18, 28]", "safe_c: [18, 28]\n    tadpoles_per_litre: 2", 1)
}

// TestSpace counts tubs and bins by hand: 20 tadpoles to a tub, 5 froglets to a bin.
func TestSpace(t *testing.T) {
	for _, row := range []struct {
		name, pairing string
		tubs, bins    int
	}{
		{"40 tadpoles, 20 froglets", "start: 2027-01-04", 2, 4},
		{"21 tadpoles, 10.5 froglets", "start: 2027-01-04, raise: 21", 2, 3},
		{"two dams", "start: 2027-01-04, raise: 10, dam: [D, E]", 1, 2},
		{"more than there are: all of them", "start: 2027-01-04, dam: [D, E]", 3, 8},
		{"for a target of 1 few are needed: at 8 in 10 of 10 that live by half", "target: show", 1, 1},
	} {
		t.Run(row.name, func(t *testing.T) {
			dam := "dam: D, "
			if row.name == "two dams" || row.tubs == 3 {
				dam = ""
			}
			r := room(t, wet(`
species:
  - CLOCKWORK
animals:
  - FOUNDERS
targets:
  - {name: show, on: 2027-09-01, species: clockwork, froglets: 1}
equipment: {tadpole_tubs: {count: 3, litres: 10}, froglet_bins: {count: 9, froglets: 5}}
pairings:
  - {id: P, `+dam+`sire: A, `+row.pairing+`}
`))
			s, err := r.Season(day("2026-12-01"))
			require.NoError(t, err)
			got := map[string]int{}
			for _, p := range s.Peaks {
				got[p.What] = p.Most
			}
			assert.Equal(t, map[string]int{"tadpole tub": row.tubs, "froglet bin": row.bins}, got)
		})
	}
}

// TestRisk: a clutch that always takes two tubs runs out of one, and not of two.
func TestRisk(t *testing.T) {
	for _, row := range []struct {
		tubs string
		pct  int
		text string
	}{
		{"1", 100, "in every season the tadpole tubs run out, worst around 2027-02-15; 1 more make it less than 1 in 50"},
		{"2", 0, "tadpole tubs run out in fewer than 1 season in 20"},
	} {
		r := room(t, wet(basic+`
equipment: {tadpole_tubs: {count: `+row.tubs+`, litres: 10}}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`))
		s, err := r.Season(day("2026-12-01"))
		require.NoError(t, err)
		require.Len(t, s.Risks, 1)
		assert.Equal(t, row.pct, s.Risks[0].ChancePct)
		assert.Equal(t, row.text, s.Risks[0].Text)
	}
}

// TestRiskMove: P and Q fill two tubs of three each with certainty, from hatching to
// out of water, 2027-02-15 to 2027-04-03 for P. The least move of one of them that
// ends that is the one behind the other.
func TestRiskMove(t *testing.T) {
	busy := "start: 2027-02-01}\n  - {id: R, dam: E, sire: B, raise: 1, start: 2027-04-10"
	for _, row := range []struct{ name, on, more, start, move string }{
		{"a day after P, so that 47 days are missing", "2027-01-04", "", "start: 2027-01-05", "; Q 47 days later, all else as planned, makes it less than 1 in 50"},
		{"four weeks after P", "2027-01-04", "", "start: 2027-02-01", "; Q 20 days later, all else as planned, makes it less than 1 in 50"},
		{"its rain cannot begin on a day away", "2027-01-04", "away: [2027-03-28..2027-03-28]", "start: 2027-02-01", "; Q 21 days later, all else as planned, makes it less than 1 in 50"},
		{"its dam is in another pairing from 2027-04-10 on, and P cannot go before today", "2027-01-04", "", busy, "; 1 more make it less than 1 in 50"},
		{"the same, but P can go before", "2026-12-10", "", busy, "; P 20 days earlier, all else as planned, makes it less than 1 in 50"},
	} {
		t.Run(row.name, func(t *testing.T) {
			season := func(p, q string) frogroom.Season {
				r := room(t, wet(basic+row.more+`
equipment: {tadpole_tubs: {count: 3, litres: 10}}
pairings:
  - {id: P, dam: D, sire: A, `+p+`}
  - {id: Q, dam: E, sire: B, `+q+`}
`))
				s, err := r.Season(day(row.on))
				require.NoError(t, err)
				require.Len(t, s.Risks, 1)
				return s
			}
			const p = "start: 2027-01-04"
			risk := season(p, row.start).Risks[0]
			assert.Equal(t, 100, risk.ChancePct)
			assert.Regexp(t, row.move+"$", risk.Text)
			moved := func(start string) string {
				return "start: " + day(start[7:17]).Add(risk.MoveDays).String() + start[17:]
			}
			switch risk.Move {
			case "P":
				assert.Equal(t, risk.MovePct, season(moved(p), row.start).Risks[0].ChancePct, "planned so")
			case "Q":
				assert.Equal(t, risk.MovePct, season(p, moved(row.start)).Risks[0].ChancePct, "planned so")
			}
		})
	}
}

// TestRiskOfAStall: Q comes when P, or the clutch C, is out of the tubs, or out of the
// bins. One clutch in four stops in a step, and stays there for good.
func TestRiskOfAStall(t *testing.T) {
	const pairing, clutch = "pairings:\n  - {id: P, dam: D, sire: A, start: 2027-01-04}\n", "clutches:\n  - {id: C, dam: D, sire: A, laid: 2027-02-10, eggs: 40}\npairings:\n"
	tadpole := strings.NewReplacer("survival: 0.5, stall: 0}", "survival: 0.5, stall: 0.25}")
	egg := strings.NewReplacer("egg: {days: [5, 5, 5],", "egg: {days: [5, 5, 5], stall: 0.25,")
	land := strings.NewReplacer("grow_out: {days: [50, 50, 50],", "grow_out: {days: [50, 50, 50], stall: 0.25,")
	for _, row := range []struct {
		name       string
		stops      *strings.Replacer
		first      string
		tubs, bins int
	}{
		{"nothing stops", strings.NewReplacer(), pairing, 0, 0},
		{"P as eggs, of which nobody is in the tubs", egg, pairing, 0, 0},
		{"P as tadpoles", tadpole, pairing, 25, 0},
		{"C as tadpoles", tadpole, clutch, 25, 0},
		{"P on land, and Q gets there", land, pairing, 0, 25},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := room(t, row.stops.Replace(wet(basic+`
equipment: {tadpole_tubs: {count: 3, litres: 10}, froglet_bins: {count: 7, froglets: 5}}
`+row.first+`
  - {id: Q, dam: E, sire: B, start: 2027-05-04}
`)))
			s, err := r.Season(day("2027-01-02"))
			if strings.Contains(row.first, "clutches") {
				s, err = r.Season(day("2027-02-11"))
			}
			require.NoError(t, err)
			require.Len(t, s.Risks, 2)
			assert.InDelta(t, row.tubs, s.Risks[0].ChancePct, 2, "tubs")
			assert.InDelta(t, row.bins, s.Risks[1].ChancePct, 2, "bins")
		})
	}
}

// TestWeeks has every day of a cycle in its week, which begins on a Monday.
func TestWeeks(t *testing.T) {
	r := room(t, basic+`
equipment: {rain_chambers: 1}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
`)
	s, err := r.Season(day("2027-01-02"))
	require.NoError(t, err)
	require.NotEmpty(t, s.Weeks)
	assert.Equal(t, day("2026-12-28"), s.Weeks[0].First, "2027-01-02 is a Saturday")
	s.Weeks[6].Food = nil // it has tests of its own
	assert.Equal(t, frogroom.Week{
		First:   day("2027-02-08"),
		Tasks:   []frogroom.WeekTask{{On: day("2027-02-08"), What: "P: rain begins"}, {On: day("2027-02-10"), What: "young of P: eggs", Likely: true}, {On: day("2027-02-11"), What: "P: rest begins"}},
		Present: []frogroom.Presence{{What: "eggs", Who: []string{"young of P"}}, {What: "rain", Who: []string{"P"}}, {What: "rest", Who: []string{"P"}}},
		Loads:   []frogroom.PlaceLoad{{What: "rain chamber", Most: 1, Of: 1, On: day("2027-02-08")}},
	}, s.Weeks[6])
}
