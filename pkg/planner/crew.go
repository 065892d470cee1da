package planner

import (
	"sync"
	"sync/atomic"
)

// crew is the workers, with a table for each. What they compute is stored by
// index, so that their number does not show in a result.
type crew struct {
	tables  []*table
	nothing load // a load of nothing, which nobody changes
}

func newCrew(m *model, workers int) *crew {
	phases := 0
	for _, c := range m.chains {
		phases = max(phases, len(c.phases))
	}
	c := &crew{nothing: m.newLoad()}
	for range max(1, workers) {
		c.tables = append(c.tables, newTable(phases, m.days))
	}
	return c
}

// each does one job for each number below n.
func (c *crew) each(n int, job func(i int, t *table)) {
	if len(c.tables) == 1 {
		for i := range n {
			job(i, c.tables[0])
		}
		return
	}
	var next atomic.Int64
	var done sync.WaitGroup
	for _, t := range c.tables {
		done.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				job(i, t)
			}
		})
	}
	done.Wait()
}
