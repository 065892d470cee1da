package horizon

import "math"

// planner adds young to a year's litter one at a time.
type planner struct {
	h              *herd
	males, females []int
	base           []float64 // by animal: sum of kinships with those that stay
	given          []float64 // by animal: sum of kinships with the young so far
	count          map[young]int
	pairs          int
	inbreeding     float64 // what the inbreeding of a young weighs in a sum of kinships
	ceiling        float64 // inbreeding of a young that is only taken when there is nothing else
}

// passes is how often every young may move to a better pair.
const passes = 4

// ahead is what the inbreeding of a young saves in the years in which lines are kept
// apart, in a sum of kinships: the loss of its genes by chance, when it breeds once in
// the place of itself, is (1 − F)/4.
const ahead = 0.25

// above is what each hundredth of inbreeding above the ceiling weighs: more than all
// else.
const above = 1e4

// planned takes each young from the pair that costs least, and then lets each
// of them move. What it gives when it is stopped is no plan.
func (h *herd) planned(males, females, stay []int, n int, f Future, year int) []young {
	size := float64(len(stay) + n)
	weight, ceiling := f.Weight*size*size/float64(n), f.Ceiling
	if f.CrossEvery > 0 && year%f.CrossEvery != 0 {
		weight = -ahead
	}
	if ceiling == 0 {
		ceiling = 1
	}
	p := &planner{
		h: h, males: males, females: females, count: make(map[young]int), pairs: f.Pairings,
		base: make([]float64, len(h.kin)), given: make([]float64, len(h.kin)),
		inbreeding: weight, ceiling: ceiling,
	}
	for i := range h.kin {
		for _, s := range stay {
			p.base[i] += h.kin[i][s]
		}
	}
	litter := make([]young, n)
	for i := range litter {
		if h.stop() {
			return litter
		}
		litter[i] = p.cheapest()
		p.add(litter[i], 1)
	}
	for range passes {
		moved := false
		for i, one := range litter {
			if h.stop() {
				return litter
			}
			p.add(one, -1)
			if other := p.cheapest(); p.cost(other) < p.cost(one)-1e-9 {
				litter[i], moved = other, true
			}
			p.add(litter[i], 1)
		}
		if swapped := p.swap(litter); !moved && !swapped {
			break
		}
	}
	return litter
}

// swap lets two young change mates where that lowers the cost: what each parent
// gives stays as it is, and only the inbreeding changes.
func (p *planner) swap(litter []young) (swapped bool) {
	kin := p.h.kin
	for i := range litter {
		for j := range i {
			a, b := litter[i], litter[j]
			x, y := young{a.sire, b.dam}, young{b.sire, a.dam}
			saved := p.closeness(kin[a.sire][a.dam]) + p.closeness(kin[b.sire][b.dam]) - p.closeness(kin[x.sire][x.dam]) - p.closeness(kin[y.sire][y.dam])
			if saved <= 1e-9 || p.pairs > 0 && (p.count[x] == 0 || p.count[y] == 0) {
				continue
			}
			for _, old := range [2]young{a, b} {
				if p.count[old]--; p.count[old] == 0 {
					delete(p.count, old)
				}
			}
			p.count[x]++
			p.count[y]++
			litter[i], litter[j], swapped = x, y, true
		}
	}
	return swapped
}

// cost is what one more young of a pair adds to the sum of all kinships in the line: with
// those that stay and with the other young, both ways round, and with itself.
func (p *planner) cost(y young) float64 {
	f := p.h.kin[y.sire][y.dam]
	return p.base[y.sire] + p.base[y.dam] + p.given[y.sire] + p.given[y.dam] + (1+f)/2 + p.closeness(f)
}

// closeness is what the inbreeding of a young costs.
func (p *planner) closeness(f float64) float64 {
	return p.inbreeding*f + above*max(0, f-p.ceiling+1e-9)
}

func (p *planner) cheapest() young {
	best, least := young{p.males[0], p.females[0]}, math.Inf(1)
	full := p.pairs > 0 && len(p.count) >= p.pairs
	for _, m := range p.males {
		for _, f := range p.females {
			y := young{m, f}
			if full && p.count[y] == 0 {
				continue
			}
			if c := p.cost(y); c < least-1e-12 {
				best, least = y, c
			}
		}
	}
	return best
}

// add lets a pair have a young more or less.
func (p *planner) add(y young, n int) {
	p.count[y] += n
	if p.count[y] == 0 {
		delete(p.count, y)
	}
	s, d := p.h.kin[y.sire], p.h.kin[y.dam]
	for i := range p.given {
		p.given[i] += float64(n) * (s[i] + d[i]) / 2
	}
}
