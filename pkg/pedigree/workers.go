package pedigree

import (
	"runtime"
	"sync"
	"sync/atomic"
)

// workers does numbered tasks, several at a time. Each worker has a state of its
// own, which is made when it is first needed and kept; what a task gives must not
// depend on it, nor on the order of tasks.
type workers[State any] struct {
	state  []State
	create func() State
}

// few is how many tasks are not worth the start of a second worker.
const few = 2

// do runs task for the numbers from 0 to n-1.
func (w *workers[State]) do(n int, task func(s State, i int)) {
	count := min(runtime.GOMAXPROCS(0), n/few)
	for len(w.state) < max(count, 1) {
		w.state = append(w.state, w.create())
	}
	if count <= 1 {
		for i := range n {
			task(w.state[0], i)
		}
		return
	}
	var next atomic.Int64
	var all sync.WaitGroup
	for _, s := range w.state[:count] {
		all.Go(func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				task(s, i)
			}
		})
	}
	all.Wait()
}
