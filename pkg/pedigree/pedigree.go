// Package pedigree computes with who descends from whom: inbreeding, kinship,
// mean kinship, gene diversity, the ancestors that two animals share, and how
// deep and how certain the known ancestry is. It knows nothing of dates, sexes
// or species.
//
// [New] takes the animals in any order and computes every inbreeding
// coefficient once; the other questions are answered from there. Animals are
// numbered as they were given, from 0 to [Pedigree.Len] - 1. Package parentage
// reads plain tables of parents.
//
// # What the numbers are
//
// The kinship K(i,j) is the chance that a gene drawn from i and a gene drawn
// from j, at the same place of the genome, are copies of one gene of one
// ancestor. An animal's kinship to itself is K(i,i) = (1 + F)/2, and its
// inbreeding coefficient F is the kinship of its parents (Wright 1922, American
// Naturalist 56:330; Malécot 1948, Les mathématiques de l'hérédité). Unknown
// parents are taken as unrelated to everything and animals without known
// parents as not inbred, so a pedigree with gaps gives values that are too low:
// look at [Pedigree.CompleteGenerations] beside them.
//
// # Parents that are one of several
//
// When several males spawned with a female, name a [Group] as the sire of the
// young: an animal of unknown identity, with the candidates and their chances.
// The group is a node of its own in the pedigree. Everything then is the exact
// expectation over all ways in which the parents could have been: the same as
// computing the pedigree for each of them and taking the mean by probability
// (Henderson 1988, Journal of Animal Science 66:1614, for young that each have
// a draw of their own). Different groups are independent of each other, and of
// everything else that is known.
//
// # Founders that are related
//
// Wild or bought animals need not count as unrelated: a [Group] of kind [Source]
// gives the kinship of two genes from one place, and stands where the parents
// would. [FromSource] puts one in for all unknown parents.
//
// # How
//
// With animals and groups in an order that puts parents first, K = T D T',
// where T holds the shares that nodes have from their ancestors and D, which is
// diagonal, what is new in each node (Henderson 1976, Biometrics 32:69).
// Nothing of the size of K is ever stored. Inbreeding is computed for each couple
// once, over the parents only, and on all cores; the bits of the result do not
// depend on how many there are.
package pedigree

import (
	"fmt"
	"sync"
)

// Record is one animal and its parents. Sire and Dam are the id of another
// record or of a [Group], or empty when that parent is unknown. Ids are compared
// byte by byte.
type Record struct {
	ID, Sire, Dam string
}

// Pedigree answers questions about a fixed set of animals. It is made by [New],
// does not change, and can be used by several goroutines at once.
//
// Methods that take the number of an animal panic when there is no such animal.
type Pedigree struct {
	ids    []string // by row
	table  idTable  // of these
	groups map[string]int32
	nodes  []int32 // node by row
	rows   []int32 // row by node; none for groups
	graph  graph

	once    sync.Once // for what is computed of the graph
	first   int       // node; what stands before is computed
	inOrder bool      // whether every row is its own node
	walkers sync.Pool // of *walker; a kinship needs one for as long as it runs
}

// New builds the pedigree of the records, which may be in any order, and of the
// groups that they name as parents, and computes every inbreeding coefficient.
//
// An animal that is both sire and dam of another is allowed and means selfing.
// An animal that may be both, because a group on one side holds a candidate that
// also stands on the other, is refused: chances for each side alone do not say
// how often it was both.
//
// Errors are joined ([errors.Join]), so that one call reports every animal:
// *[BlankIDError], *[DuplicateError], *[UnknownParentError] and *[GroupError];
// or, when there are none of these, a *[LoopError] for an animal that descends
// from itself.
//
// Time grows with the number of different sires, or dams where these have more
// mates, times the number of ancestors of theirs and their mates: see
// [Pedigree.Inbreeding]. Memory grows with the number of animals.
func New(records []Record, groups ...Group) (*Pedigree, error) {
	return new(Pedigree).Grow(records, groups...)
}

// Linked is [New], but leaves what takes the time, the inbreeding coefficients, to
// the first question that needs one. Errors are the same.
func Linked(records []Record, groups ...Group) (*Pedigree, error) {
	return new(Pedigree).linked(records, groups)
}

// computed gives the graph with all that is computed once.
func (p *Pedigree) computed() *graph {
	p.once.Do(func() { p.graph.fill(p.first) })
	return &p.graph
}

// Len gives the number of animals.
func (p *Pedigree) Len() int { return len(p.ids) }

// ID gives the id of animal i.
func (p *Pedigree) ID(i int) string {
	p.node(i)
	return p.ids[i]
}

// Index gives the number of the animal with an id, and whether there is one. The
// id of a group is not the id of an animal.
func (p *Pedigree) Index(id string) (int, bool) {
	return p.table.row(p.ids, id)
}

// node gives the node of animal i.
func (p *Pedigree) node(i int) int32 {
	if i < 0 || i >= len(p.nodes) {
		panic(fmt.Sprintf("pedigree: no animal %d among %d", i, len(p.nodes)))
	}
	return p.nodes[i]
}
