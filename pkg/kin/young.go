package kin

import "slices"

// Young is what the parents say about their young.
type Young struct {
	Inbreeding float64 `json:"inbreeding"`
	Expected   bool    `json:"expected"` // a mean over possible parents
	// Known is false when a parent is unknown; Inbreeding is 0 then.
	Known bool `json:"known"`
}

// YoungOf gives the expected inbreeding of young of these possible parents. It panics
// when one of them is not in the pedigree.
func (a *Ancestry) YoungOf(sires, dams []string) Young {
	if len(sires) == 0 || len(dams) == 0 {
		return Young{}
	}
	p := a.Pedigree
	s, d := a.numbers(sires), a.numbers(dams)
	return Young{
		Inbreeding: p.ExpectedInbreeding(s, d),
		Expected:   len(s) > 1 || len(d) > 1 || slices.ContainsFunc(slices.Concat(s, d), p.Uncertain),
		Known:      true,
	}
}

func (a *Ancestry) numbers(ids []string) []int {
	out := make([]int, len(ids))
	for k, id := range ids {
		i, err := a.Number(id)
		if err != nil {
			panic("kin: " + err.Error())
		}
		out[k] = i
	}
	return out
}
