package occupancy

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// The largest season that is taken.
const (
	mostDays   = 6000
	mostAmount = 1_000_000 // of all that can be held together, and of any count
)

// SeasonError says what is wrong with a season.
type SeasonError struct {
	Clutch string // id, or empty when it is about no clutch
	Course int    // which of its courses, from 0; -1 when it is about none
	Reason string // without a full stop
}

func (e *SeasonError) Error() string {
	switch {
	case e.Clutch == "":
		return "occupancy of the season: " + e.Reason
	case e.Course < 0:
		return fmt.Sprintf("occupancy of the season: clutch %s: %s", e.Clutch, e.Reason)
	}
	return fmt.Sprintf("occupancy of the season: clutch %s, course %d: %s", e.Clutch, e.Course, e.Reason)
}

// check gives the first thing that is wrong with s as a *SeasonError.
func (s *Season) check() error {
	fail := func(format string, args ...any) error {
		return &SeasonError{Course: -1, Reason: fmt.Sprintf(format, args...)}
	}
	switch {
	case !isDate(s.First):
		return fail("its first day is unknown")
	case s.Days < 1 || s.Days > mostDays:
		return fail("it has %d days; 1 to %d are taken", s.Days, mostDays)
	}
	for _, r := range s.Resources {
		if r.Count < 0 || r.Count > mostAmount {
			return fail("there are %d of %q; 0 to %d are taken", r.Count, r.Name, mostAmount)
		}
	}
	together := 0
	for _, c := range s.Clutches {
		most, err := s.checkClutch(c)
		if err != nil {
			return err
		}
		if together += most; together > mostAmount {
			return fail("its clutches can hold more than %d places together", mostAmount)
		}
	}
	return nil
}

// checkClutch gives the most places that c can hold.
func (s *Season) checkClutch(c Clutch) (int, error) {
	sum, most := 0.0, 0
	for i, course := range c.Courses {
		if !(course.Chance >= 0 && course.Chance <= 1) {
			return 0, &SeasonError{c.ID, i, fmt.Sprintf("its chance %v is not from 0 to 1", course.Chance)}
		}
		sum += course.Chance
		held := 0
		for _, h := range course.Holds {
			if reason := s.checkHold(h); reason != "" {
				return 0, &SeasonError{c.ID, i, reason}
			}
			if held += h.Amount; held > mostAmount {
				return 0, &SeasonError{c.ID, i, fmt.Sprintf("it holds more than %d places", mostAmount)}
			}
		}
		most = max(most, held)
	}
	if sum > 1+rounding {
		return 0, &SeasonError{c.ID, -1, fmt.Sprintf("the chances of its courses add up to %v, which is more than 1", sum)}
	}
	return most, nil
}

// rounding is what sums of chances may be off by.
const rounding = 1e-9

func (s *Season) checkHold(h Hold) string {
	switch {
	case h.Resource < 0 || h.Resource >= len(s.Resources):
		return fmt.Sprintf("it holds resource number %d of %d", h.Resource, len(s.Resources))
	case h.Amount < 0 || h.Amount > mostAmount:
		return fmt.Sprintf("it holds %d places; 0 to %d are taken", h.Amount, mostAmount)
	case !isDate(h.First) || !isDate(h.Last) || h.Until != 0 && !isDate(h.Until):
		return "a day of what it holds is unknown"
	case h.Last < h.First:
		return fmt.Sprintf("what it holds ends on %s, before it begins on %s", h.Last, h.First)
	}
	return ""
}

func isDate(d civil.Date) bool { return d >= civil.First && d <= civil.Last }

// mustShare panics when p is no chance.
func mustShare(p float64) {
	if !(p >= 0 && p <= 1) {
		panic(fmt.Sprintf("occupancy: %v is not a chance from 0 to 1", p))
	}
}
