package kin

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Young is what the parents say about their young.
type Young struct {
	Inbreeding float64 `json:"inbreeding"`
	Expected   bool    `json:"expected"` // a mean over possible parents
	// Known is false when a parent is unknown; Inbreeding is 0 then.
	Known bool `json:"known"`
}

// Above gives the pedigree of animals and of their ancestors. In a large room these are
// few, and the inbreeding of all takes longer than most questions. It panics when one of
// them is not in the pedigree.
func (a *Ancestry) Above(ids []string) *pedigree.Pedigree {
	return a.Pedigree.AncestryOf(numbers(a.Pedigree, ids))
}

// YoungOf gives the expected inbreeding of young of these possible parents. It panics
// when one of them is not in the pedigree.
func YoungOf(p *pedigree.Pedigree, sires, dams []string) Young {
	if len(sires) == 0 || len(dams) == 0 {
		return Young{}
	}
	s, d := numbers(p, sires), numbers(p, dams)
	return Young{
		Inbreeding: p.ExpectedInbreeding(s, d),
		Expected:   len(s) > 1 || len(d) > 1 || slices.ContainsFunc(slices.Concat(s, d), p.Uncertain),
		Known:      true,
	}
}

func numbers(p *pedigree.Pedigree, ids []string) []int {
	out := make([]int, len(ids))
	for k, id := range ids {
		i, ok := p.Index(id)
		if !ok {
			panic(fmt.Sprintf("kin: no animal %q in the pedigree", id))
		}
		out[k] = i
	}
	return out
}
