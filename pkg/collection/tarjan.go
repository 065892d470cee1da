package collection

// components gives the strongly connected components of a, each after all
// that it comes from: Tarjan 1972, SIAM Journal on Computing 1(2). It takes time
// in proportion to nodes and links. A stack of its own stands in for recursion,
// for a line of descent can be as long as the file.
func (a *ancestry) components() [][]int {
	t := &tarjan{
		ancestry: a,
		number:   make([]int, a.nodes),
		low:      make([]int, a.nodes),
		open:     make([]bool, a.nodes),
		all:      make([]int, 0, a.nodes),
	}
	for root := range a.nodes {
		if t.number[root] == 0 {
			t.enter(root)
		}
		for len(t.calls) > 0 {
			t.step()
		}
	}
	return t.found
}

type tarjan struct {
	*ancestry
	number, low []int  // order of the first visit from 1, and the lowest that is reached from there
	open        []bool // whether it is in stack
	stack       []int
	calls       []call
	visited     int
	all         []int   // all nodes that have their component
	found       [][]int // parts of all
}

type call struct{ node, next int }

func (t *tarjan) enter(v int) {
	t.visited++
	t.number[v], t.low[v], t.open[v] = t.visited, t.visited, true
	t.stack = append(t.stack, v)
	t.calls = append(t.calls, call{node: v})
}

// step follows the next link of the topmost call, or ends the call.
func (t *tarjan) step() {
	top := &t.calls[len(t.calls)-1]
	v := top.node
	w, ok := t.from(v, top.next)
	top.next++
	switch {
	case !ok:
		t.leave(v)
	case t.number[w] == 0:
		t.enter(w)
	case t.open[w]:
		t.low[v] = min(t.low[v], t.number[w])
	}
}

func (t *tarjan) leave(v int) {
	t.calls = t.calls[:len(t.calls)-1]
	if n := len(t.calls); n > 0 {
		below := t.calls[n-1].node
		t.low[below] = min(t.low[below], t.low[v])
	}
	if t.low[v] != t.number[v] {
		return
	}
	first := len(t.all)
	for w := -1; w != v; {
		w = t.stack[len(t.stack)-1]
		t.stack = t.stack[:len(t.stack)-1]
		t.open[w] = false
		t.all = append(t.all, w)
	}
	t.found = append(t.found, t.all[first:len(t.all):len(t.all)])
}
