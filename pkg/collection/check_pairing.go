package collection

import "fmt"

// checkNotBefore reports a release date that leaves the pairing no time.
func (r *reader) checkNotBefore(s subject) {
	p := &r.c.Pairings[s.index]
	switch {
	case before(p.Start, p.NotBefore):
		r.errorAt(r.at(s, "not_before", ""), fmt.Sprintf("%s starts on %s, before its not_before %s", r.called(s), p.Start, p.NotBefore), "keep one of them")
	case p.ReadyBy.Known() && p.NotBefore >= p.ReadyBy:
		r.errorAt(r.at(s, "not_before", ""), fmt.Sprintf("%s begins on %s at the earliest, and its young must be ready by %s", r.called(s), p.NotBefore, p.ReadyBy), "check both dates")
	}
}
