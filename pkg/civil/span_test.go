package civil_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

func TestSpan(t *testing.T) {
	day := civil.Of(2027, time.May, 8)
	for _, row := range []struct {
		name string
		span civil.Span
		days int
		text string
		in   []civil.Date
		out  []civil.Date
	}{
		{"nine days", civil.Span{First: day, Last: day.Add(8)}, 9, "2027-05-08..2027-05-16", []civil.Date{day, day.Add(8)}, []civil.Date{day.Add(-1), day.Add(9), 0}},
		{"one day", civil.Span{First: day, Last: day}, 1, "2027-05-08", []civil.Date{day}, []civil.Date{day.Add(-1), day.Add(1), 0}},
		{"empty", civil.Span{}, 0, "unknown", nil, []civil.Date{day, 0}},
		{"backwards", civil.Span{First: day, Last: day.Add(-1)}, 0, "2027-05-08..2027-05-07", nil, []civil.Date{day, day.Add(-1)}},
		{"beginning unknown", civil.Span{Last: day}, 0, "unknown..2027-05-08", nil, []civil.Date{day, day.Add(-1), 0}},
		{"end unknown", civil.Span{First: day}, 0, "2027-05-08..unknown", nil, []civil.Date{day, day.Add(1), 0}},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.Equal(t, row.days, row.span.Days())
			assert.Equal(t, row.text, row.span.String())
			for _, d := range row.in {
				assert.True(t, row.span.Contains(d), d)
			}
			for _, d := range row.out {
				assert.False(t, row.span.Contains(d), d)
			}
		})
	}
}

// TestSpanAgainstDays counts the days one by one.
func TestSpanAgainstDays(t *testing.T) {
	nearby := rapid.Custom(func(t *rapid.T) civil.Span {
		day := func(name string) civil.Date { return civil.Date(rapid.IntRange(0, 12).Draw(t, name)) }
		return civil.Span{First: day("first"), Last: day("last")}
	})
	rapid.Check(t, func(t *rapid.T) {
		a, b := nearby.Draw(t, "a"), nearby.Draw(t, "b")
		days, shared := 0, false
		for d := civil.Date(0); d < 20; d++ {
			if a.Contains(d) {
				days++
				shared = shared || b.Contains(d)
			}
		}
		if days != a.Days() {
			t.Fatalf("%s has %d days, counted %d", a, a.Days(), days)
		}
		if a.Overlaps(b) != shared || b.Overlaps(a) != shared {
			t.Fatalf("%s and %s: Overlaps is %v, counted %v", a, b, a.Overlaps(b), shared)
		}
	})
}
