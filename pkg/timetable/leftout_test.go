package timetable_test

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// TestWhyOut leaves Q out for one reason in each row. Alone its conditioning would
// begin on day 30, its rain on day 60, and it would be over on day 75.
func TestWhyOut(t *testing.T) {
	cheap := func(cost int) func(*timetable.Pairing) {
		return func(p *timetable.Pairing) { p.LeaveOut = cost }
	}
	chambers := func(n int) []season.Capacity { return []season.Capacity{have("rain chamber", n)} }
	taken := []planner.Taken{{Resource: "rain chamber", Amount: 1, Span: civil.Span{First: today.Add(50), Last: today.Add(70)}}}
	for _, row := range []struct {
		name string
		room timetable.Room
		p, q timetable.Pairing
		want timetable.LeftOut
	}{
		{
			"one chamber, and 5 days cost more than leaving it out",
			timetable.Room{Room: season.Room{Capacity: chambers(1)}},
			readyBy("P", 60),
			readyBy("Q", 60, cheap(4)),
			timetable.LeftOut{Pairing: "Q", Short: "rain chamber", Days: civil.Span{First: today.Add(60), Last: today.Add(64)}},
		},
		{
			"its male is in P until day 74",
			timetable.Room{Room: season.Room{Capacity: chambers(2)}},
			readyBy("P", 60),
			readyBy("Q", 70, cheap(4), func(p *timetable.Pairing) { p.Animals[0] = "he of P" }),
			timetable.LeftOut{Pairing: "Q", Busy: []string{"he of P"}, Days: civil.Span{First: today.Add(40), Last: today.Add(74)}},
		},
		{
			"no chamber at all",
			timetable.Room{Room: season.Room{Capacity: chambers(0)}},
			pairingWithoutRain("P"),
			readyBy("Q", 60, cheap(4)),
			timetable.LeftOut{Pairing: "Q", Unfit: true},
		},
		{
			"the chamber is taken, so that it would be 15 days early even alone",
			timetable.Room{Room: season.Room{Capacity: chambers(1)}, Taken: taken},
			pairingWithoutRain("P"),
			readyBy("Q", 60, cheap(4)),
			timetable.LeftOut{Pairing: "Q", Dear: true},
		},
		{
			"too late for its day, whatever the room",
			timetable.Room{Room: season.Room{Capacity: chambers(2)}},
			readyBy("P", 60),
			readyBy("Q", 20, cheap(4)),
			timetable.LeftOut{Pairing: "Q", Conflict: &season.Conflict{Kind: season.TooLate}},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := timetable.Fit(context.Background(), row.room, []timetable.Pairing{row.p, row.q}, today, timetable.Options{})
			require.Equal(t, []string{"Q"}, got.LeftOut)
			require.Len(t, got.WhyOut, 1)
			why := got.WhyOut[0]
			if row.want.Conflict != nil {
				require.NotNil(t, why.Conflict)
				assert.Equal(t, row.want.Conflict.Kind, why.Conflict.Kind)
				return
			}
			assert.Equal(t, row.want, why)
		})
	}
}

// pairingWithoutRain is in nobody's way.
func pairingWithoutRain(id string) timetable.Pairing {
	return start(id, 5, func(p *timetable.Pairing) {
		for k := range p.Phases {
			p.Phases[k].Place = ""
		}
	})
}
