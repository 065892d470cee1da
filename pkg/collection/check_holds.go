package collection

import (
	"fmt"
	"slices"
)

// checkHolds warns about a hold that is lifted where none runs.
func (r *reader) checkHolds(s subject) {
	a := &r.c.Animals[s.index]
	holds := slices.Clone(a.Holds)
	for _, e := range r.c.DiaryOf(a.ID) {
		if e.Hold == "" {
			continue
		}
		if e.Hold == Lifted && len(running(holds, e.On)) == 0 {
			r.warnAt(r.in(e, "hold"), fmt.Sprintf("the hold of %s is lifted on %s, but none runs on that day", r.called(s), e.On),
				"check the date, or remove the entry")
		}
		holds = changed(holds, e)
	}
}
