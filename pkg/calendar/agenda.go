package calendar

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Day is a day of an agenda and what is to be read there.
type Day struct {
	Date   civil.Date
	Events []Event // by first day, last day and key
}

// Days gives the agenda of c from days.First to days.Last: each event that
// touches these days once, on its first day or, when it began earlier, on
// days.First. Days without an entry are left out. Errors are those of
// [WriteCSV], and a *[CalendarError] when days is empty. The cost is
// O(n log n) for n events.
func (c Calendar) Days(days civil.Span) ([]Day, error) {
	if days.Days() == 0 {
		return nil, &CalendarError{Field: "days", Reason: "there is no day from the first to the last"}
	}
	if err := c.check(); err != nil {
		return nil, err
	}
	var agenda []Day
	for _, e := range inOrder(c.Events) {
		if !e.Span.Overlaps(days) {
			continue
		}
		at := max(e.Span.First, days.First)
		if len(agenda) == 0 || agenda[len(agenda)-1].Date != at {
			agenda = append(agenda, Day{Date: at})
		}
		today := &agenda[len(agenda)-1]
		today.Events = append(today.Events, e)
	}
	return slices.Clip(agenda), nil
}
