package timetable_test

import (
	"context"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// TestShiftsAgainstCheck holds the days by which a pairing can be moved against the
// checker of plans, which shares nothing with them: it has no fault to find with the
// plan once the pairing is moved by one of them, and has with any other.
func TestShiftsAgainstCheck(t *testing.T) {
	can, cannot := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		room := drawRoom(t)
		var pairings []timetable.Pairing
		for i := range rapid.IntRange(1, 4).Draw(t, "pairings") {
			p := drawPairing(t, fmt.Sprint("P", i))
			p.Animals[0] = fmt.Sprint("he ", rapid.IntRange(0, 1).Draw(t, "one of two")) // who is in one at a time
			pairings = append(pairings, p)
		}
		got := timetable.Fit(context.Background(), room, pairings, today, timetable.Options{})
		if got.Proof == nil {
			return
		}
		for k, c := range got.Plan.Cycles {
			var want []int
			for by := -40; by <= 60 && len(c.Days) > 0; by++ {
				if by != 0 && canShift(got, k, by) {
					want = append(want, by)
				}
			}
			can, cannot = can+len(want), cannot+100-len(want)
			if diff := cmp.Diff(want, got.Shifts(c.ID, -40, 60)); diff != "" {
				t.Fatalf("%s (-by the checker +shifts): %s", c.ID, diff)
			}
		}
	})
	if !testing.Short() {
		assert.Greater(t, can, 100)
		assert.Greater(t, cannot, 100)
	}
}

// canShift asks the checker. It leaves aside the day of a start that the keeper set.
func canShift(got timetable.Timetable, k, by int) bool {
	p, plan := got.Problem, got.Plan
	p.Chains, plan.Cycles = slices.Clone(p.Chains), slices.Clone(plan.Cycles)
	chain, days := &p.Chains[k], slices.Clone(plan.Cycles[k].Days)
	chain.Phases = slices.Clone(chain.Phases)
	if first := &chain.Phases[0]; first.Earliest.Known() && first.Earliest == first.Latest && first.Earliest > p.First {
		first.Earliest, first.Latest = 0, 0
	}
	for i := range days {
		days[i] = days[i].Add(by)
	}
	plan.Cycles[k].Days, plan.Bound, plan.Proven = days, 0, false
	return !slices.ContainsFunc(planner.Check(p, plan), func(fault string) bool { return !strings.HasPrefix(fault, "the plan costs") })
}

// TestShiftsBesideOthers moves Q, whose conditioning begins on day 80, its rain on day
// 110, and which is over on day 125.
func TestShiftsBesideOthers(t *testing.T) {
	sharesHim := func(p *timetable.Pairing) { p.Animals[0] = "he of P" }
	mayBeLate := func(p *timetable.Pairing) { p.MayBeLate = true }
	for _, row := range []struct {
		name string
		p, q timetable.Pairing
		want []int
	}{
		{"earlier, as far as is asked, and no later than its day", readyBy("P", 60), readyBy("Q", 110), []int{-7, -6, -5, -4, -3, -2, -1}},
		{"its male is in P to day 74", readyBy("P", 60), readyBy("Q", 110, sharesHim), []int{-5, -4, -3, -2, -1}},
		{"its male is in P from day 130", readyBy("P", 160), readyBy("Q", 110, sharesHim, mayBeLate), []int{-7, -6, -5, -4, -3, -2, -1, 1, 2, 3, 4, 5}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := timetable.Fit(context.Background(), timetable.Room{}, []timetable.Pairing{row.p, row.q}, today, timetable.Options{})
			assert.Equal(t, row.want, got.Shifts("Q", -7, 7))
		})
	}
}
