package season

import (
	"slices"
	"sort"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// far is beyond every date; a day count may lie between -far and far.
const far = 2 * int(civil.Last)

// run is a run of days, both ends included, as counted by civil.Date but free
// to leave its range.
type run struct{ first, last int }

func (r run) span() civil.Span { return civil.Span{First: date(r.first), Last: date(r.last)} }

// date holds a day count to the range of a date.
func date(day int) civil.Date {
	return civil.Date(min(max(day, int(civil.First)), int(civil.Last)))
}

// days is a set of days, as ascending runs that neither overlap nor touch. Sets
// stay small however long the season is: a run more for each absence.
type days []run

var always = days{{-far, far}}

// mergedDays gives the days of all spans.
func mergedDays(spans []civil.Span) days {
	var s days
	for _, span := range spans {
		if span.Days() > 0 {
			s = append(s, run{int(span.First), int(span.Last)})
		}
	}
	slices.SortFunc(s, func(a, b run) int { return a.first - b.first })
	return s.joined()
}

// joined joins runs that overlap or touch; s has to ascend by first day.
func (s days) joined() days {
	var out days
	for _, r := range s {
		if n := len(out); n > 0 && r.first <= out[n-1].last+1 {
			out[n-1].last = max(out[n-1].last, r.last)
			continue
		}
		out = append(out, r)
	}
	return out
}

// moved gives the days that lie least to most days after one of s.
func (s days) moved(least, most int) days {
	out := make(days, len(s))
	for i, r := range s {
		out[i] = run{r.first + least, r.last + most}
	}
	return out.joined()
}

// and gives the days that are in s and in t.
func (s days) and(t days) days {
	var out days
	for len(s) > 0 && len(t) > 0 {
		both := run{max(s[0].first, t[0].first), min(s[0].last, t[0].last)}
		if both.first <= both.last {
			out = append(out, both)
		}
		if s[0].last < t[0].last {
			s = s[1:]
		} else {
			t = t[1:]
		}
	}
	return out
}

// without gives the days of s that are not in t.
func (s days) without(t days) days {
	var out days
	for _, r := range s {
		for i := t.from(r.first); i < len(t) && t[i].first <= r.last; i++ {
			if r.first < t[i].first {
				out = append(out, run{r.first, t[i].first - 1})
			}
			r.first = t[i].last + 1
		}
		if r.first <= r.last {
			out = append(out, r)
		}
	}
	return out
}

// from gives the index of the first run that ends on a day or after it.
func (s days) from(day int) int {
	return sort.Search(len(s), func(i int) bool { return s[i].last >= day })
}

// holding gives the run of s that a day lies in.
func (s days) holding(day int) (run, bool) {
	if i := s.from(day); i < len(s) && s[i].first <= day {
		return s[i], true
	}
	return run{}, false
}

// first and last are the ends of a set that is not empty.
func (s days) first() int { return s[0].first }
func (s days) last() int  { return s[len(s)-1].last }
