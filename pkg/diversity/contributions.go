package diversity

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Contributions are the founders of a set of animals by number, an animal before
// its unknown parents, each with a share above 0.
type Contributions []Contribution

// FounderContributions gives the expected share of the living animals' genes that
// comes from each founder: every living animal's weight is passed up, half to
// either parent, or by their chances to the candidates of a group (Lacy 1989, Zoo
// Biology 8:111). The shares, those of unknown parents included, add up to 1; no
// living animals have none. Two passes over the pedigree.
func FounderContributions(p *pedigree.Pedigree, living []int) Contributions {
	t := newTree(p, living)
	return t.collect(t.weights(living))
}

// weights gives each living animal its share of 1, by node.
func (t *tree) weights(living []int) []float64 {
	v := make([]float64, t.len())
	for _, i := range living {
		v[t.node[i]] += 1 / float64(len(living))
	}
	return v
}

// collect passes the weights of nodes up to the founders, and leaves in v what
// comes to each node.
func (t *tree) collect(v []float64) Contributions {
	var all Contributions
	for k := int32(t.len() - 1); k >= 0; k-- {
		if v[k] == 0 {
			continue
		}
		t.up(v, k)
		t.founders(k, func(founder Founder, share float64) {
			all = append(all, Contribution{Founder: founder, Share: share * v[k]})
		})
	}
	all.sort()
	return all
}

func (c Contributions) sort() {
	slices.SortFunc(c, func(a, b Contribution) int { return a.Founder.compare(b.Founder) })
}

// Unknown gives the share that comes from unknown parents, which nobody can say
// more about: it is lost to every statement about founders.
func (c Contributions) Unknown() float64 {
	sum := 0.0
	for _, x := range c {
		if x.Founder.Role == UnknownSire || x.Founder.Role == UnknownDam {
			sum += x.Share
		}
	}
	return sum
}

// Founders gives the number of founders that are animals of the pedigree.
func (c Contributions) Founders() int {
	n := 0
	for _, x := range c {
		if x.Founder.Role == Itself {
			n++
		}
	}
	return n
}

// Equivalents gives the founder equivalents: see [FounderEquivalents].
func (c Contributions) Equivalents() float64 {
	sum := 0.0
	for _, x := range c {
		sum += x.Share * x.Share
	}
	return over(sum)
}

// over gives 1/sum, and 0 where there is nothing to sum up.
func over(sum float64) float64 {
	if sum == 0 {
		return 0
	}
	return 1 / sum
}
