package collection

import (
	"cmp"
	"regexp"
	"slices"
	"time"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// maxCount is the largest number of anything that is taken for meant.
const maxCount = 100_000

// The largest costs, in units of the keeper's own.
const (
	maxDayCost   = 1_000
	maxLeaveCost = 10_000
)

var holidayCode = regexp.MustCompile(`^[a-z]{2}(-[a-z0-9]{1,3})?$`)

func (r *reader) holidays(m *strictyaml.Mapping) string {
	r.doc.Describe(m.Take("holidays"), codeSchema)
	r.c.HolidaysAt = strictyaml.PositionOf(strictyaml.Value(m.Node, "holidays"))
	code := r.phrase(m, "holidays")
	if code != "" && !holidayCode.MatchString(code) {
		r.doc.Errorf(strictyaml.Value(m.Node, "holidays"),
			"write an ISO 3166 code in small letters, such as de or de-by", "holidays cannot be %q", code)
	}
	return code
}

// spans takes a list of days, and gives them by first day.
func (r *reader) spans(m *strictyaml.Mapping, key string) []civil.Span {
	type placed struct {
		civil.Span
		at *yaml.Node
	}
	var spans []placed
	for _, n := range m.List(key) {
		r.doc.Describe(n, spanSchema)
		if s := r.span(n, key, civil.ParseSpan); s.Days() > 0 {
			spans = append(spans, placed{s, n})
		}
	}
	slices.SortStableFunc(spans, func(a, b placed) int { return cmp.Compare(a.First, b.First) })
	days := make([]civil.Span, 0, len(spans))
	var longest placed // the one of those before that ends last
	for _, s := range spans {
		if longest.Overlaps(s.Span) {
			r.doc.Warnf(s.at, "join them", "%s: %s overlaps %s of line %d", key, s.Span, longest.Span, longest.at.Line)
		}
		if s.Last > longest.Last {
			longest = s
		}
		days = append(days, s.Span)
	}
	return days
}

var weekdays = []string{"monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"}

func (r *reader) shipping(top *strictyaml.Mapping) Shipping {
	s := Shipping{Weekdays: defaultWeekdays(), TransitDays: defaultTransitDays}
	m := top.Sub("shipping", "shipping")
	if m == nil {
		return s
	}
	if days := r.weekdays(m); m.Has("weekdays") {
		s.Weekdays = days
	}
	if days, ok := m.Int("transit_days", 1, 5); ok {
		s.TransitDays = days
	}
	s.Closed = r.spans(m, "carrier_closed")
	m.Done()
	return s
}

func (r *reader) weekdays(m *strictyaml.Mapping) []time.Weekday {
	list := m.List("weekdays")
	if n := strictyaml.Value(m.Node, "weekdays"); n != nil && n.Kind == yaml.SequenceNode && len(list) == 0 {
		r.doc.Errorf(n, "name one day at least, or remove weekdays:", "the list weekdays is empty")
	}
	var days []time.Weekday
	for _, n := range list {
		if i := slices.Index(weekdays, r.doc.Choice(n, "weekday", weekdays...)); i >= 0 {
			days = append(days, time.Weekday((i+1)%7))
		}
	}
	r.twice(list, "weekdays")
	slices.SortFunc(days, func(a, b time.Weekday) int { return cmp.Compare((a+6)%7, (b+6)%7) })
	return days
}

func (r *reader) targets(top *strictyaml.Mapping) {
	for _, n := range top.List("targets") {
		m := r.doc.Mapping(n, "a target")
		t := Target{Name: r.needed(m, "name"), At: strictyaml.PositionOf(n), CertaintyPct: defaultCertaintyPct}
		if v := strictyaml.Value(n, "name"); v != nil {
			t.At = strictyaml.PositionOf(v)
		}
		t.On = r.neededDate(m, "on")
		t.Species = r.neededSpecies(m)
		if v := r.required(m, "froglets"); v != nil {
			t.Froglets, _ = r.doc.Int(v, "froglets", 1, maxCount)
		}
		if pct, ok := m.Int("certainty_pct", 50, 95); ok {
			t.CertaintyPct = pct
		}
		t.LateCost, t.EarlyCost = given(m.Int("late_cost", 0, maxDayCost)), given(m.Int("early_cost", 0, maxDayCost))
		m.Done()
		if first, twice := r.c.targets[t.Name]; twice {
			r.errorAt(t.At, quoted("target", t.Name)+" stands twice, first in line "+line(r.c.Targets[first].At), "give one of them another name")
		} else if t.Name != "" {
			r.c.targets[t.Name] = len(r.c.Targets)
		}
		r.c.Targets = append(r.c.Targets, t)
	}
}

func (r *reader) equipment(top *strictyaml.Mapping) Equipment {
	var e Equipment
	m := top.Sub("equipment", "equipment")
	if m == nil {
		return e
	}
	e.RainChambers = count(m, "rain_chambers", 0)
	e.CoolingPlaces = count(m, "cooling_places", 0)
	if tubs := m.Sub("tadpole_tubs", "tadpole_tubs"); tubs != nil {
		e.TadpoleTubs.Count = count(tubs, "count", 0)
		e.TadpoleTubs.Litres = given(tubs.Float("litres", 0.1, 10_000))
		e.TadpoleTubs.WaterC = temperature(tubs, "water")
		tubs.Done()
	}
	if bins := m.Sub("froglet_bins", "froglet_bins"); bins != nil {
		e.FrogletBins = Bins{Count: count(bins, "count", 0), Froglets: count(bins, "froglets", 1)}
		bins.Done()
	}
	e.MinutesADay = given(m.Int("minutes_a_day", 0, 24*60))
	e.RetryAfterDays = given(m.Int("retry_after_days", 0, 365))
	m.Done()
	return e
}

func given[T any](v T, ok bool) Given[T] {
	if !ok {
		return Given[T]{}
	}
	return Given[T]{v, true}
}

func count(m *strictyaml.Mapping, key string, least int) Given[int] {
	return given(m.Int(key, least, maxCount))
}

func (r *reader) card(top *strictyaml.Mapping) Card {
	m := top.Sub("card", "the card")
	if m == nil {
		return Card{}
	}
	card := Card{Contact: r.phrase(m, "contact")}
	m.Done()
	return card
}
