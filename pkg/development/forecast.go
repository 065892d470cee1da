package development

import "github.com/spawnwright/spawnwright/pkg/civil"

// Forecast is when a clutch reaches each event, and what is doubtful about it.
type Forecast struct {
	Events   []Event  // Hatched, Feeding, FrontLegs, OutOfWater, SaleReady, in this order
	Warnings []string // one line each, without a full stop; to be shown with the dates
}

// Event is one stage of a forecast.
type Event struct {
	Stage    Stage
	Window   civil.Window // 10th, 50th and 90th percentile; not known where Dist is not
	Recorded bool         // it was seen to begin, on the one day of Window
	Dist     Distribution // days after laid; unknown where nothing is known of it
}

// Event gives the event of stage s; ok is false for stages that are not
// forecast.
func (f Forecast) Event(s Stage) (_ Event, ok bool) {
	for _, e := range f.Events {
		if e.Stage == s {
			return e, true
		}
	}
	return Event{}, false
}
