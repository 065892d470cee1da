package civil

// Window is when something that biology decides is expected: the days by which
// it has happened with a chance of at least 10, 50 and 90 %.
// A thing that has happened has all three the same.
type Window struct {
	Early  Date `json:"early"`
	Likely Date `json:"likely"`
	Late   Date `json:"late"`
}

// Exactly is the window of something that happened on d.
func Exactly(d Date) Window { return Window{d, d, d} }

// Certain reports whether w is a single known day.
func (w Window) Certain() bool { return w.Early != 0 && w.Early == w.Late }

// Known reports whether w holds dates.
func (w Window) Known() bool { return w.Likely != 0 }

// Span gives the days from Early to Late.
func (w Window) Span() Span { return Span{First: w.Early, Last: w.Late} }

// Add gives w moved by n days.
func (w Window) Add(n int) Window {
	return Window{w.Early.Add(n), w.Likely.Add(n), w.Late.Add(n)}
}

// String gives the three dates as "early / likely / late", or the one date
// when they are the same.
func (w Window) String() string {
	if w.Early == w.Late {
		return w.Likely.String()
	}
	return w.Early.String() + " / " + w.Likely.String() + " / " + w.Late.String()
}
