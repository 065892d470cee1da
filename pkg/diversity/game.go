package diversity

import (
	"math/rand/v2"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// game is one worker's board. Genes are numbered 2f and 2f+1 by founder.
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

// gene is a copy of a founder's gene.
type gene struct {
	number int32
	before bool // it was in an inbred ancestor with two copies of it
}

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
	for k := range int32(g.tree.len()) {
		if place := g.tree.group[k]; place != none {
			if g.tree.groups[place].kind == pedigree.OneUnknown {
				g.chosen[k] = g.draw(place)
			}
			continue
		}
		g.genes[k] = [2]gene{
			g.inherit(g.tree.sire[k], 2*g.founder[k][0], g.tree.source[k][0]),
			g.inherit(g.tree.dam[k], 2*g.founder[k][1]+1, g.tree.source[k][1]),
		}
	}
	g.look()
}

// inherit gives the gene that comes from a parent, or the founder's gene, which
// may be from a source.
func (g *game) inherit(parent, founders, source int32) gene {
	if parent == none {
		if source != none {
			g.drawFrom(source, founders)
		}
		return gene{number: g.number[founders]}
	}
	if place := g.tree.group[parent]; place != none {
		if g.tree.groups[place].kind == pedigree.OneUnknown {
			parent = g.chosen[parent]
		} else {
			parent = g.draw(place)
		}
	}
	both := &g.genes[parent]
	passed := both[g.coin()]
	passed.before = passed.before || both[0].number == both[1].number
	return passed
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
		g.seen[a.number], g.seen[b.number] = g.round, g.round
		t := &g.tally.animals[n]
		for _, gene := range g.genes[k] {
			if gene.before {
				t.ancestral++
			}
		}
		if a.number == b.number {
			t.autozygous++
			if a.before || b.before {
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

type animalTally struct{ autozygous, ancestral, again int }

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
