package diversity

import (
	"math/rand/v2"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// game is one worker's board.
type game struct {
	*lottery
	genes  [][2]gene       // by node
	chosen []int32         // by node of a group that is one animal: who it is in this drop
	number []int32         // by gene number: its own, or that of an earlier gene that is the same one in the source
	drawn  []map[int]int32 // by source: the first number of each of its genes in this drop
	seen   []int32         // by gene number: the drop in which it was last seen, from 1
	round  int32
	source *rand.Rand
	coins  uint64 // bits not yet used, below a marking bit
	tally  *tally
}

// gene is a copy of a founder's gene: twice its number, which is 2f or 2f+1 by
// founder, and 1 more when it was in an inbred ancestor with two copies of it.
type gene int32

func (g gene) number() int32 { return int32(g >> 1) }
func (g gene) before() bool  { return g&1 != 0 }

func (l *lottery) newGame() *game {
	g := &game{
		lottery: l,
		genes:   make([][2]gene, l.tree.len()),
		chosen:  make([]int32, l.tree.len()),
		seen:    make([]int32, 2*l.count),
		number:  make([]int32, 2*l.count),
		drawn:   make([]map[int]int32, len(l.pools)),
		tally:   &tally{genes: make([]int, l.count), lost: make([]int, l.count), animals: make([]animalTally, len(l.living))},
	}
	for i := range g.number {
		g.number[i] = int32(i)
	}
	return g
}

// play makes one drop. It has random numbers of its own, so that it does not
// matter who plays it.
func (g *game) play(seed, drop uint64) {
	g.source = rand.New(rand.NewPCG(seed, drop))
	g.coins = 1
	g.round++
	for s := range g.drawn {
		g.drawn[s] = map[int]int32{}
	}
	next := 0
	for _, k := range g.groups {
		g.bear(next, int(k))
		if place := g.tree.group[k]; g.tree.groups[place].kind == pedigree.OneUnknown {
			g.chosen[k] = g.draw(place)
		}
		next = int(k) + 1
	}
	g.bear(next, len(g.genes))
	g.look()
}

// bear gives the animals from one node to another their genes.
func (g *game) bear(start, end int) {
	for k := start; k < end; k++ {
		from := g.from[k]
		g.genes[k] = [2]gene{g.inherit(from[0]), g.inherit(from[1])}
	}
}

// inherit gives the gene that comes from a parent, or the founder's gene.
func (g *game) inherit(from int32) gene {
	if from < 0 {
		rare := &g.rare[none-1-from]
		if rare.group == none {
			return g.found(rare)
		}
		from = g.parent(rare.group)
	}
	both := g.genes[from]
	passed := both[g.coin()&1]
	if both[0].number() == both[1].number() {
		passed |= 1
	}
	return passed
}

// parent gives who of a group is the parent.
func (g *game) parent(group int32) int32 {
	place := g.tree.group[group]
	if g.tree.groups[place].kind == pedigree.OneUnknown {
		return g.chosen[group]
	}
	return g.draw(place)
}

// found gives a founder's gene, which may be from a source.
func (g *game) found(o *origin) gene {
	if o.source != none {
		g.drawFrom(o.source, o.number)
	}
	return gene(2 * g.number[o.number])
}

// drawFrom draws the founder's gene of that number from a source.
func (g *game) drawFrom(source, number int32) {
	g.number[number] = number
	place := g.pools[source].draw(g.source)
	if place == none {
		return
	}
	if first, again := g.drawn[source][place]; again {
		g.number[number] = first
	} else {
		g.drawn[source][place] = number
	}
}

// draw gives one of the candidates of a group.
func (g *game) draw(place int32) int32 {
	terms := g.tree.groups[place].terms
	x := g.source.Float64()
	for _, c := range terms {
		if x -= c.weight; x < 0 {
			return c.node
		}
	}
	return terms[len(terms)-1].node
}

// coin gives 0 or 1.
func (g *game) coin() uint64 {
	if g.coins == 1 {
		bits := g.source.Uint64()
		g.coins = 1<<63 | bits>>1
		return bits & 1
	}
	bit := g.coins & 1
	g.coins >>= 1
	return bit
}

// look adds the drop to the tally.
func (g *game) look() {
	for n, k := range g.living {
		a, b := g.genes[k][0], g.genes[k][1]
		g.seen[a.number()], g.seen[b.number()] = g.round, g.round
		t := &g.tally.animals[n]
		t.ancestral += int32(a&1 + b&1)
		if a.number() == b.number() {
			t.autozygous++
			if a.before() || b.before() {
				t.again++
			}
		}
	}
	for f := range g.tally.genes {
		kept := 0
		for _, number := range g.number[2*f : 2*f+2] {
			if g.seen[number] == g.round {
				kept++
			}
		}
		g.tally.genes[f] += kept
		if kept == 0 {
			g.tally.lost[f]++
		}
	}
}

// tally counts over drops.
type tally struct {
	genes   []int // by founder: genes that were kept
	lost    []int // by founder: drops that kept none
	animals []animalTally
}

type animalTally struct{ autozygous, ancestral, again int32 }

func (t *tally) add(other *tally) {
	for f := range t.genes {
		t.genes[f] += other.genes[f]
		t.lost[f] += other.lost[f]
	}
	for n := range t.animals {
		t.animals[n].autozygous += other.animals[n].autozygous
		t.animals[n].ancestral += other.animals[n].ancestral
		t.animals[n].again += other.animals[n].again
	}
}
