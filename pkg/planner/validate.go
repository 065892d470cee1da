package planner

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// most is the greatest count, amount or number of days that a problem may hold,
// and dearest the greatest cost. With them no sum leaves the range of an int64.
const (
	most    = 100_000
	dearest = 10_000
)

// validate panics on what a caller must not hand over.
func validate(p Problem) {
	f := &finder{}
	f.problem(p)
	if len(f.faults) > 0 {
		panic("planner: " + f.faults[0].Problem)
	}
}

// faults gives what a reader must not let through.
func (w written) faults() []Fault {
	f := &finder{}
	f.must(w.Schema == Schema, "schema", "%d is not a schema known here, only %d", w.Schema, Schema)
	f.problem(w.Problem)
	for i, s := range w.Problem.Away {
		f.span(fmt.Sprintf("problem.away[%d]", i), s)
	}
	for i, t := range w.Problem.Taken {
		f.span(fmt.Sprintf("problem.taken[%d].span", i), t.Span)
	}
	return f.faults
}

// finder collects what is wrong with a problem.
type finder struct{ faults []Fault }

func (f *finder) must(ok bool, place, format string, args ...any) {
	if !ok {
		f.faults = append(f.faults, Fault{place, fmt.Sprintf(format, args...)})
	}
}

func (f *finder) span(place string, s civil.Span) {
	f.must(s.First <= s.Last, place, "%s is after %s", s.First, s.Last)
}

func (f *finder) problem(p Problem) {
	f.must(p.First.Known(), "problem.first", "the first day is not known")
	f.must(p.Days >= 1 && p.Days <= 20_000, "problem.days", "%d days cannot be planned, only 1 to 20000", p.Days)
	names := map[string]bool{}
	for i, r := range p.Resources {
		at := fmt.Sprintf("problem.resources[%d]", i)
		f.must(r.Name != "" && !names[r.Name], at, "a resource is given twice or without its name: %q", r.Name)
		f.must(r.Count >= 0 && r.Count <= most, at, "resource %s has a count of %d", r.Name, r.Count)
		names[r.Name] = true
	}
	for i, t := range p.Taken {
		f.must(t.Amount >= 0 && t.Amount <= most, fmt.Sprintf("problem.taken[%d]", i), "%d of %s are taken", t.Amount, t.Resource)
	}
	ids := map[string]bool{}
	for i, c := range p.Chains {
		at := fmt.Sprintf("problem.chains[%d]", i)
		for k, w := range c.Wishes {
			f.must(w.On.Known() && max(w.On.Sub(p.First), p.First.Sub(w.On)) <= most, fmt.Sprintf("%s.wishes[%d]", at, k),
				"chain %s wishes for a day %s, too far from %s", c.ID, w.On, p.First)
		}
		f.must(c.ID != "" && !ids[c.ID], at, "the id of a chain is empty or stands twice: %q", c.ID)
		ids[c.ID] = true
		f.chain(at, c)
	}
}

func (f *finder) chain(at string, c Chain) {
	f.must(len(c.Phases) > 0, at, "chain %s has no phases", c.ID)
	f.must(c.LeaveOut >= 0 && c.LeaveOut <= most, at, "chain %s: leaving it out costs %d", c.ID, c.LeaveOut)
	names := map[string]bool{End: true}
	for k, p := range c.Phases {
		at := fmt.Sprintf("%s.phases[%d]", at, k)
		f.must(p.Name != "" && !names[p.Name], at, "chain %s has a phase twice or without a name: %q", c.ID, p.Name)
		f.phase(at, c, p)
		names[p.Name] = true
	}
	for k, h := range c.Holds {
		at := fmt.Sprintf("%s.holds[%d]", at, k)
		f.must(names[h.Phase], at, "chain %s has no phase %q", c.ID, h.Phase)
		f.must(0 <= h.From && h.From <= h.To && h.To <= most && h.Amount >= 0 && h.Amount <= most, at,
			"chain %s holds %d of %s from day %d to %d", c.ID, h.Amount, h.Resource, h.From, h.To)
	}
	for k, v := range c.Visits {
		at := fmt.Sprintf("%s.visits[%d]", at, k)
		f.must(names[v.Phase], at, "chain %s has no phase %q", c.ID, v.Phase)
		f.must(v.Day >= 0 && v.Day <= most && v.Minutes >= 0 && v.Minutes <= most, at,
			"chain %s is visited on day %d for %d minutes", c.ID, v.Day, v.Minutes)
	}
	for k, w := range c.Wishes {
		at := fmt.Sprintf("%s.wishes[%d]", at, k)
		f.must(names[w.Phase], at, "chain %s has no phase %q", c.ID, w.Phase)
		f.must(0 <= w.Early && w.Early <= dearest && 0 <= w.Late && w.Late <= dearest, at,
			"chain %s has a wish of weight %d and %d", c.ID, w.Early, w.Late)
	}
}

func (f *finder) phase(at string, c Chain, p Phase) {
	f.must(0 <= p.Min && p.Min <= p.Usual && p.Usual <= p.Max && p.Max <= most, at,
		"chain %s has %s of %d, usually %d, at most %d days", c.ID, p.Name, p.Min, p.Usual, p.Max)
	f.must(p.Stretch >= 0 && p.Stretch <= dearest && p.Minutes >= 0 && p.Minutes <= most, at,
		"chain %s: %s has a negative or too large cost or work", c.ID, p.Name)
	for k, u := range p.Uses {
		f.must(u.Amount >= 0 && u.Amount <= most, fmt.Sprintf("%s.uses[%d]", at, k), "chain %s: %s uses %d of %s", c.ID, p.Name, u.Amount, u.Resource)
	}
}
