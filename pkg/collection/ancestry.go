package collection

import (
	"slices"
	"strconv"
	"strings"
)

// ancestry numbers animals and clutches as [Collection.number] does, and leads
// from each to what it comes from: an animal to its clutch and to the parents
// it names, a clutch to its parents.
type ancestry struct {
	links   *links
	animals int // clutches are numbered from there
	nodes   int
}

// from gives the i-th node that v comes from, and false after the last.
func (a *ancestry) from(v, i int) (int, bool) {
	if v < a.animals && a.links.clutchOf[v] >= 0 {
		if i == 0 {
			return a.animals + a.links.clutchOf[v], true
		}
		i--
	}
	if i >= len(a.links.parents[v]) {
		return 0, false
	}
	return a.links.parents[v][i].index, true
}

// shortestLoop gives the nodes of a shortest loop that leads from start back
// to start, by breadth-first search in the component of start. It is empty
// when there is none.
func (a *ancestry) shortestLoop(start int, component []int) []int {
	var reached map[int]int // from which node
	queue := []int{start}
	for head := 0; head < len(queue); head++ {
		v := queue[head]
		for i := 0; ; i++ {
			w, ok := a.from(v, i)
			if !ok {
				break
			}
			if w == start {
				return path(reached, start, v)
			}
			if _, seen := reached[w]; !seen && component[w] == component[start] {
				if reached == nil {
					reached = make(map[int]int)
				}
				reached[w] = v
				queue = append(queue, w)
			}
		}
	}
	return nil
}

// path gives the nodes from start to end.
func path(reached map[int]int, start, end int) []int {
	nodes := []int{end}
	for end != start {
		end = reached[end]
		nodes = append(nodes, end)
	}
	slices.Reverse(nodes)
	return nodes
}

// trace sets r.order to animals and clutches, each after all that it comes
// from, and reports animals that are their own ancestors: of each knot of such
// animals one shortest loop, from the animal that stands first in the file.
func (r *reader) trace() {
	a := &ancestry{links: &r.links, animals: len(r.c.Animals), nodes: len(r.c.Animals) + len(r.c.Clutches)}
	r.loop = make([]bool, a.nodes)
	r.order = make([]int, 0, a.nodes)
	component := make([]int, a.nodes)
	for i, nodes := range a.components() {
		r.order = append(r.order, nodes...)
		for _, v := range nodes {
			component[v] = i + 1
		}
		// Animals have the lower numbers, and there is one in every loop.
		loop := a.shortestLoop(slices.Min(nodes), component)
		if len(loop) == 0 {
			continue
		}
		for _, v := range nodes {
			r.loop[v] = true
		}
		r.reportLoop(loop)
	}
}

// maxMembers is how many members of a loop are listed.
const maxMembers = 12

func (r *reader) reportLoop(loop []int) {
	first := r.subject(loop[0])
	if len(loop) == 1 {
		r.errorAt(r.place(first), r.called(first)+" is its own ancestor: it is named as its own parent", "name another animal, or leave the parent out")
		return
	}
	var b strings.Builder
	b.WriteString(r.called(first) + " is its own ancestor: it comes from ")
	for i, v := range loop[1:] {
		if i == maxMembers {
			b.WriteString("… (" + strconv.Itoa(len(loop)) + " members in all), that from ")
			break
		}
		s := r.subject(v)
		b.WriteString(r.called(s) + " (line " + line(r.place(s)) + "), that from ")
	}
	b.WriteString(r.called(first))
	r.errorAt(r.place(first), b.String(), "one of these parents is wrong")
}
