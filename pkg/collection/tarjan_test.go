package collection

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// randomAncestry draws animals and clutches with any links at all, loops too.
func randomAncestry(t *rapid.T) *ancestry {
	animals := rapid.IntRange(1, 8).Draw(t, "animals")
	clutches := rapid.IntRange(0, 4).Draw(t, "clutches")
	l := &links{parents: make([][]link, animals+clutches), clutchOf: make([]int, animals)}
	for v := range l.parents {
		for range rapid.IntRange(0, 2).Draw(t, "parents") {
			l.parents[v] = append(l.parents[v], link{index: rapid.IntRange(0, animals-1).Draw(t, "parent")})
		}
	}
	for v := range l.clutchOf {
		l.clutchOf[v] = rapid.IntRange(-1, clutches-1).Draw(t, "clutch")
	}
	return &ancestry{links: l, animals: animals, nodes: animals + clutches}
}

// reach is the obvious way: what is reached from each node by one link or
// more, by Warshall's rule. [from][to] is the number of links, 0 for never.
func reach(a *ancestry) [][]int {
	steps := make([][]int, a.nodes)
	for v := range steps {
		steps[v] = make([]int, a.nodes)
		for _, w := range linked(a, v) {
			steps[v][w] = 1
		}
	}
	for via := range steps {
		for v := range steps {
			for w := range steps {
				if n := steps[v][via] + steps[via][w]; steps[v][via] > 0 && steps[via][w] > 0 && (steps[v][w] == 0 || n < steps[v][w]) {
					steps[v][w] = n
				}
			}
		}
	}
	return steps
}

func TestComponentsAndLoopsLikeReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := randomAncestry(t)
		steps := reach(a)
		component := make([]int, a.nodes)
		place := make([]int, a.nodes)
		var order []int
		for i, nodes := range a.components() {
			for _, v := range nodes {
				component[v], place[v] = i+1, i
				order = append(order, v)
			}
		}
		slices.Sort(order)
		for v := range a.nodes {
			assert.Equal(t, v, order[v], "each node is in one component")
			for w := range a.nodes {
				same := v == w || steps[v][w] > 0 && steps[w][v] > 0
				assert.Equal(t, same, component[v] == component[w])
				if steps[v][w] > 0 && !same {
					assert.Less(t, place[w], place[v], "what a node comes from is before it")
				}
			}
			loop := a.shortestLoop(v, component)
			assert.Len(t, loop, steps[v][v])
			checkLoop(t, a, v, loop)
		}
	})
}

// linked lists what v comes from.
func linked(a *ancestry, v int) []int {
	var nodes []int
	if v < a.animals && a.links.clutchOf[v] >= 0 {
		nodes = append(nodes, a.animals+a.links.clutchOf[v])
	}
	for _, l := range a.links.parents[v] {
		nodes = append(nodes, l.index)
	}
	return nodes
}

func checkLoop(t *rapid.T, a *ancestry, start int, loop []int) {
	for i, v := range loop {
		assert.Contains(t, linked(a, v), loop[(i+1)%len(loop)], "each comes from the next")
	}
	if len(loop) > 0 {
		assert.Equal(t, start, loop[0])
	}
}
