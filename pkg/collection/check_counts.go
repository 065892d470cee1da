package collection

import "fmt"

// checkCounts reports head-counts and losses of a clutch that are larger than
// its number of eggs, and warns about a count that grows.
func (r *reader) checkCounts(s subject) {
	k := &r.c.Clutches[s.index]
	lost := 0
	var last *Entry // the last count of the whole clutch
	for _, e := range r.c.DiaryOf(k.ID) {
		lost += e.Losses
		if k.Eggs > 0 && e.Losses > 0 && lost > k.Eggs {
			r.errorAt(r.in(e, "losses"), fmt.Sprintf("%s lost %d in all, more than its eggs: %d (line %s)", r.called(s), lost, k.Eggs, line(k.At)), "check both numbers")
		}
		if !e.Count.Known {
			continue
		}
		n := e.Count.Value
		switch {
		case k.Eggs > 0 && n > k.Eggs:
			r.errorAt(r.in(e, "count"), fmt.Sprintf("%s counts %d, more than its eggs: %d (line %s)", r.called(s), n, k.Eggs, line(k.At)), "check both numbers")
		case last != nil && n > last.Count.Value:
			r.warnAt(r.in(e, "count"), fmt.Sprintf("%s counts %d on %s, more than the %d on %s (line %s)",
				r.called(s), n, e.On, last.Count.Value, last.On, line(last.At)), "check both numbers")
		case k.Eggs > 0 && n+lost > k.Eggs && lost <= k.Eggs:
			r.warnAt(r.in(e, "count"), fmt.Sprintf("%s counts %d and lost %d until %s, together more than its eggs: %d (line %s)",
				r.called(s), n, lost, e.On, k.Eggs, line(k.At)), "check the numbers")
		}
		if !e.Some {
			last = e
		}
	}
}

// checkYoung reports clutches that more animals come from than there were eggs.
func (r *reader) checkYoung() {
	young := make([]int, len(r.c.Clutches))
	for _, k := range r.links.clutchOf {
		if k >= 0 {
			young[k]++
		}
	}
	for i, n := range young {
		if k := &r.c.Clutches[i]; k.Eggs > 0 && n > k.Eggs {
			s := subject{clutchKind, i}
			r.errorAt(r.at(s, "eggs", ""), fmt.Sprintf("%d animals come from %s, more than its eggs: %d", n, r.called(s), k.Eggs), "correct the eggs, or the clutch of the animals")
		}
	}
}
