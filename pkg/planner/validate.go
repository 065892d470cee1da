package planner

import "fmt"

// most is the greatest count, amount or number of days that a problem may hold,
// and dearest the greatest cost. With them no sum leaves the range of an int64.
const (
	most    = 100_000
	dearest = 10_000
)

// validate panics on what a caller must not hand over.
func validate(p Problem) {
	must(p.First.Known(), "the first day is not known")
	must(p.Days >= 1 && p.Days <= 20_000, "%d days cannot be planned, only 1 to 20000", p.Days)
	names := map[string]bool{}
	for _, r := range p.Resources {
		must(r.Name != "" && !names[r.Name], "a resource is given twice or without its name: %q", r.Name)
		must(r.Count >= 0 && r.Count <= most, "resource %s has a count of %d", r.Name, r.Count)
		names[r.Name] = true
	}
	for _, t := range p.Taken {
		must(t.Amount >= 0 && t.Amount <= most, "%d of %s are taken", t.Amount, t.Resource)
	}
	ids := map[string]bool{}
	for _, c := range p.Chains {
		for _, w := range c.Wishes {
			must(w.On.Known() && max(w.On.Sub(p.First), p.First.Sub(w.On)) <= most, "chain %s wishes for a day %s, too far from %s", c.ID, w.On, p.First)
		}
		must(c.ID != "" && !ids[c.ID], "the id of a chain is empty or stands twice: %q", c.ID)
		ids[c.ID] = true
		c.validate()
	}
}

func (c Chain) validate() {
	must(len(c.Phases) > 0, "chain %s has no phases", c.ID)
	must(c.LeaveOut >= 0 && c.LeaveOut <= most, "chain %s: leaving it out costs %d", c.ID, c.LeaveOut)
	names := map[string]bool{End: true}
	for _, p := range c.Phases {
		must(p.Name != "" && !names[p.Name], "chain %s has a phase twice or without a name: %q", c.ID, p.Name)
		must(0 <= p.Min && p.Min <= p.Usual && p.Usual <= p.Max && p.Max <= most,
			"chain %s has %s of %d, usually %d, at most %d days", c.ID, p.Name, p.Min, p.Usual, p.Max)
		must(p.Stretch >= 0 && p.Stretch <= dearest && p.Minutes >= 0 && p.Minutes <= most,
			"chain %s: %s has a negative or too large cost or work", c.ID, p.Name)
		for _, u := range p.Uses {
			must(u.Amount >= 0 && u.Amount <= most, "chain %s: %s uses %d of %s", c.ID, p.Name, u.Amount, u.Resource)
		}
		names[p.Name] = true
	}
	for _, h := range c.Holds {
		must(names[h.Phase], "chain %s has no phase %q", c.ID, h.Phase)
		must(0 <= h.From && h.From <= h.To && h.To <= most && h.Amount >= 0 && h.Amount <= most,
			"chain %s holds %d of %s from day %d to %d", c.ID, h.Amount, h.Resource, h.From, h.To)
	}
	for _, v := range c.Visits {
		must(names[v.Phase], "chain %s has no phase %q", c.ID, v.Phase)
		must(v.Day >= 0 && v.Day <= most && v.Minutes >= 0 && v.Minutes <= most, "chain %s is visited on day %d for %d minutes", c.ID, v.Day, v.Minutes)
	}
	for _, w := range c.Wishes {
		must(names[w.Phase], "chain %s has no phase %q", c.ID, w.Phase)
		must(0 <= w.Early && w.Early <= dearest && 0 <= w.Late && w.Late <= dearest, "chain %s has a wish of weight %d and %d", c.ID, w.Early, w.Late)
	}
}

func must(ok bool, format string, args ...any) {
	if !ok {
		panic("planner: " + fmt.Sprintf(format, args...))
	}
}
