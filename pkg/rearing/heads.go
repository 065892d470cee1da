package rearing

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
)

// WeekHeads is how many of a clutch there are on a day, and what they need.
type WeekHeads struct {
	On      civil.Date `json:"on"`
	Eggs    Heads      `json:"eggs"`
	InWater Heads      `json:"in_water"` // from hatching until the tail is gone
	OnLand  Heads      `json:"on_land"`
	Living  Heads      `json:"living"`
	Stages  []HeadsAt  `json:"stages"`           // those that have reached each stage and not the next
	Litres  float64    `json:"litres,omitempty"` // for most of those in the water; see [development.DayHeads]
	Tubs    int        `json:"tubs,omitempty"`   // of the room's tubs, for so many litres
	Bins    int        `json:"bins,omitempty"`   // of the room's bins, for most of those on land
}

// Heads is a number of animals that is not known yet, with its 10th and 90th
// percentile.
type Heads struct {
	Expected float64 `json:"expected"`
	Low      int     `json:"low"`
	High     int     `json:"high"`
}

// HeadsAt is how many are at a stage.
type HeadsAt struct {
	Stage string `json:"stage"`
	Heads
}

func headsOf(h development.Heads) Heads {
	return Heads{math.Round(h.Expected*10) / 10, h.Low, h.High}
}

const (
	mostWeeks = 52 // of a report
	noneLeft  = "none is alive by the last count"
	notKnown  = "neither the eggs nor any living were counted: write eggs: beside the clutch, or count: in the diary"
	noDates   = "no stage of this species has a date"
)

// heads fills in how many there will be each week, until the last are likely old
// enough to leave.
func (r *Rearing) heads(out *Report, c *collection.Clutch, k Tended) {
	out.Heads = []WeekHeads{}
	counts := r.Counts(c, k.Outlook, out.On)
	if len(counts) == 0 {
		out.Uncounted = notKnown
		out.SiblingsOf = r.models[c.Species].Froglets(r.Collection.MustProfile(c.Species).Breeding.ClutchEggs)
		return
	}
	if k.Died() {
		out.Uncounted = noneLeft
		return
	}
	if len(k.Stages) == 0 {
		out.Uncounted = noDates
		return
	}
	last := k.Stages[len(k.Stages)-1].Window.Late
	for week := range mostWeeks {
		on := out.On.Add(7 * week)
		days, warnings := k.Outlook.Heads(counts, civil.Span{First: on, Last: on})
		if week == 0 {
			out.Warnings = append(out.Warnings, r.doubtfulHeads(c, warnings)...)
		}
		out.Heads = append(out.Heads, r.week(days[0]))
		if on > last {
			break
		}
	}
	legs := max(out.On, k.Stages[len(k.Stages)-1].Window.Likely)
	if e, ok := k.Outlook.Event(development.OutOfWater); ok && e.Window.Known() {
		legs = max(out.On, e.Window.Likely)
	}
	then, _ := k.Outlook.Heads(counts, civil.Span{First: legs, Last: legs})
	out.SiblingsOf = int(math.Round(then[0].Living.Expected))
}

// doubtfulHeads puts doubts about heads at the line of the clutch. A count that grows
// is left out: it was told at its own line when the file was read.
func (r *Rearing) doubtfulHeads(c *collection.Clutch, warnings []development.Warning) []string {
	var out []string
	for _, w := range warnings {
		if !w.Count.On.Known() {
			out = append(out, r.located(Doubt{c.At, "clutch " + c.ID + ": " + w.Text}))
		}
	}
	return out
}

func (r *Rearing) week(d development.DayHeads) WeekHeads {
	w := WeekHeads{
		On: d.On, Eggs: headsOf(d.Stages[0]), InWater: headsOf(d.InWater), OnLand: headsOf(d.OnLand), Living: headsOf(d.Living),
		Litres: math.Round(d.Litres*10) / 10,
	}
	for i, stage := range development.Milestones() {
		w.Stages = append(w.Stages, HeadsAt{stage.String(), headsOf(d.Stages[i])})
	}
	room := r.Collection.Equipment
	if litres := room.TadpoleTubs.Litres; litres.Known && litres.Value > 0 {
		w.Tubs = int(math.Ceil(d.Litres/litres.Value - 1e-9))
	}
	if froglets := room.FrogletBins.Froglets; froglets.Known && froglets.Value > 0 {
		w.Bins = d.Bins(froglets.Value)
	}
	return w
}

// Counts gives how many of a clutch lived on days up to on: the eggs, what was counted
// of the whole of it, and what was left of these after losses, and after some were sold
// or held back.
func (r *Rearing) Counts(c *collection.Clutch, o development.Outlook, on civil.Date) []development.Count {
	var out []development.Count
	if c.Eggs > 0 && o.Laid.Known() {
		out = append(out, development.Count{On: min(o.Laid.Likely, r.Collection.Since(c.ID)), Living: c.Eggs})
	}
	for _, n := range r.Collection.Counts(c.ID) {
		switch {
		case n.On > on:
		case n.Living.Known && !n.Some:
			out = append(out, development.Count{On: n.On, Living: n.Living.Value})
		case n.Gone() > 0 && len(out) > 0:
			out = append(out, development.Count{On: n.On, Living: max(out[len(out)-1].Living-n.Gone(), 0)})
		}
	}
	return out
}
