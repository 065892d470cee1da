package timetable

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// plenty is more of anything than a season needs.
const plenty = 50_000

// short finds what runs short where a few more of it are no cure: how many more
// are. It changes the cures of the conflict.
func (f *fitting) short(p planner.Problem, c *planner.Conflict, o planner.Options) {
	q := p
	q.Chains = nil
	for _, x := range p.Chains {
		if slices.Contains(c.Chains, x.ID) {
			q.Chains = append(q.Chains, x)
		}
	}
	for i, r := range p.Resources {
		known := slices.ContainsFunc(c.Cures, func(x planner.Cure) bool { return x.Resource == r.Name })
		if known || strings.HasPrefix(r.Name, animalResource) {
			continue
		}
		works := func(more int) bool {
			q.Resources = slices.Clone(p.Resources)
			q.Resources[i].Count += more
			return planner.Solve(f.ctx, q, o).Complete()
		}
		if !works(plenty) {
			continue
		}
		least, enough := 1, 1
		for !works(enough) {
			least, enough = enough+1, 2*enough
		}
		for least < enough {
			if half := (least + enough) / 2; works(half) {
				enough = half
			} else {
				least = half + 1
			}
		}
		c.Cures = append([]planner.Cure{{Resource: r.Name, More: enough}}, c.Cures...)
	}
}
