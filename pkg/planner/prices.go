package planner

import "slices"

// prices are what a resource costs by day, in units. The least cost of every
// chain at these prices, less the price of all that there is, is below the cost
// of every plan (Lagrangian relaxation; Fisher 1981, Management Science 27:1).
type prices struct {
	day      [][]int64 // by resource and day
	sums     [][]int64 // by resource: of all days before
	constant int64     // of all that there is
}

func (m *model) newPrices() prices {
	p := prices{}
	for range m.left {
		p.day = append(p.day, make([]int64, m.days))
		p.sums = append(p.sums, make([]int64, m.days+1))
	}
	return p
}

func (p *prices) clone() prices {
	c := prices{constant: p.constant}
	for r := range p.day {
		c.day = append(c.day, slices.Clone(p.day[r]))
		c.sums = append(c.sums, slices.Clone(p.sums[r]))
	}
	return c
}

// sum brings sums and constant up to date with the prices by day.
func (p *prices) sum(left load) {
	p.constant = 0
	for r, row := range p.day {
		for d, v := range row {
			p.sums[r][d+1] = p.sums[r][d] + v
			p.constant += v * int64(left[r][d])
		}
	}
}

// dear is the highest price of a day: no sum with it leaves the range.
const dear = int64(1) << 24
