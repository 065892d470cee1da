package brood

import (
	"math"
	"sync"

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

// Running is one clutch that runs, with what it holds, from [Broods.Running].
type Running struct {
	*Breeding
	rearing.Tended
	Pairing string // of the clutch; empty where the file names none

	broods *Broods
	clutch *collection.Clutch
	on     civil.Date
	heads  func() (tadpoles, froglets float64)
}

// Running gives those clutches, of [rearing.Rearing.Tended], of which somebody is alive
// on the day.
func (l *Broods) Running(clutches []rearing.Tended, on civil.Date) []*Running {
	var out []*Running
	for _, k := range clutches {
		if c, ok := l.rearing.Collection.Clutch(k.ID); ok && !k.Died() {
			h := &Running{Breeding: l.Breeding(c.Species), Tended: k, Pairing: c.Pairing, broods: l, clutch: c, on: on}
			h.heads = sync.OnceValues(h.count)
			out = append(out, h)
		}
	}
	return out
}

// Day gives the day by which a stage is reached with a chance of q; unknown where
// nothing is known of it.
func (h *Running) Day(stage development.Stage, q float64) civil.Date {
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

// Taken gives what the clutch holds from the day on: tubs, bins and work.
func (h *Running) Taken() []planner.Taken {
	var out []planner.Taken
	hold := func(resource string, amount int, from, to civil.Date) {
		from = max(from, h.on)
		if amount > 0 && to.Known() && from < to {
			out = append(out, planner.Taken{Resource: resource, Span: civil.Span{First: from, Last: to.Add(-1)}, Amount: amount})
		}
	}
	for _, s := range steps {
		hold(planner.Minutes, h.Minutes(s.name), h.Day(s.from, 0.5), h.Day(s.to, 0.5))
	}
	pct := h.broods.rearing.Collection.Rules.SpacePct
	early, late := float64(pct[0])/100, float64(pct[1])/100
	tadpoles, froglets := h.Heads()
	s := h.broods.Space(h.Profile)
	if n, _, ok := s.TubsFor(tadpoles); ok {
		hold(timetable.Tub, n, h.Day(development.Hatched, early), h.Day(development.OutOfWater, late))
	}
	if n, _, ok := s.BinsFor(froglets); ok {
		hold(timetable.Bin, n, h.Day(development.OutOfWater, early), h.BinsFree(late))
	}
	return out
}

// BinsFree gives the day by which the bins are free again with a chance of q: once the
// young are sale-ready, or for those that still live then some weeks later, and not
// before the day for which the pairing wants them. Unknown where nothing is known of it.
func (h *Running) BinsFree(q float64) civil.Date {
	to := h.Day(development.SaleReady, q)
	if to.Known() && to <= h.on && h.Living != nil && *h.Living > 0 {
		to = h.on.Add(readyStay)
	}
	if p, ok := h.broods.rearing.Collection.Pairing(h.clutch.Pairing); ok && to.Known() && p.ReadyBy >= h.on {
		to = max(to, p.ReadyBy.Add(1))
	}
	return to
}

// Heads gives how many tadpoles are to be expected of those that live, or of the
// eggs that are usual, and how many froglets. They are counted once.
func (h *Running) Heads() (tadpoles, froglets float64) { return h.heads() }

func (h *Running) count() (tadpoles, froglets float64) {
	counts := h.broods.rearing.Counts(h.clutch, h.Outlook, h.on)
	hatch := h.Survival(development.Laid, development.Hatched)
	if len(counts) == 0 {
		tadpoles = h.Profile.Breeding.ClutchEggs.P50 * hatch
		return tadpoles, tadpoles * h.Survival(development.Hatched, development.OutOfWater)
	}
	now, _ := h.Outlook.Heads(counts, civil.Span{First: h.on, Last: h.on})
	tadpoles = now[0].InWater.Expected + now[0].Stages[0].Expected*hatch
	then := max(h.on, h.Day(development.OutOfWater, 0.5))
	later, _ := h.Outlook.Heads(counts, civil.Span{First: then, Last: then})
	return math.Ceil(tadpoles), later[0].Living.Expected
}
