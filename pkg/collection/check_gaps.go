package collection

import "fmt"

// longestGap is the most days between two entries about a clutch that are not
// looked at twice: no clutch is left alone for a year, but a year is soon
// written wrong.
const longestGap = 366

// checkGaps warns about an entry that comes very long after the one before it.
func (r *reader) checkGaps(s subject) {
	k := &r.c.Clutches[s.index]
	last, what := k.Laid, "it was laid"
	for _, e := range r.c.lived(k.ID) {
		if !e.On.Known() {
			continue
		}
		if last.Known() && e.On.Sub(last) > longestGap {
			r.warnAt(r.in(e, "on"), fmt.Sprintf("%s is about %s, %d days after %s on %s", e.On, r.called(s), e.On.Sub(last), what, last), "check the year")
		}
		last, what = e.On, "the entry before it"
	}
}
