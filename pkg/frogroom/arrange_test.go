package frogroom_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// TestArrange moves pairings against each other. A clockwork cycle has its rain
// 35 days after its start, for 3 days, and young 105 days after that.
func TestArrange(t *testing.T) {
	for _, row := range []struct {
		name, more string
		rains      []string // by pairing
		proof      *frogroom.Proof
		stuck      string // the message when there is no plan
	}{
		{
			"one chamber for two that are to be ready on one day: one of them 3 days earlier", `
equipment: {rain_chambers: 1, cooling_places: 2}
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-08-01}
  - {id: Q, dam: E, sire: B, ready_by: 2027-08-01}
`, []string{"2027-04-18", "2027-04-15"}, &frogroom.Proof{Best: true, Cost: 30, Bound: 30, Moved: []string{"Q"}, Help: &timetable.Help{Resource: "rain chamber"}}, "",
		},
		{
			"the one with a start stays, the other gives way", `
equipment: {rain_chambers: 1, cooling_places: 2}
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-08-01}
  - {id: Q, dam: E, sire: B, start: 2027-03-14}
`, []string{"2027-04-15", "2027-04-18"}, &frogroom.Proof{Best: true, Cost: 30, Bound: 30, Moved: []string{"P"}, Started: []string{"Q"}, Help: &timetable.Help{Resource: "rain chamber"}}, "",
		},
		{
			"one male: one cycle of 58 days after the other", `
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-08-01}
  - {id: Q, dam: E, sire: [A, B], ready_by: 2027-08-01}
`, []string{"2027-04-18", "2027-02-19"}, &frogroom.Proof{Best: true, Cost: 580, Bound: 580, Moved: []string{"Q"}}, "",
		},
		{
			"somebody is in the room on every day of the rain, and when they are taken out", `
away: [2027-04-19]
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-08-01}
`, []string{"2027-04-15"}, &frogroom.Proof{Best: true, Cost: 30, Bound: 30}, "",
		},
		{
			"but where a start leaves no choice the rain runs on", `
away: [2027-04-19]
pairings:
  - {id: P, dam: D, sire: A, start: 2027-03-14}
`, []string{"2027-04-18"}, &frogroom.Proof{Best: true, Started: []string{"P"}}, "",
		},
		{
			"what has begun stays where it is, and the other cannot begin before today", `
equipment: {rain_chambers: 1, cooling_places: 2}
pairings:
  - {id: P, dam: D, sire: A, ready_by: 2027-04-20}
  - {id: Q, dam: E, sire: B, start: 2026-11-30}
diary:
  - {on: 2026-11-30, pairing: Q, began: conditioning}
`,
			[]string{"2027-01-05", "2027-01-04"},
			nil,
			"1 rain chamber cannot hold P and Q as wished between 2027-01-05 and 2027-01-06; one more rain chamber, or P 2 days later would do",
		},
		{
			"two starts that clash", `
equipment: {rain_chambers: 1, cooling_places: 2}
pairings:
  - {id: P, dam: D, sire: A, start: 2027-01-04}
  - {id: Q, dam: E, sire: B, start: 2027-01-05}
`,
			[]string{"2027-02-08", "2027-02-09"},
			nil,
			"1 rain chamber cannot hold P and Q as wished between 2027-02-09 and 2027-02-10; one more rain chamber, or P 4 days later, or Q 2 days later would do",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			r := room(t, basic+row.more)
			s, err := r.Season(day("2026-12-01"))
			require.NoError(t, err)
			var rains []string
			for _, p := range s.Pairings {
				for _, ph := range p.Phases {
					if ph.Name == "rain" {
						rains = append(rains, ph.Span.First.String())
					}
				}
			}
			assert.Equal(t, row.rains, rains)
			assert.Empty(t, cmp.Diff(row.proof, s.Proof))
			if row.stuck == "" {
				assert.Empty(t, s.Conflicts)
				return
			}
			last := s.Conflicts[len(s.Conflicts)-1]
			assert.Equal(t, frogroom.NoPlan, last.Kind)
			assert.Equal(t, row.stuck, last.Message)
		})
	}
}

// TestProofWithoutWhatIsOver: of pairings that are over the proof does not say that
// they were not moved, but of one that is overdue.
func TestProofWithoutWhatIsOver(t *testing.T) {
	r := room(t, basic+`
pairings:
  - {id: last year's, dam: D, sire: A, start: 2026-02-01}
  - {id: overdue, dam: E, sire: B, start: 2026-11-20}
  - {id: to come, dam: D, sire: A, start: 2027-02-01}
`)
	s, err := r.Season(day("2026-12-01"))
	require.NoError(t, err)
	assert.Equal(t, []string{"last year's"}, s.Over)
	require.NotNil(t, s.Proof)
	assert.Equal(t, []string{"overdue"}, s.Proof.Kept)
}
