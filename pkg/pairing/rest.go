package pairing

import "fmt"

// judgeRest refuses a female before she had the least rest since her last
// clutch, and warns before she had the usual one. That no clutch is on record
// counts as rested: the keeper's record is what there is.
func judgeRest(t Terms, a Animal) Finding {
	f := Finding{Rule: RuleRest, Animals: []string{a.ID}}
	need := t.Needs[a.Species]
	least, usual := need.RestLeast, max(need.RestLeast, need.RestUsual)
	if usual > 0 {
		f.Limit = fmt.Sprintf("%d days", usual)
		if 0 < least && least < usual {
			f.Limit = fmt.Sprintf("%d days, at least %d", usual, least)
		}
	}
	last := a.lastClutch()
	if !last.Known() {
		f.Value = "no clutch on record"
		f.Message = "no clutch of " + a.ID + " is on record"
		return f
	}
	days := t.On.Sub(last)
	f.Value = fmt.Sprintf("%d days", days)
	f.Message = fmt.Sprintf("the last clutch of %s was laid on %s, %d days before", a.ID, last, days)
	switch {
	case days < 0:
		f.Severity, f.From = Refuse, last.Add(max(least, 1))
		f.Value = "clutch on " + last.String()
		f.Message = fmt.Sprintf("%s has a clutch on %s, after this pairing", a.ID, last)
	case usual == 0:
		f.Severity = Unknown
		f.Message = "how long a female of the species rests between clutches is not known"
	case days < least:
		f.Severity, f.From = Refuse, last.Add(least)
		f.Message += fmt.Sprintf("; she needs %d to recover", least)
	case days < usual:
		f.Severity, f.From = Warn, last.Add(usual)
		f.Message += fmt.Sprintf("; %d are usual", usual)
	}
	return f
}
