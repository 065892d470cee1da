package species

// Range is a value that lies from Low to High; both are the same when one
// number was given.
type Range struct {
	Low, High float64
	Source    string
}

// Known reports whether the profile has the value.
func (r Range) Known() bool { return r.Source != "" }

// Middle is half way between the ends.
func (r Range) Middle() float64 { return (r.Low + r.High) / 2 }

// Days is how many days (or nights of rain) a phase takes: at least, usually,
// at most. 1 <= Min <= Usual <= Max.
type Days struct {
	Min, Usual, Max int
	Source          string
}

// Known reports whether the profile has the value.
func (d Days) Known() bool { return d.Source != "" }

// Percentiles are the 10th, 50th and 90th percentile of what happens.
// 0 < P10 <= P50 <= P90.
type Percentiles struct {
	P10, P50, P90 float64
	Source        string
}

// Known reports whether the profile has the value.
func (p Percentiles) Known() bool { return p.Source != "" }

// Number is a single value.
type Number struct {
	Value  float64
	Source string
}

// Known reports whether the profile has the value.
func (n Number) Known() bool { return n.Source != "" }

// Text is a remark of one line.
type Text struct {
	Value  string
	Source string
}

// Known reports whether the profile has the value.
func (t Text) Known() bool { return t.Source != "" }
