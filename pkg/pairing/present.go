package pairing

import (
	"cmp"
	"fmt"
)

func judgeSex(_ Terms, a Animal, as Sex) Finding {
	f := Finding{Rule: RuleSex, Animals: []string{a.ID}, Limit: as.String()}
	switch a.Sex {
	case as:
		sign := cmp.Or(a.SexSign, "no sign recorded")
		f.Value = a.Sex.String() + ", " + sign
		f.Message = fmt.Sprintf("%s is %s: %s", a.ID, a.Sex, sign)
	case SexUnknown:
		f.Severity = Refuse
		f.Message = fmt.Sprintf("the sex of %s is not known", a.ID)
	default:
		f.Value = a.Sex.String()
		f.Severity = Refuse
		f.Message = fmt.Sprintf("%s is recorded as %s and stands among the %ss", a.ID, a.Sex, as)
	}
	return f
}

func judgeInRoom(t Terms, a Animal, _ Sex) Finding {
	f := Finding{Rule: RuleInRoom, Animals: []string{a.ID}, Severity: Refuse}
	switch {
	case a.Died.Known() && a.Died <= t.On:
		f.Value = "died " + a.Died.String()
		f.Message = fmt.Sprintf("%s died on %s", a.ID, a.Died)
	case a.Left.Known() && a.Left <= t.On:
		f.Value = "left " + a.Left.String()
		f.Message = fmt.Sprintf("%s left on %s", a.ID, a.Left)
	case a.Acquired > t.On:
		f.Value = "comes " + a.Acquired.String()
		f.Message = fmt.Sprintf("%s only comes on %s", a.ID, a.Acquired)
		f.From = a.Acquired
	default:
		f.Severity = Fine
		f.Value = "in the room"
		f.Message = a.ID + " is in the room"
	}
	return f
}

func judgePromised(_ Terms, a Animal, _ Sex) Finding {
	f := Finding{Rule: RulePromised, Animals: []string{a.ID}, Value: a.Promised}
	if a.Promised == "" {
		f.Value = "nobody"
		f.Message = a.ID + " is promised to nobody"
		return f
	}
	f.Severity = Refuse
	f.Message = fmt.Sprintf("%s is promised to %s", a.ID, a.Promised)
	return f
}
