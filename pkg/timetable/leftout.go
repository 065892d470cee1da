package timetable

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// LeftOut is why a pairing is left out. Where nothing is given, beside the others it
// would cost more than leaving it out.
type LeftOut struct {
	Pairing string
	// Conflict is why it cannot be as it is wished even without a room around it.
	Conflict *season.Conflict
	// Unfit: the room has no place for it even without the others. Dear: even so its
	// days would cost as much as leaving it out.
	Unfit, Dear bool
	// Short is what there would be too few of beside the others on the days that it
	// would have alone, and Busy are its animals that others have then. Days are those
	// from the first to the last of it.
	Short string
	Busy  []string
	Days  civil.Span
}

// whyStuck tells of the pairings that are left out at once.
func (f *fitting) whyStuck(ids []string) (out []LeftOut) {
	for _, id := range ids {
		k := slices.IndexFunc(f.alone.Conflicts, func(c season.Conflict) bool {
			return (c.Kind == season.TooLate || c.Kind == season.Away) && c.Pairings[0] == id
		})
		c := f.alone.Conflicts[k]
		out = append(out, LeftOut{Pairing: id, Conflict: &c})
	}
	return out
}

// whyOut tells why a pairing that could be moved is left out of a plan.
func (f *fitting) whyOut(t Timetable, k int) LeftOut {
	alone, chain := f.single[k], t.Problem.Chains[k]
	out := LeftOut{Pairing: chain.ID}
	if len(alone.days) == 0 {
		out.Dear = f.possible(chain)
		out.Unfit = !out.Dear
		return out
	}
	beside := newShifting(t, k)
	own := civil.Span{First: alone.days[0], Last: alone.days[len(alone.days)-1].Add(-1)}
	for i, c := range t.Plan.Cycles {
		if len(c.Days) == 0 {
			continue
		}
		span := civil.Span{First: c.Days[0], Last: c.Days[len(c.Days)-1].Add(-1)}
		for _, a := range t.Problem.Chains[i].Animals {
			if span.Overlaps(own) && slices.Contains(chain.Animals, a) && !slices.Contains(out.Busy, a) {
				out.Busy = append(out.Busy, a)
				out.Days = hull(out.Days, civil.Span{First: max(span.First, own.First), Last: min(span.Last, own.Last)})
			}
		}
	}
	if len(out.Busy) == 0 {
		out.Short, out.Days = beside.crowded(alone.days)
	}
	return out
}

// possible reports whether a pairing can be planned when it is alone in the room, at
// whatever cost.
func (f *fitting) possible(c planner.Chain) bool {
	p := f.base
	c.LeaveOut = 0
	p.Chains = []planner.Chain{c}
	return planner.Solve(f.ctx, p, planner.Options{Steps: singleSteps}).Complete()
}

// crowded gives what there would be too few of for most days, if the pairing had
// these days beside all others, and from when to when.
func (f *shifting) crowded(days []civil.Date) (resource string, span civil.Span) {
	own := f.own(days)
	longest := 0
	for _, r := range f.p.Resources {
		n, over := 0, civil.Span{First: 1, Last: 0}
		for d, amount := range own[r.Name] {
			if day := f.p.First.Add(d); amount > 0 && amount+f.others[r.Name].Used[d] > r.Count {
				n++
				over = hull(over, civil.Span{First: day, Last: day})
			}
		}
		if n > longest {
			resource, span, longest = r.Name, over, n
		}
	}
	return resource, span
}
