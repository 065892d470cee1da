package frogroom

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// readyStay is for how many more days young are taken to keep their bins that
// are sale-ready and still counted (common practice, no source).
const readyStay = 28

// taken gives what the clutches that run hold from a day on: tubs, bins and work.
func (r *Room) taken(clutches []rearing.Tended, on civil.Date) []planner.Taken {
	var out []planner.Taken
	for _, k := range clutches {
		if c, ok := r.Collection.Clutch(k.ID); ok && !k.Died() {
			h := clutchSpace{room: r, b: r.of(c.Species), clutch: c, Tended: k, on: on}
			h.book()
			out = append(out, h.taken...)
		}
	}
	return out
}

// clutchSpace is what one clutch that runs holds.
type clutchSpace struct {
	room   *Room
	b      *breeding
	clutch *collection.Clutch
	rearing.Tended
	on    civil.Date
	taken []planner.Taken
}

// day gives the day by which a stage is reached with a chance of q; unknown where
// nothing is known of it.
func (h *clutchSpace) day(stage development.Stage, q float64) civil.Date {
	if stage == development.Laid {
		return h.Outlook.Laid.Likely
	}
	e, ok := h.Outlook.Event(stage)
	switch {
	case !ok || !e.Window.Known():
		return 0
	case !e.Dist.Known():
		return e.Window.Likely
	}
	return h.Outlook.From.Add(e.Dist.Quantile(q))
}

func (h *clutchSpace) hold(resource string, amount int, from, to civil.Date) {
	from = max(from, h.on)
	if amount > 0 && to.Known() && from < to {
		h.taken = append(h.taken, planner.Taken{Resource: resource, Span: civil.Span{First: from, Last: to.Add(-1)}, Amount: amount})
	}
}

func (h *clutchSpace) book() {
	for _, s := range stepStages {
		h.hold(planner.Minutes, h.b.minutes(s.step), h.day(s.from, 0.5), h.day(s.to, 0.5))
	}
	pct := h.room.Collection.Rules.SpacePct
	early, late := float64(pct[0])/100, float64(pct[1])/100
	tadpoles, froglets := h.heads()
	s := h.room.space(h.b.profile)
	if n, tooMany, ok := s.tubsFor(tadpoles); ok {
		if tooMany {
			n = s.tubs
		}
		h.hold(timetable.Tub, n, h.day(development.Hatched, early), h.day(development.OutOfWater, late))
	}
	if n, _, ok := s.binsFor(froglets); ok {
		h.hold(timetable.Bin, n, h.day(development.OutOfWater, early), h.leaves(late))
	}
}

// leaves gives the day on which the bins are free again.
func (h *clutchSpace) leaves(late float64) civil.Date {
	to := h.day(development.SaleReady, late)
	if to.Known() && to <= h.on && h.Living != nil && *h.Living > 0 {
		to = h.on.Add(readyStay)
	}
	if p, ok := h.room.Collection.Pairing(h.clutch.Pairing); ok && to.Known() && p.ReadyBy >= h.on {
		to = max(to, p.ReadyBy.Add(1))
	}
	return to
}

// heads gives how many tadpoles are to be expected of those that live, or of the
// eggs that are usual, and how many froglets.
func (h *clutchSpace) heads() (tadpoles, froglets float64) {
	counts := h.room.rearing.Counts(h.clutch, h.Outlook, h.on)
	hatch := h.b.survival(development.Laid, development.Hatched)
	if len(counts) == 0 {
		tadpoles = h.b.profile.Breeding.ClutchEggs.P50 * hatch
		return tadpoles, tadpoles * h.b.survival(development.Hatched, development.OutOfWater)
	}
	now, _ := h.Outlook.Heads(counts, civil.Span{First: h.on, Last: h.on})
	tadpoles = now[0].InWater.Expected + now[0].Stages[0].Expected*hatch
	then := max(h.on, h.day(development.OutOfWater, 0.5))
	later, _ := h.Outlook.Heads(counts, civil.Span{First: then, Last: then})
	return math.Ceil(tadpoles), later[0].Living.Expected
}
