package planner

import "math/bits"

// average takes the overuse of a round into the mean, with the weight that makes
// the mean smallest, within limits. It reports whether the round agrees with the
// direction of the mean before.
func (b *bounding) average() (ahead bool) {
	if b.count == 1 {
		for r, row := range b.mean {
			for d := range row {
				row[d] = int64(b.slope[r][d]) * whole
			}
		}
		return false
	}
	shift := b.shift(func(r, d int) int64 { return 2 * max(size(int64(b.slope[r][d])*whole), size(b.mean[r][d])) })
	square, along, agree := int64(0), int64(0), int64(0)
	for r, row := range b.mean {
		for d, m := range row {
			g := int64(b.slope[r][d]) * whole
			off := (g - m) >> shift
			square += off * off
			along -= off * (m >> shift)
			agree += (g >> shift) * (m >> shift)
		}
	}
	weight := b.weight
	if square > 0 {
		weight = min(weight, max(weight/10, share(max(0, along), whole, square)))
	}
	for r, row := range b.mean {
		for d, m := range row {
			row[d] += weight * (int64(b.slope[r][d])*whole - m) / whole
		}
	}
	return agree > 0
}

// step moves the prices from the best along the mean, by stretch times the way
// to the goal over the square of the mean.
func (b *bounding) step(goal int64) {
	shift := b.shift(func(r, d int) int64 { return size(b.mean[r][d]) })
	square := int64(0)
	for r, row := range b.mean {
		for d, m := range row {
			if m > 0 || b.best.day[r][d] > 0 {
				m >>= shift
				square += m * m
			}
		}
	}
	far := max(0, b.bound) + max(0, b.bound) + 1000*unit
	gap := max(min(goal, far)-b.bound, unit/4)
	length := share(min(gap, 1<<44), b.stretch, whole) << 16
	for r, row := range b.mean {
		for d, m := range row {
			p := b.best.day[r][d]
			if move := share(size(m>>shift), length, max(1, square)) >> shift; m < 0 {
				p -= move
			} else {
				p += move
			}
			b.now.day[r][d] = min(max(0, p), dear)
		}
	}
}

// shift gives by how many bits numbers have to be made smaller for a sum of
// products of any two of them to stay in range.
func (b *bounding) shift(of func(r, d int) int64) int {
	widest, n := int64(0), 1
	for r, row := range b.mean {
		n += len(row)
		for d := range row {
			widest = max(widest, of(r, d))
		}
	}
	return max(0, bits.Len64(uint64(widest))-(62-bits.Len(uint(n)))/2)
}

func size(n int64) int64 { return max(n, -n) }

// share gives a times b over c for numbers that are not negative, c above 0, and
// at most never.
func share(a, b, c int64) int64 {
	high, low := bits.Mul64(uint64(a), uint64(b))
	if high >= uint64(c) {
		return never
	}
	q, _ := bits.Div64(high, low, uint64(c))
	return int64(min(q, uint64(never)))
}
