// Package parcel says on which days live young can travel: when the carrier
// takes parcels, no holiday is on the way, and it is neither too cold nor too
// hot outside.
//
//	plan := parcel.Next(parcel.Journey{Shipping: shipping, Forecast: forecast, Limits: &limits}, today, 4)
//
// The zero [Journey] goes by next-day service on Monday to Thursday, and knows
// neither holidays nor the weather.
//
// Whether an animal is old, large and well enough to leave is not asked here.
// The bands of temperature are a custom of the trade and no promise: the rules
// of the carrier, local codes and the law come first.
package parcel

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Journey is what decides on which days a parcel can go.
type Journey struct {
	Shipping calendar.Shipping
	Forecast Forecast
	Limits   *Outside // of the species, narrower than the bands of the carrier; nil when none are known
}

// Day is a day on which a parcel can be handed over.
type Day struct {
	On      civil.Date `json:"on"`
	Arrives civil.Date `json:"arrives"`
	// Outside is the temperature on the way, from the day of handing over to that
	// of arriving. Where it is not known, nothing can be said about a pack.
	Outside *Outside `json:"outside,omitempty"`
	Pack    Pack     `json:"pack,omitempty"`       // empty when Outside is not known
	Depot   bool     `json:"depot_only,omitempty"` // only to a staffed depot
}

// NoDay is a day on which it cannot, and why.
type NoDay struct {
	On  civil.Date `json:"on"`
	Why string     `json:"why"`
}

// Plan is the next days for a parcel.
type Plan struct {
	Days    []Day   `json:"days"`           // the earliest first
	Skipped []NoDay `json:"skipped"`        // the carrier would take it, and the weather is against it: the first ones, at most 10
	None    string  `json:"none,omitempty"` // why there is no day; empty when there is one
}

// longestLook is how many days are looked at. A year of the same refusal will
// not end.
const longestLook = 366

// mostSkipped is how many refused days are told.
const mostSkipped = 10

// Next gives the first n days from from on, that day included, on which a
// parcel can go, at most a year ahead, and the days on which only the weather
// stops it. A day is judged by the whole way, from handing over to arriving: by
// the limits of the species, then by [BandOf]. Where the temperature is known for
// a part of the way only, that part can refuse the day, and what goes into the
// parcel is not said; where it is not known at all the day can go, and the weather
// is still to be looked at. It panics when from is not known, n is below 1 or the
// days in transit are negative.
func Next(j Journey, from civil.Date, n int) Plan {
	if !from.Known() || n < 1 {
		panic("parcel: days from no day, or none of them")
	}
	plan := Plan{Days: []Day{}, Skipped: []NoDay{}}
	for i := 0; i < longestLook && len(plan.Days) < n && from.Add(i).Sub(from) == i; i++ {
		on := from.Add(i)
		if ok, _ := j.Shipping.Allowed(on); !ok {
			continue
		}
		day, why := j.day(on)
		if why == "" {
			plan.Days = append(plan.Days, day)
		} else if len(plan.Skipped) < mostSkipped {
			plan.Skipped = append(plan.Skipped, NoDay{on, why})
		}
	}
	if len(plan.Days) == 0 {
		plan.None = j.none(from, plan.Skipped)
	}
	return plan
}

// none says why a whole year has no day: what stops the first of the weekdays on
// which parcels are handed over.
func (j Journey) none(from civil.Date, skipped []NoDay) string {
	if len(skipped) > 0 {
		return skipped[0].Why
	}
	for i := range 7 {
		if on := from.Add(i); j.Shipping.HandedOver(on) {
			_, why := j.Shipping.Allowed(on)
			return why
		}
	}
	return "" // not reached: every week has one of the weekdays
}

// day looks at the weather from the day of handing over to that of arriving.
// Known weather of a part of the way is enough to refuse a day.
func (j Journey) day(on civil.Date) (Day, string) {
	day := Day{On: on, Arrives: on.Add(max(j.Shipping.TransitDays, 1))}
	way := civil.Span{First: on, Last: day.Arrives}
	o, known := j.Forecast.Over(way)
	if known == 0 {
		return day, ""
	}
	if l := j.Limits; l != nil && (o.LowC < l.LowC || o.HighC > l.HighC) {
		return day, fmt.Sprintf("%s on the way, and the species travels at %s", o, *l)
	}
	band := BandOf(o)
	if known == way.Days() {
		day.Outside, day.Pack, day.Depot = &o, band.Pack, band.Depot
	}
	return day, band.Why
}
