package timetable

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// Load is how much of something the room holds by day.
type Load struct {
	Resource string
	Count    int   // how many there are
	Used     []int // on each day of the problem
}

// loads adds up what is taken and what the plan holds, animals left aside.
func loads(p planner.Problem, plan planner.Plan) []Load {
	return slices.DeleteFunc(loadsOf(p, plan), func(l Load) bool { return strings.HasPrefix(l.Resource, animalResource) })
}

// loadsOf adds up what is taken and what the plan holds.
func loadsOf(p planner.Problem, plan planner.Plan) []Load {
	number := make(map[string]int)
	var out []Load
	for _, r := range p.Resources {
		number[r.Name] = len(out)
		out = append(out, Load{r.Name, r.Count, make([]int, p.Days)})
	}
	book := func(all []planner.Taken) {
		for _, t := range all {
			n, listed := number[t.Resource]
			if !listed {
				continue
			}
			for d := max(t.Span.First.Sub(p.First), 0); d <= min(t.Span.Last.Sub(p.First), p.Days-1); d++ {
				out[n].Used[d] += t.Amount
			}
		}
	}
	book(p.Taken)
	for k, c := range plan.Cycles {
		if len(c.Days) > 0 {
			book(booked(p.Chains[k], c.Days))
		}
	}
	return out
}
