package pairing

import "slices"

// pairs tells which option is which pair, where all are pairs.
type pairs struct {
	sire, dam []int32   // parents of each option: rows of scoring.kin
	at        [][]int32 // by sire and dam: the option, or -1
	of        [][]int32 // options of each parent
}

// newPairs gives nil when an option is a group, or two are the same pair.
func newPairs(sc *scoring) *pairs {
	ps := &pairs{at: make([][]int32, len(sc.kin)), of: make([][]int32, len(sc.kin))}
	for p, shares := range sc.shares {
		if len(shares) != 2 {
			return nil
		}
		a, b := int32(shares[0].parent), int32(shares[1].parent)
		ps.sire, ps.dam = append(ps.sire, a), append(ps.dam, b)
		ps.of[a] = append(ps.of[a], int32(p))
		if a != b {
			ps.of[b] = append(ps.of[b], int32(p))
		}
	}
	none := make([]int32, len(sc.kin))
	for b := range none {
		none[b] = -1
	}
	for a := range ps.at {
		ps.at[a] = slices.Clone(none)
	}
	for p, a := range ps.sire {
		if ps.at[a][ps.dam[p]] >= 0 {
			return nil
		}
		ps.at[a][ps.dam[p]] = int32(p)
	}
	return ps
}
