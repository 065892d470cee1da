package civil

// Span is a run of days, both ends included. The zero value is empty.
type Span struct {
	First Date `json:"first"`
	Last  Date `json:"last"`
}

// Day gives the span of a single day.
func Day(d Date) Span { return Span{First: d, Last: d} }

// Days gives the number of days in s.
func (s Span) Days() int {
	if s.First == 0 || s.Last < s.First {
		return 0
	}
	return s.Last.Sub(s.First) + 1
}

// Contains reports whether d is in s.
func (s Span) Contains(d Date) bool { return s.First != 0 && s.First <= d && d <= s.Last }

// Overlaps reports whether s and t share a day.
func (s Span) Overlaps(t Span) bool {
	return s.Days() > 0 && t.Days() > 0 && s.First <= t.Last && t.First <= s.Last
}

// String gives s as A..B, or as A when it is a single day.
func (s Span) String() string {
	if s.First == s.Last {
		return s.First.String()
	}
	return s.First.String() + ".." + s.Last.String()
}
