package frogroom

import (
	"fmt"
	"math"
)

// HowGood says how near a plan is to the best possible, in a sentence without its
// end; nothing where there is no proof. A plan that leaves pairings out is not the
// nearest to their wishes, but costs least.
func (s Season) HowGood() string {
	p := s.Proof
	switch {
	case p == nil:
		return ""
	case p.Best && len(s.LeftOut) == 0:
		return "Proven best: no other days in this room come nearer to the wishes"
	case p.Best && len(s.Pairings) == 0:
		return "Nothing is planned, and that is proven best at these costs: to plan any of them would cost more than to leave it out, or cannot be"
	case p.Best:
		return "Proven best at these costs: no other days in this room, with these pairings left out or others, cost less"
	case p.Stopped:
		return "Stopped, and not proven best: " + howFar(*p)
	}
	return "Not proven best: " + howFar(*p)
}

// howFar says by how much a plan may cost more than the best, in per cent of what
// that costs at least, rounded up so that it is true.
func howFar(p Proof) string {
	if p.Cost > 2*p.Bound {
		return "it may cost more than twice as much as the best possible"
	}
	pct := 100 * float64(p.Cost-p.Bound) / float64(max(p.Bound, 1))
	if pct >= 10 {
		return fmt.Sprintf("it is within %.0f %% of the best possible", math.Ceil(pct))
	}
	return fmt.Sprintf("it is within %.1f %% of the best possible", math.Ceil(10*pct)/10)
}
