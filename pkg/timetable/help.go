package timetable

import (
	"strings"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// mostHelped is the greatest season in which more places are tried.
const mostHelped = 30

// help tries one more of each resource, where pairings give way to others.
func (f *fitting) help(t *Timetable) {
	if len(t.Proof.Moved) == 0 && len(t.LeftOut) == 0 || len(f.free) > mostHelped {
		return
	}
	best := t.Plan
	for i, r := range t.Problem.Resources {
		if strings.HasPrefix(r.Name, animalResource) {
			continue
		}
		p := t.Problem
		p.Resources = append([]planner.Resource(nil), p.Resources...)
		p.Resources[i].Count++
		plan := planner.Solve(f.ctx, p, planner.Options{Steps: f.o.steps(len(f.free)) / 2, Workers: f.o.Workers, Hint: t.Plan.Cycles})
		if plan.Cost < best.Cost {
			best = plan
			t.Proof.Help = &Help{Resource: r.Name, Cost: plan.Cost, Moved: f.givingWay(p, plan)}
		}
	}
}

// givingWay names the pairings that would come nearer to their wishes alone.
func (f *fitting) givingWay(p planner.Problem, plan planner.Plan) []string {
	var out []string
	for k, c := range plan.Cycles {
		if len(c.Days) > 0 && costs(p.Chains[k], c.Days) > f.single[k].cost {
			out = append(out, c.ID)
		}
	}
	return out
}
