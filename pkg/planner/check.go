package planner

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Check verifies a plan against the problem, day by day, and gives what is wrong
// with it: nothing when the chains keep their limits, no resource is overused,
// nobody is needed on a day away, and the plan costs what it says. Whether it is
// the best plan cannot be seen from it; that no bound is above the cost can. It
// shares no code with [Solve] and takes any plan without a panic. Its cost grows
// with the days that are held; plans that leave the days of the season are not
// looked at further.
func Check(p Problem, plan Plan) []string {
	c := &checker{problem: p, used: map[string]map[civil.Date]int{}, animals: map[string]map[civil.Date]string{}}
	if len(plan.Cycles) != len(p.Chains) {
		return []string{fmt.Sprintf("the plan has %d cycles and the problem %d chains", len(plan.Cycles), len(p.Chains))}
	}
	cost := 0
	for i, chain := range p.Chains {
		cycle := plan.Cycles[i]
		switch {
		case cycle.ID != chain.ID:
			c.fault("cycle %d is of %q where the problem has %q", i+1, cycle.ID, chain.ID)
		case len(cycle.Days) == 0 && chain.LeaveOut > 0:
			cost += chain.LeaveOut
		case len(cycle.Days) == 0:
			cost += plan.Missing
		case len(cycle.Days) != len(chain.Phases)+1:
			c.fault("%s: %d days for %d phases", chain.ID, len(cycle.Days), len(chain.Phases))
		default:
			cost += c.chain(chain, cycle.Days)
		}
	}
	c.resources()
	if cost != plan.Cost {
		c.fault("the plan costs %d and says %d", cost, plan.Cost)
	}
	if plan.Bound > plan.Cost {
		c.fault("the bound %d is above the cost %d", plan.Bound, plan.Cost)
	}
	if plan.Proven && plan.Bound != plan.Cost {
		c.fault("the plan is said to be proven best, and its bound %d is not its cost %d", plan.Bound, plan.Cost)
	}
	return c.faults
}

type checker struct {
	problem Problem
	used    map[string]map[civil.Date]int
	animals map[string]map[civil.Date]string // who has an animal
	faults  []string
}

func (c *checker) fault(format string, args ...any) {
	c.faults = append(c.faults, fmt.Sprintf(format, args...))
}

func (c *checker) away(d civil.Date) bool {
	return slices.ContainsFunc(c.problem.Away, func(s civil.Span) bool { return s.Contains(d) })
}

// use books an amount on the days from first up to end, without end.
func (c *checker) use(resource string, first, end civil.Date, amount int) {
	if c.used[resource] == nil {
		c.used[resource] = map[civil.Date]int{}
	}
	horizon := c.problem.First.Add(c.problem.Days)
	for d := max(first, c.problem.First); d < min(end, horizon); d++ {
		c.used[resource][d] += amount
	}
}

// chain books a chain and gives its cost.
func (c *checker) chain(chain Chain, days []civil.Date) (cost int) {
	if slices.Min(days) < c.problem.First || slices.Max(days) > c.problem.First.Add(c.problem.Days) {
		c.fault("%s: runs from %s up to %s, outside the days that are planned", chain.ID, days[0], days[len(days)-1])
		return 0
	}
	starts := map[string]civil.Date{End: days[len(days)-1]}
	for k, p := range chain.Phases {
		starts[p.Name] = days[k]
		length := days[k+1].Sub(days[k])
		if length < p.Min || length > p.Max {
			c.fault("%s: %s takes %d days, and %d to %d are allowed", chain.ID, p.Name, length, p.Min, p.Max)
		}
		if p.Earliest.Known() && days[k] < p.Earliest || p.Latest.Known() && days[k] > p.Latest {
			c.fault("%s: %s begins on %s", chain.ID, p.Name, days[k])
		}
		cost += p.Stretch * max(length-p.Usual, p.Usual-length)
		for d := days[k]; d < days[k+1] && p.Attended; d++ {
			if c.away(d) {
				c.fault("%s: nobody is in the room on %s, in %s", chain.ID, d, p.Name)
			}
		}
		for _, u := range p.Uses {
			c.use(u.Resource, days[k], days[k+1], u.Amount)
		}
		c.use(Minutes, days[k], days[k+1], p.Minutes)
	}
	for _, h := range chain.Holds {
		end := starts[h.Phase].Add(h.To)
		if h.Until.Known() {
			end = max(end, h.Until.Add(1))
		}
		c.use(h.Resource, starts[h.Phase].Add(h.From), end, h.Amount)
	}
	for _, v := range chain.Visits {
		day := starts[v.Phase].Add(v.Day)
		if c.away(day) {
			c.fault("%s: hands are needed on %s, a day away", chain.ID, day)
		}
		c.use(Minutes, day, day.Add(1), v.Minutes)
	}
	for _, w := range chain.Wishes {
		late := starts[w.Phase].Sub(w.On)
		cost += max(w.Late*late, -w.Early*late)
	}
	c.hold(chain, days[0], days[len(days)-1])
	return cost
}

// hold books the animals of a chain.
func (c *checker) hold(chain Chain, first, end civil.Date) {
	for _, a := range chain.Animals {
		if c.animals[a] == nil {
			c.animals[a] = map[civil.Date]string{}
		}
		for d := first; d < end; d++ {
			if other, held := c.animals[a][d]; held && other != chain.ID {
				c.fault("%s is in %s and %s at once on %s", a, other, chain.ID, d)
				return
			}
			c.animals[a][d] = chain.ID
		}
	}
}

func (c *checker) resources() {
	for _, r := range c.problem.Resources {
		for i := range c.problem.Days {
			day, left := c.problem.First.Add(i), r.Count
			for _, t := range c.problem.Taken {
				if t.Resource == r.Name && t.Span.Contains(day) {
					left -= t.Amount
				}
			}
			if used := c.used[r.Name][day]; used > max(left, 0) {
				c.fault("%s: %d are used on %s and %d are there", r.Name, used, day, max(left, 0))
			}
		}
	}
}
