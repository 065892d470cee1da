package parcel

import "github.com/spawnwright/spawnwright/pkg/civil"

// Forecast is the temperature outside by day. The zero value knows none.
type Forecast struct {
	days   map[civil.Date]Outside
	always *Outside
}

// Always gives a forecast with the same temperatures on every day.
func Always(o Outside) Forecast { return Forecast{always: &o} }

// On gives the temperature of a day, and false when it is not known.
func (f Forecast) On(d civil.Date) (Outside, bool) {
	if f.always != nil {
		return *f.always, true
	}
	o, ok := f.days[d]
	return o, ok
}

// Over gives the lowest and the highest temperature of the days of a span that
// are known, and how many of them are.
func (f Forecast) Over(s civil.Span) (o Outside, known int) {
	for i := range s.Days() {
		on, ok := f.On(s.First.Add(i))
		switch {
		case !ok:
			continue
		case known == 0:
			o = on
		default:
			o = wider(o, on)
		}
		known++
	}
	return o, known
}

// add takes one more place or reading of a day into the range.
func (f *Forecast) add(d civil.Date, o Outside) {
	if f.days == nil {
		f.days = make(map[civil.Date]Outside)
	}
	if known, ok := f.days[d]; ok {
		o = wider(o, known)
	}
	f.days[d] = o
}

// wider gives the range that holds both.
func wider(a, b Outside) Outside { return Outside{min(a.LowC, b.LowC), max(a.HighC, b.HighC)} }
