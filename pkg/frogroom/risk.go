package frogroom

import (
	"fmt"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/brood"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/occupancy"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/timetable"
)

// Risk is how likely the room is to run out of something, when each clutch comes
// as large, as early and as late as it may: if every pairing lays its eggs.
type Risk struct {
	What string `json:"what"` // tubs or bins, in the singular
	Of   int    `json:"of"`
	// ChancePct is the chance in per cent of running out on any day of the season.
	ChancePct int `json:"chance_pct"`
	// Worst is the day on which that is most likely.
	Worst civil.Date `json:"worst,omitempty"`
	// More of it make the chance at most 1 in 20; 0 where it is that already.
	More    int `json:"more,omitempty"`
	MorePct int `json:"more_pct,omitempty"` // the chance with them
	// Move is the pairing of which a move, in days later or earlier, helps most, with
	// the least move that brings about as much as any that the room allows; empty where
	// none lowers the chance by a quarter.
	Move     string `json:"move,omitempty"`
	MoveDays int    `json:"move_days,omitempty"`
	// MovePct is the chance in per cent then, when the phases of the pairing are as long
	// as planned and all others stay where they are. A new plan with that start may choose
	// others, and have another chance.
	MovePct int `json:"move_pct,omitempty"`
	// Text says it in words.
	Text string `json:"text"`
}

const (
	playedSeasons = 4000 // of up to manyClutches; fewer of more, for the time
	fewestSeasons = 500
	manyClutches  = 60
	playedSeed    = 1
	wishedRisk    = 0.05
	mostPlayed    = 20_000 // tubs and bins that all clutches can need together
)

// risks says how likely the room is to run out of tubs and of bins. Places are
// played as they come, and not as the plan keeps them free. Where that is not
// looked at it says what was not.
func (p *plan) risks() (_ []Risk, unchecked string) {
	g := newGamble(p)
	switch {
	case len(g.season.Resources) == 0 || len(g.season.Clutches) == 0:
		return nil, ""
	case g.most > mostPlayed:
		return nil, fmt.Sprintf("how likely tubs and bins run out, for the clutches could need %d of them", g.most)
	}
	seasons := max(fewestSeasons, playedSeasons*manyClutches/max(manyClutches, len(g.season.Clutches)))
	o := occupancy.Options{Seasons: seasons, Seed: playedSeed, Workers: 2}
	risk, err := occupancy.Assess(g.season, o)
	if err != nil {
		panic("frogroom: " + err.Error()) // it was built from distributions
	}
	var out []Risk
	for k, short := range risk.Resources {
		r := Risk{What: short.Name, Of: short.Count, ChancePct: *percent(short.Short.Value()), Worst: short.Worst}
		if short.Short.Value() > wishedRisk {
			r.More = short.More(wishedRisk)
			r.MorePct = *percent(short.With(r.More).Value())
			g.move(&r, k, o, short)
		}
		r.Text = r.words()
		out = append(out, r)
	}
	return out, ""
}

// gamble is a plan as a season that can be played.
type gamble struct {
	*plan
	season occupancy.Season
	who    []string // the pairing of each clutch; empty for those that are there
	tub    int      // place in the resources, -1 for none
	bin    int
	most   int // places that all can need together
}

func newGamble(p *plan) *gamble {
	g := &gamble{plan: p, tub: -1, bin: -1}
	e := p.room.Collection.Equipment
	g.season.First, g.season.Days = p.on, max(p.fitted.Problem.Days, 1)
	if e.TadpoleTubs.Count.Known {
		g.tub = len(g.season.Resources)
		g.season.Resources = append(g.season.Resources, occupancy.Resource{Name: timetable.Tub, Count: e.TadpoleTubs.Count.Value})
	}
	if e.FrogletBins.Count.Known {
		g.bin = len(g.season.Resources)
		g.season.Resources = append(g.season.Resources, occupancy.Resource{Name: timetable.Bin, Count: e.FrogletBins.Count.Value})
	}
	for _, one := range p.planned {
		if p.room.awaits(one.Pairing, p.on) {
			g.pairing(one)
		}
	}
	for _, h := range p.running {
		g.clutch(h)
	}
	return g
}

// pacesPlayed are how many paces of a clutch are told apart.
const pacesPlayed = 10

// stops are the chances that a clutch stops for good: before there are tadpoles, in the
// water, and on land if it gets so far.
type stops struct{ eggs, water, land float64 }

// add adds a clutch of which the days of a stage are known for each pace.
func (g *gamble) add(id, pairing string, b *brood.Breeding, stop stops, until civil.Date, day func(development.Stage, float64) civil.Date, young []livingYoung) {
	room := g.room.broods.Space(b.Profile)
	var stays []int
	if g.tub >= 0 && room.Tadpoles > 0 && day(development.Hatched, 0.5).Known() && day(development.OutOfWater, 0.5).Known() {
		stays = append(stays, g.tub)
	}
	if g.bin >= 0 && room.Froglets > 0 && day(development.OutOfWater, 0.5).Known() && day(development.SaleReady, 0.5).Known() {
		stays = append(stays, g.bin)
	}
	if len(stays) == 0 || len(young) == 0 || day(development.Hatched, 0.5) >= g.on.Add(g.season.Days) {
		return
	}
	var paces []occupancy.Pace
	for i := range pacesPlayed {
		u := (float64(i) + 0.5) / pacesPlayed
		pace := occupancy.Pace{Chance: (1 - stop.water) * (1 - stop.land)}
		for _, stay := range stays {
			from, to, h := development.Hatched, development.OutOfWater, occupancy.Hold{Resource: stay}
			if stay == g.bin {
				from, to, h.Until = development.OutOfWater, development.SaleReady, until
			}
			h.First = day(from, u)
			h.Last = max(day(to, u).Add(-1), h.First)
			pace.Stays = append(pace.Stays, h)
		}
		paces = append(paces, pace)
		if stop.water > 0 {
			paces = append(paces, occupancy.Pace{Chance: stop.water, Stays: g.forGood(pace.Stays, g.tub)})
		}
		if stop.land > 0 {
			paces = append(paces, occupancy.Pace{Chance: (1 - stop.water) * stop.land, Stays: g.forGood(pace.Stays, g.bin)})
		}
	}
	var sizes []occupancy.Size
	most := 0
	for _, n := range young {
		size, places := occupancy.Size{Chance: n.chance}, 0
		for _, stay := range stays {
			need := n.tadpoles / room.Tadpoles
			if stay == g.bin {
				need = n.froglets / float64(room.Froglets)
			}
			size.Places = append(size.Places, int(math.Ceil(min(need, 1e6)-1e-9)))
			places += size.Places[len(size.Places)-1]
		}
		sizes = append(sizes, size)
		most = max(most, places)
	}
	g.most += most
	g.season.Clutches = append(g.season.Clutches, occupancy.Clutch{ID: id, Courses: occupancy.Courses(1-stop.eggs, paces, sizes)})
	g.who = append(g.who, pairing)
}

// forGood gives the stays of a clutch that stops in the tubs, or in the bins: there it
// stays to the last day, and from the tubs it never comes to the bins.
func (g *gamble) forGood(stays []occupancy.Hold, in int) []occupancy.Hold {
	never := g.on.Add(100 * 365) // later than any season and any move
	out := slices.Clone(stays)
	for i := range out {
		h := &out[i]
		switch {
		case h.Resource == in:
			h.Last = never
		case h.Resource == g.bin:
			h.First, h.Last, h.Until = never, never, 0
		}
	}
	return out
}

// livingYoung is one number of young that a clutch may have.
type livingYoung struct{ chance, tadpoles, froglets float64 }

// pairing adds a clutch of each dam.
func (g *gamble) pairing(one planned) {
	b := g.room.broods.Of(one.Species, g.on)
	eggs := b.Profile.Breeding.ClutchEggs
	if !eggs.Known() {
		return
	}
	var young []livingYoung
	for _, n := range brood.Sizes(eggs) {
		tadpoles := n * b.Survival(development.Laid, development.Hatched)
		if raised := g.raised(one.Pairing); raised > 0 {
			tadpoles = min(tadpoles, float64(raised))
		}
		young = append(young, livingYoung{1, tadpoles, tadpoles * b.Survival(development.Hatched, development.OutOfWater)})
	}
	day := func(s development.Stage, u float64) civil.Date {
		if d := b.After[s]; d.Known() {
			return one.cycle.RainStart.Add(d.Quantile(u))
		}
		return 0
	}
	for i := range one.Dams {
		g.add(fmt.Sprintf("%s/%d", one.ID, i+1), one.ID, b.Breeding, stops{
			eggs:  b.Model.Stall(species.Egg, species.Hatchling),
			water: b.Model.Stall(species.Tadpole, species.Metamorph),
			land:  b.Model.Stall(species.GrowOut),
		}, one.ReadyBy, day, young)
	}
}

// clutch adds one that is there, with the heads that it has now.
func (g *gamble) clutch(h *brood.Running) {
	tadpoles, froglets := h.Heads()
	until := civil.Date(0)
	if p, ok := g.room.Collection.Pairing(h.Pairing); ok && p.ReadyBy >= g.on {
		until = p.ReadyBy
	}
	day := func(s development.Stage, u float64) civil.Date {
		if s == development.SaleReady {
			return h.BinsFree(u)
		}
		return h.Day(s, u)
	}
	if day(development.OutOfWater, 1).Known() && day(development.OutOfWater, 0.5) < g.on {
		tadpoles = 0
	}
	stop := stops{water: h.Outlook.Stall}
	if tadpoles == 0 {
		stop = stops{land: h.Outlook.Stall}
	}
	g.add(h.ID, "", h.Breeding, stop, until, day, []livingYoung{{1, tadpoles, froglets}})
}

// words tells a risk.
func (r Risk) words() string {
	name := places[r.What][1]
	if r.ChancePct <= 5 {
		return fmt.Sprintf("%s run out in fewer than 1 season in 20", name)
	}
	text := fmt.Sprintf("%s the %s run out, worst around %s", inSeasons(r.ChancePct), name, r.Worst)
	if r.More > 0 {
		text += fmt.Sprintf("; %d more make it %s", r.More, shortly(r.MorePct))
	}
	if r.Move != "" {
		way := "later"
		if r.MoveDays < 0 {
			way = "earlier"
		}
		text += fmt.Sprintf("; %s %s %s, all else as planned, makes it %s", r.Move, words.Days(abs(r.MoveDays)), way, shortly(r.MovePct))
	}
	return text
}

// inSeasons says a chance in seasons: "in about 1 season in 7".
func inSeasons(pct int) string {
	switch {
	case pct >= 100:
		return "in every season"
	case pct > 50:
		return fmt.Sprintf("in about %d seasons in 10", tenths(pct))
	}
	return fmt.Sprintf("in about 1 season in %d", int(math.Round(100/float64(max(pct, 2)))))
}

// shortly says it in fewer words: "1 in 7".
func shortly(pct int) string {
	switch {
	case pct >= 100:
		return "every season still"
	case pct > 50:
		return fmt.Sprintf("%d in 10", tenths(pct))
	case pct < 2:
		return "less than 1 in 50"
	}
	return fmt.Sprintf("1 in %d", int(math.Round(100/float64(pct))))
}

func tenths(pct int) int { return min(max(int(math.Round(float64(pct)/10)), 6), 9) }
