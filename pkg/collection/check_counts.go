package collection

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// tally is what the diary says of the heads of a clutch, entry by entry.
type tally struct {
	gone  int    // died, sold and held back in all
	left  bool   // some of these were sold or held back
	last  *Entry // the last count of the whole clutch
	since int    // died, sold and held back after last
	day   civil.Date
	onDay int    // of since, those on day
	none  *Entry // the first entry after which none was left
}

// out gives how many died or left by an entry.
func out(e *Entry) int { return e.Losses + e.Sold + e.HeldBack }

// outKey gives the first key by which some died or left.
func outKey(e *Entry) string {
	switch {
	case e.Losses > 0:
		return "losses"
	case e.Sold > 0:
		return "sold"
	}
	return "held_back"
}

// whole reports whether e counts the whole clutch.
func whole(e *Entry) bool { return e.Count.Known && !e.Some }

// take enters e. What an entry counts is what is left after what it lost.
func (t *tally) take(e *Entry, eggs int) {
	t.gone += out(e)
	t.left = t.left || e.Sold > 0 || e.HeldBack > 0
	if e.On != t.day {
		t.day, t.onDay = e.On, 0
	}
	t.since, t.onDay = t.since+out(e), t.onDay+out(e)
	if whole(e) {
		t.last, t.since, t.onDay = e, 0, 0
	}
	most, known := t.most(eggs)
	if t.none == nil && known && most <= 0 {
		t.none = e
	} else if most > 0 {
		t.none = nil
	}
}

// most gives how many can be left, and false when nothing was counted.
func (t *tally) most(eggs int) (int, bool) {
	if t.last != nil {
		return t.last.Count.Value - t.since, true
	}
	return eggs - t.gone, eggs > 0
}

// goneBefore gives how many died or left between the last count and a day: within
// a day the order of the diary says nothing.
func (t *tally) goneBefore(on civil.Date) int {
	if t.day == on {
		return t.since - t.onDay
	}
	return t.since
}

// how says how those that are gone went.
func (t *tally) how() string {
	if t.left {
		return "lost, sold or held back"
	}
	return "lost"
}

// checkCounts reports numbers of a clutch that are larger than its number of
// eggs. It warns about a count that grows, about more that died or left than
// were counted, and about what is seen after none was left.
func (r *reader) checkCounts(s subject) {
	k := &r.c.Clutches[s.index]
	var t tally
	for _, e := range r.c.lived(k.ID) {
		if t.none != nil && e.On > t.none.On && (e.Saw != "" || e.Gosner > 0) {
			now, _ := sightOf(e)
			r.warnAt(r.in(e, now.key()), fmt.Sprintf("%s is seen at %v on %s, after none of it was left on %s (line %s)",
				r.called(s), now, e.On, t.none.On, line(t.none.At)), "check the count, or the clutch that is meant")
		}
		before := t
		t.take(e, k.Eggs)
		r.checkGone(s, e, &before, &t)
		if e.Count.Known {
			r.checkCount(s, e, &before, &t)
		}
	}
}

// checkGone compares those that died or left with those that there were.
func (r *reader) checkGone(s subject, e *Entry, before, now *tally) {
	k := &r.c.Clutches[s.index]
	most, known := before.most(k.Eggs)
	switch {
	case out(e) == 0:
	case k.Eggs > 0 && now.gone > k.Eggs:
		r.errorAt(r.in(e, outKey(e)), fmt.Sprintf("%s %s %d in all, more than its eggs: %d (line %s)", r.called(s), now.how(), now.gone, k.Eggs, line(k.At)), "check both numbers")
	case known && before.last != nil && out(e) > most:
		r.warnAt(r.in(e, outKey(e)), fmt.Sprintf("%d of %s died or left on %s, more than the %d that are left of those counted on %s (line %s)",
			out(e), r.called(s), e.On, max(most, 0), before.last.On, line(before.last.At)), "check the numbers")
	}
}

// checkCount compares a count with the eggs and with the count before it.
func (r *reader) checkCount(s subject, e *Entry, before, now *tally) {
	k, n, last, gone := &r.c.Clutches[s.index], e.Count.Value, before.last, before.goneBefore(e.On)
	switch {
	case k.Eggs > 0 && n > k.Eggs:
		r.errorAt(r.in(e, "count"), fmt.Sprintf("%s counts %d, more than its eggs: %d (line %s)", r.called(s), n, k.Eggs, line(k.At)), "check both numbers")
	case last != nil && n > last.Count.Value:
		r.warnAt(r.in(e, "count"), fmt.Sprintf("%s counts %d on %s, more than the %d on %s (line %s)",
			r.called(s), n, e.On, last.Count.Value, last.On, line(last.At)), "check both numbers")
	case last != nil && n > last.Count.Value-gone:
		r.warnAt(r.in(e, "count"), fmt.Sprintf("%s counts %d on %s, more than the %d that are left of those counted on %s (line %s)",
			r.called(s), n, e.On, max(last.Count.Value-gone, 0), last.On, line(last.At)), "check the numbers")
	case k.Eggs > 0 && n+now.gone > k.Eggs && now.gone <= k.Eggs:
		r.warnAt(r.in(e, "count"), fmt.Sprintf("%s counts %d and %s %d until %s, together more than its eggs: %d (line %s)",
			r.called(s), n, now.how(), now.gone, e.On, k.Eggs, line(k.At)), "check the numbers")
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
