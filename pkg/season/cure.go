package season

import (
	"cmp"
	"fmt"
	"slices"
)

// mostMoved is how many days a pairing is moved at most in search of a cure.
const mostMoved = 183

// cure says by how many days one of some pairings would have to move, all else
// being equal, to be in no conflict at all: the one that begins last and has
// such a move. It is empty when there is none.
func (y *yard) cure(pairings []int) string {
	latestFirst := slices.Clone(pairings)
	slices.SortFunc(latestFirst, func(a, b int) int {
		return cmp.Or(cmp.Compare(y.jobs[b].plan[0], y.jobs[a].plan[0]), cmp.Compare(b, a))
	})
	for _, i := range latestFirst {
		switch j, by := y.jobs[i], y.move(i); {
		case by > 0:
			return fmt.Sprintf("%s started %s later, on %s, clears it", j.ID, count(by, "day"), j.Start.Add(by))
		case by < 0:
			return fmt.Sprintf("%s planned to be ready %s earlier, by %s, clears it", j.ID, count(-by, "day"), j.ReadyBy.Add(by))
		}
	}
	return ""
}

// move gives the smallest move of a pairing after which it is in no conflict, 0
// for none.
func (y *yard) move(i int) int {
	if by, known := y.moves[i]; known {
		return by
	}
	y.moves[i] = y.findMove(i)
	return y.moves[i]
}

// findMove plans the pairing anew for each day. What has begun, or was to begin
// before today, does not move; a forward plan moves to later days only, and a backward plan to earlier ones
// only, so as to stay in time.
func (y *yard) findMove(i int) int {
	j := y.jobs[i]
	if j.rec.last >= 0 || j.plan[0] < y.today {
		return 0
	}
	full, busy := y.fullWithout(i), y.busyWithout(i)
	for n := 1; n <= mostMoved; n++ {
		p, by := j.moved(n)
		moved := newJob(p, j.away, j.today)
		switch clear := len(moved.conflicts) == 0; {
		case !clear && moved.conflicts[0].Kind == TooLate:
			return 0 // and all the more for an earlier day
		case clear && !moved.enters(full, y.today) && !moved.whole().on(busy, y.today):
			return by
		}
	}
	return 0
}

// moved gives the pairing moved by n days, and by how many that is to later days.
func (p Pairing) moved(n int) (Pairing, int) {
	p.Days = nil
	if p.Start.Known() {
		p.Start = p.Start.Add(n)
		return p, n
	}
	p.ReadyBy = p.ReadyBy.Add(-n)
	return p, -n
}

// fullWithout gives for each place of a pairing the days on which it is full of
// others.
func (y *yard) fullWithout(i int) map[string]days {
	full := map[string]days{}
	for _, p := range y.jobs[i].Phases {
		capacity, known := y.capacity[p.Place]
		switch {
		case !known:
			continue
		case capacity == 0:
			full[p.Place] = always
			continue
		}
		var s days
		for _, c := range y.occupied(p.Place, capacity) {
			others := len(c.pairings)
			if _, here := slices.BinarySearch(c.pairings, i); here {
				others--
			}
			if others >= capacity {
				s = append(s, c.run)
			}
		}
		full[p.Place] = s.joined()
	}
	return full
}

// occupied gives the crowds that leave no room in a place.
func (y *yard) occupied(place string, capacity int) []crowd {
	c, known := y.noRoom[place]
	if !known {
		c = crowds(y.holds[place], capacity-1, y.today)
		y.noRoom[place] = c
	}
	return c
}

// busyWithout gives the days on which an animal of a pairing is in another one.
func (y *yard) busyWithout(i int) days {
	var busy days
	for _, a := range y.jobs[i].Animals {
		for _, c := range y.cycles[a] {
			if c.pairing != i {
				busy = append(busy, c.run)
			}
		}
	}
	slices.SortFunc(busy, func(a, b run) int { return a.first - b.first })
	return busy.joined()
}

// enters reports whether the plan has a phase in a place while that is full.
func (j *job) enters(full map[string]days, today int) bool {
	for k, p := range j.Phases {
		if (run{j.plan[k], j.plan[k+1] - 1}).on(full[p.Place], today) {
			return true
		}
	}
	return false
}

// on reports whether r has a day of s from the day first on.
func (r run) on(s days, first int) bool {
	r.first = max(r.first, first)
	return r.first <= r.last && len(s.and(days{r})) > 0
}
