package pedigree

import (
	"fmt"
	"math"
)

// Group is a parent of which only the candidates are known, or, when its kind is
// [Source], only where it came from. Its id is named as Sire or Dam by the young;
// it must differ from the ids of all animals.
type Group struct {
	ID         string
	Kind       GroupKind
	Candidates []Candidate // none for a Source
	Kinship    float64     // of a Source: of two genes drawn from it, from 0 to 1
}

// Candidate is an animal that may be the parent, and its weight. Weights count
// relative to each other; when all are 0, all candidates are equally likely.
// Either all are 0 or all are above 0: a candidate without a chance does not
// belong in the list.
type Candidate struct {
	ID     string
	Weight float64
}

// GroupKind says how the young that name a group came by their parent.
type GroupKind int

const (
	// OneUnknown is one animal: all young that name the group share it.
	OneUnknown GroupKind = iota
	// Several is a draw of its own for each of the young, as when each egg of a
	// clutch may have another father.
	Several
	// Source is where parents without records come from: a wild population, a
	// trader's stock, a line of which nothing is written down. Each of the young
	// that names it has a parent of its own from there, and two genes drawn from
	// it are copies of one gene with the chance [Group.Kinship]. An animal of
	// which both parents come from one source is a founder with F = Kinship, and
	// two such founders have that kinship.
	//
	// A source of kinship 1/2 is a single unrelated animal that has no record:
	// founders that are brothers and sisters from one unknown clutch name two such
	// sources, one as sire and one as dam. Sources are not animals: they are not
	// numbered and count nowhere.
	Source
)

// String gives "one", "several" or "source".
func (k GroupKind) String() string {
	switch k {
	case OneUnknown:
		return "one"
	case Several:
		return "several"
	case Source:
		return "source"
	}
	return fmt.Sprintf("GroupKind(%d)", int(k))
}

// check gives what is wrong with a group by itself, or nothing.
func (g Group) check() string {
	switch {
	case g.Kind == Source:
		return g.checkSource()
	case g.Kind != OneUnknown && g.Kind != Several:
		return "its kind is neither OneUnknown, Several nor Source"
	case g.Kinship != 0:
		return "it has a kinship of its own; only a Source has"
	}
	if len(g.Candidates) == 0 {
		return "it has no candidates; leave the parent empty when nothing is known"
	}
	seen := make(map[string]bool, len(g.Candidates))
	weighted := 0
	for _, c := range g.Candidates {
		if seen[c.ID] {
			return fmt.Sprintf("candidate %q is there twice; add its weights up", c.ID)
		}
		seen[c.ID] = true
		if math.IsNaN(c.Weight) || math.IsInf(c.Weight, 0) || c.Weight < 0 {
			return fmt.Sprintf("the weight of candidate %q is %v; it must be a number from 0", c.ID, c.Weight)
		}
		if c.Weight > 0 {
			weighted++
		}
	}
	if weighted > 0 && weighted < len(g.Candidates) {
		return "some candidates have a weight and others have none; give all of them one, or none"
	}
	return ""
}

func (g Group) checkSource() string {
	if len(g.Candidates) > 0 {
		return "it is a source and has candidates; it can be one or the other"
	}
	if !(g.Kinship >= 0 && g.Kinship <= 1) { // also catches NaN
		return fmt.Sprintf("the kinship of the source is %v; it must be from 0 to 1", g.Kinship)
	}
	return ""
}

// shares gives the probabilities of the candidates of a group that was checked.
func (g Group) shares() []float64 {
	shares := make([]float64, len(g.Candidates))
	largest := 0.0
	for _, c := range g.Candidates {
		largest = max(largest, c.Weight)
	}
	total := 0.0
	for i, c := range g.Candidates {
		shares[i] = 1
		if largest > 0 {
			shares[i] = c.Weight / largest // the sum of huge weights would overflow
		}
		total += shares[i]
	}
	for i := range shares {
		shares[i] /= total
	}
	return shares
}
