package departure

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/parcel"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Young is an animal, or the young of a clutch, that may leave or not.
type Young struct {
	ID       string          `json:"id"`
	Name     string          `json:"name,omitempty"`
	Species  string          `json:"species"`
	Clutch   bool            `json:"clutch"`
	Living   *int            `json:"living,omitempty"`   // of a clutch, as counted last
	Promised []Promise       `json:"promised,omitempty"` // open reservations
	Sale     rearing.Leaves  `json:"sale"`
	Ready    bool            `json:"ready"` // nothing speaks against it today but the day itself
	Held     []string        `json:"held"`  // why it stays
	Ask      []string        `json:"ask"`   // what has to be recorded first
	Permit   string          `json:"permit"`
	From     civil.Date      `json:"from,omitempty"` // the first day on which time has cured all that it cures
	Travel   *parcel.Plan    `json:"travel,omitempty"`
	Limits   *parcel.Outside `json:"limits,omitempty"` // the temperature in which the species travels
	// LimitsSource is who says so.
	LimitsSource string `json:"limits_source,omitempty"`
}

// Promise is young that somebody has reserved.
type Promise struct {
	To    string `json:"to"`
	Count int    `json:"count"`
}

// noPermit reminds of the lists where the profile does not say.
const noPermit = "not in the profile; check the current list before an animal crosses a border"

// daysToTravel is how many days are told for each: the earliest and three more.
const daysToTravel = 4

// animalDeparture says whether and when an animal may leave.
func (r *Register) animalDeparture(i int, on civil.Date, f parcel.Forecast) Young {
	a := r.Ancestry.Animal(i)
	sale, may := r.Rearing.AnimalLeaves(&a, on), r.MayGo(i, on)
	d := Young{ID: a.ID, Name: a.Name, Species: a.Species, Sale: sale, Ready: may.Ready, Held: may.Held, Ask: may.Ask}
	if a.Promised != "" {
		d.Promised = []Promise{{a.Promised, 1}}
	}
	if gone := r.animalGone(i, on); gone != "" {
		d.stays(gone)
	} else if len(may.Ask) == 0 && (r.Breeders.Grown(i, on) || timeCures(sale, on)) && (may.Ready || may.From > on) {
		d.From = max(on, may.From)
	}
	r.travel(&d, f)
	return d
}

// clutchDeparture says whether and when the young of a clutch may leave.
func (r *Register) clutchDeparture(c *collection.Clutch, on civil.Date, f parcel.Forecast) Young {
	sale := r.Rearing.Leaves(c, on)
	d := Young{
		ID: c.ID, Species: c.Species, Clutch: true, Living: r.Rearing.Counted(c.ID, on),
		Sale: sale, Ready: sale.Ready, Held: append([]string{}, sale.Held...), Ask: append([]string{}, sale.Ask...),
	}
	for _, p := range r.Collection.Owed(c.ID, on) {
		d.Promised = append(d.Promised, Promise{p.To, p.Count})
	}
	if gone := clutchGone(c, d.Living, on); gone != "" {
		d.stays(gone)
	} else if timeCures(sale, on) {
		d.From = max(on, sale.From)
	}
	r.travel(&d, f)
	return d
}

// stays says that there is nobody who could leave, and so nothing to record either.
func (d *Young) stays(why string) {
	d.Ready, d.Held, d.Ask = false, []string{why}, []string{}
}

// animalGone says why an animal is not in the room on a day; nothing when it is.
func (r *Register) animalGone(i int, on civil.Date) string {
	a := r.Ancestry.Animal(i)
	switch status, since := a.Status(on); {
	case r.Ancestry.Status(i, on) == kin.NotYet:
		return "it is not in the room yet"
	case status == collection.Died:
		return "it died on " + since.String()
	case status == collection.Left:
		return "it left on " + since.String()
	}
	return ""
}

// clutchGone says why no young of a clutch are there on a day; nothing when some may be.
func clutchGone(c *collection.Clutch, living *int, on civil.Date) string {
	switch {
	case c.Laid > on:
		return "laid on " + c.Laid.String() + ", which is still to come"
	case c.Ended.Known() && c.Ended <= on:
		return "it ended on " + c.Ended.String()
	case living != nil && *living == 0:
		return "none is left by the last count"
	}
	return ""
}

// timeCures reports whether nothing but their age holds young, if anything does.
func timeCures(s rearing.Leaves, on civil.Date) bool {
	young := 0
	if s.From > on {
		young = 1
	}
	return len(s.Ask) == 0 && len(s.Held) == young
}

// travel adds what has to be known of the way, and the next days for a parcel.
func (r *Register) travel(d *Young, f parcel.Forecast) {
	profile := r.Collection.MustProfile(d.Species)
	if d.Permit = profile.CITES.Value; d.Permit == "" {
		d.Permit = noPermit
	}
	if t := profile.TransportC; t.Known() {
		d.Limits, d.LimitsSource = &parcel.Outside{LowC: t.Low, HighC: t.High}, t.Source
	}
	if d.From.Known() {
		plan := parcel.Next(parcel.Journey{Shipping: r.Shipping, Forecast: f, Limits: d.Limits}, d.From, daysToTravel)
		d.Travel = &plan
	}
}

// weathered reports whether the weather of a day decided about a parcel.
func (d Young) weathered() bool {
	return d.Travel != nil && (len(d.Travel.Skipped) > 0 || slices.ContainsFunc(d.Travel.Days, func(day parcel.Day) bool { return day.Outside != nil }))
}

// free gives how many young are promised to nobody, at most most. Where a clutch
// was never counted it is taken to have enough.
func (d Young) free(most int) int {
	living := 1
	switch {
	case d.Clutch && d.Living == nil:
		return most
	case d.Clutch:
		living = *d.Living
	}
	for _, p := range d.Promised {
		living -= p.Count
	}
	return min(max(living, 0), most)
}
