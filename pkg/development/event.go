package development

import "github.com/spawnwright/spawnwright/pkg/civil"

// Event is one stage of an outlook.
type Event struct {
	Stage    Stage
	Window   civil.Window // 10th, 50th and 90th percentile; not known where Dist is not
	Recorded bool         // it was seen to begin, on the one day of Window
	Dist     Distribution // days after [Outlook.From]; unknown where nothing is known of it
	Basis    Basis        // what the date rests on
}

// set gives e its distribution and the window that follows from it.
func (e *Event) set(from civil.Date, d Distribution) {
	e.Dist, e.Window = d, d.window(from)
}

// window gives the percentiles of d as dates, when day 0 is from.
func (d Distribution) window(from civil.Date) civil.Window {
	return civil.Window{
		Early:  from.Add(d.Quantile(0.1)),
		Likely: from.Add(d.Quantile(0.5)),
		Late:   from.Add(d.Quantile(0.9)),
	}
}
