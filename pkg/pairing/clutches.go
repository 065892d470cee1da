package pairing

import (
	"fmt"
	"time"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Recent gives the clutches of the 12 months before a day, and that day, the earliest first.
func (a Animal) Recent(on civil.Date) []civil.Date {
	var recent []civil.Date
	for _, laid := range a.Clutches {
		if laid <= on && on < yearAfter(laid) {
			recent = append(recent, laid)
		}
	}
	return recent
}

// yearAfter gives the same day of the next year; 1 March for 29 February.
func yearAfter(d civil.Date) civil.Date {
	year, month, day := d.YMD()
	if month == time.February && day == 29 {
		return civil.Of(year+1, time.March, 1)
	}
	return civil.Of(year+1, month, day)
}

// judgeClutches refuses a female that laid as often within 12 months as the keeper
// allows, until the first of these clutches is a year old.
func judgeClutches(t Terms, a Animal) Finding {
	f := Finding{Rule: RuleClutches, Animals: []string{a.ID}}
	recent := a.Recent(t.On)
	most := t.Rules.ClutchesASeason
	f.Value = fmt.Sprintf("%s in 12 months", clutches(len(recent)))
	f.Message = fmt.Sprintf("%s laid %s within 12 months", a.ID, clutches(len(recent)))
	if most == 0 {
		return f
	}
	f.Limit = fmt.Sprintf("%d in 12 months", most)
	if len(recent) >= most {
		f.Severity = Refuse
		f.From = yearAfter(recent[len(recent)-most])
		f.Message += fmt.Sprintf("; %d at most are allowed", most)
	}
	return f
}

func clutches(n int) string {
	if n == 1 {
		return "1 clutch"
	}
	return fmt.Sprintf("%d clutches", n)
}
