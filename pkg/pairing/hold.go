package pairing

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Hold is a time in which an animal is kept apart, both ends included.
type Hold struct {
	From  civil.Date // unknown when nobody wrote it down; the hold then began before all else
	Until civil.Date // unknown until it is lifted
	Note  string
}

// in reports whether the hold is in force on a day.
func (h Hold) in(on civil.Date) bool {
	return h.From <= on && (!h.Until.Known() || on <= h.Until)
}

// judgeHolds refuses an animal that is held on the day. The finding of one that is
// not is left to the caller, with the last day of the holds that are over.
func judgeHolds(t Terms, a Animal, rule Rule, holds []Hold) (f Finding, over civil.Date) {
	f = Finding{Rule: rule, Animals: []string{a.ID}}
	var until civil.Date
	for _, h := range holds {
		switch {
		case h.From > t.On:
			continue
		case !h.in(t.On):
			over = max(over, h.Until)
			continue
		}
		f.Severity = Refuse
		if !h.Until.Known() {
			f.Value, f.From = "until it is lifted", 0
			f.Message = fmt.Sprintf("%s is held for %s until that is lifted%s", a.ID, rule, remark(h))
			return f, over
		}
		if h.Until > until {
			until = h.Until
			f.Value, f.From = "until "+until.String(), until.Add(1)
			f.Message = fmt.Sprintf("%s is held for %s until %s%s", a.ID, rule, until, remark(h))
		}
	}
	return f, over
}

func remark(h Hold) string {
	if h.Note == "" {
		return ""
	}
	return ": " + h.Note
}

// longestQuarantine is from how many days on it does not matter that the profile does not say
// how long an animal is kept apart (common practice, no source).
const longestQuarantine = 365

// judgeQuarantine refuses an animal in quarantine. One that came lately without a
// quarantine on record is warned about: that nobody wrote it down does not say
// that there is none.
func judgeQuarantine(t Terms, a Animal, _ Sex) Finding {
	f, over := judgeHolds(t, a, RuleQuarantine, a.Quarantines)
	if f.Severity == Refuse {
		return f
	}
	usual := t.Needs[a.Species].QuarantineDays
	if usual > 0 {
		f.Limit = fmt.Sprintf("%d days after it came", usual)
	}
	here := t.On.Sub(a.Acquired)
	switch {
	case over.Known():
		f.Value = "over since " + over.String()
		f.Message = fmt.Sprintf("the quarantine of %s ended on %s", a.ID, over)
	case !a.Acquired.Known() || here < 0:
		f.Value, f.Limit = "not from outside", ""
		f.Message = a.ID + " did not come from outside, as far as is recorded"
	case usual == 0 && here < longestQuarantine:
		f.Severity = Unknown
		f.Value = fmt.Sprintf("came %s", a.Acquired)
		f.Message = "how long an animal of the species is kept apart when it comes is not known"
	case here < usual:
		f.Severity, f.From = Warn, a.Acquired.Add(usual)
		f.Value = fmt.Sprintf("%d days", here)
		f.Message = fmt.Sprintf("%s came on %s, %d days before, and no quarantine is recorded; %d days apart are usual", a.ID, a.Acquired, here, usual)
	default:
		f.Value = fmt.Sprintf("%d days", here)
		f.Message = fmt.Sprintf("%s came %d days before", a.ID, here)
	}
	return f
}

// judgeHealth refuses an animal that is held for its health. What it has is for a
// veterinarian.
func judgeHealth(t Terms, a Animal, _ Sex) Finding {
	f, over := judgeHolds(t, a, RuleHealth, a.HealthHolds)
	switch {
	case f.Severity == Refuse:
	case over.Known():
		f.Value = "over since " + over.String()
		f.Message = fmt.Sprintf("the last hold of %s for its health ended on %s", a.ID, over)
	default:
		f.Value = "not held"
		f.Message = a.ID + " is not held for its health"
	}
	return f
}
