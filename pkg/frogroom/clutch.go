package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
)

// Clutch is how far a clutch has come and when it reaches what is ahead.
type Clutch struct {
	ID      string     `json:"id"`
	Species string     `json:"species"`
	Laid    civil.Date `json:"laid"`
	Dams    []string   `json:"dams"`
	Sires   []string   `json:"sires"`
	Place   string     `json:"place,omitempty"`
	// Now is the last stage that was seen, "laid" when none was.
	Now string `json:"now"`
	// SeenOn is the day of the last look, that of laying when there was none.
	SeenOn civil.Date `json:"seen_on"`
	// Living is the last count of the whole clutch; nil when it was never counted.
	Living *int           `json:"living,omitempty"`
	Stages []ClutchStage  `json:"stages"`
	Young  YoungOfPairing `json:"young"`
	// Warnings are doubts about the windows.
	Warnings []string `json:"warnings,omitempty"`
}

// ClutchStage is when a clutch reaches a stage.
type ClutchStage struct {
	Stage    string       `json:"stage"`
	Window   civil.Window `json:"window"`
	Recorded bool         `json:"recorded"` // seen, not forecast
	Overdue  bool         `json:"overdue"`  // the window is over and nothing was recorded
}

// YoungOfPairing is what the parents say about the young.
type YoungOfPairing struct {
	Inbreeding float64 `json:"inbreeding"`
	Expected   bool    `json:"expected"` // a mean over possible parents
	// Known is false when a parent is unknown; Inbreeding is 0 then.
	Known bool `json:"known"`
}

// Clutches gives all clutches that were laid by a day and have not ended by
// then, in the order of the file. Only what the diary says up to that day counts.
func (r *Room) Clutches(on civil.Date) []Clutch {
	var out []Clutch
	for i := range r.Collection.Clutches {
		c := &r.Collection.Clutches[i]
		if c.Laid <= on && !(c.Ended.Known() && c.Ended <= on) {
			out = append(out, r.clutch(c, on))
		}
	}
	return out
}

// Clutch gives one clutch, also when it has ended. The error is an
// *[UnknownClutchError].
func (r *Room) Clutch(id string, on civil.Date) (Clutch, error) {
	c, ok := r.Collection.Clutch(id)
	if !ok {
		known := make([]string, len(r.Collection.Clutches))
		for i, k := range r.Collection.Clutches {
			known[i] = k.ID
		}
		return Clutch{}, &UnknownClutchError{ID: id, known: known}
	}
	return r.clutch(c, on), nil
}

// UnknownClutchError is an id that no clutch has.
type UnknownClutchError struct {
	ID    string
	known []string
}

func (e *UnknownClutchError) Error() string {
	return withCure(fmt.Sprintf("there is no clutch %q", e.ID), e.ID, e.known)
}

func (r *Room) clutch(c *collection.Clutch, on civil.Date) Clutch {
	looks := r.looks(c.ID, on)
	forecast := r.models[c.Species].Forecast(c.Laid, looks)
	out := Clutch{
		ID: c.ID, Species: c.Species, Laid: c.Laid, Dams: c.Dams, Sires: c.Sires,
		Place:    r.Collection.PlaceOf(c.ID, on),
		SeenOn:   c.Laid,
		Living:   r.counted(c.ID, on),
		Young:    r.youngOf(c.Sires, c.Dams),
		Warnings: forecast.Warnings,
	}
	now := development.Laid
	for _, l := range looks {
		out.SeenOn = max(out.SeenOn, l.On)
		if l.Kind != development.NotYet {
			now = max(now, l.Stage)
		}
	}
	out.Now = now.String()
	for _, e := range forecast.Events {
		if !e.Window.Known() {
			continue
		}
		out.Stages = append(out.Stages, ClutchStage{
			Stage: e.Stage.String(), Window: e.Window, Recorded: e.Recorded,
			Overdue: !e.Recorded && e.Stage > now && e.Window.Late < on,
		})
	}
	out.Warnings = append(out.Warnings, r.temperatureDoubt(c)...)
	return out
}

// looks turns the diary's looks up to a day into those of the model. A stage
// counts as begun when the first of a clutch were seen at it.
func (r *Room) looks(clutch string, on civil.Date) []development.Look {
	var out []development.Look
	seen := make(map[development.Stage]bool)
	for _, l := range r.Collection.Looks(clutch) {
		if l.On > on {
			continue
		}
		if l.Gosner > 0 {
			out = append(out, gosnerLooks(l, seen[development.Hatched])...)
			continue
		}
		stage, ok := development.ParseStage(l.Saw)
		if !ok {
			panic(fmt.Sprintf("frogroom: the diary has an unknown stage %q", l.Saw))
		}
		if !seen[stage] {
			seen[stage] = true
			out = append(out, development.Look{Stage: stage, On: l.On, Kind: development.Reached})
		}
	}
	return out
}

// gosnerLooks says what a Gosner stage tells: what has been reached by then,
// and that the next event has not come. Some species hatch as late as Gosner
// 29 (Agalychnis callidryas, 27 to 29), so that below 30 a stage alone does not
// say that the eggs have hatched.
func gosnerLooks(l collection.Look, hatched bool) []development.Look {
	var out []development.Look
	stage := development.FromGosner(l.Gosner)
	switch {
	case l.Gosner < 30 && !hatched:
	case l.Gosner == 42 || l.Gosner == 25:
		out = append(out, development.Look{Stage: stage, On: l.On, Kind: development.Reached})
	case stage > development.Laid:
		out = append(out, development.Look{Stage: stage, On: l.On, Kind: development.By})
	}
	next := []development.Stage{development.Feeding, development.FrontLegs, development.OutOfWater}
	if i := slices.IndexFunc(next, func(s development.Stage) bool { return s > stage }); i >= 0 {
		out = append(out, development.Look{Stage: next[i], On: l.On, Kind: development.NotYet})
	}
	return out
}

// counted gives the last count of a whole clutch less the losses since.
func (r *Room) counted(clutch string, on civil.Date) *int {
	var living *int
	for _, c := range r.Collection.Counts(clutch) {
		if c.On > on {
			continue
		}
		if c.Living.Known && !c.Some {
			n := c.Living.Value
			living = &n
		} else if living != nil {
			*living = max(*living-c.Losses, 0)
		}
	}
	return living
}

// youngOf gives the expected inbreeding of young of these parents.
func (r *Room) youngOf(sires, dams []string) YoungOfPairing {
	if len(sires) == 0 || len(dams) == 0 {
		return YoungOfPairing{}
	}
	p := r.Ancestry.Pedigree
	s, d := r.numbers(sires), r.numbers(dams)
	uncertain := func(i int) bool { return p.Uncertain(i) }
	return YoungOfPairing{
		Inbreeding: p.ExpectedInbreeding(s, d),
		Expected:   len(s) > 1 || len(d) > 1 || slices.ContainsFunc(s, uncertain) || slices.ContainsFunc(d, uncertain),
		Known:      true,
	}
}

// numbers gives the places of animals of the collection in the pedigree.
func (r *Room) numbers(ids []string) []int {
	out := make([]int, len(ids))
	for i, id := range ids {
		n, err := r.Ancestry.number(id)
		if err != nil {
			panic("frogroom: " + err.Error())
		}
		out[i] = n
	}
	return out
}

// temperatureDoubt says so when the tubs stand clearly outside the temperatures
// at which the profile's lengths hold.
func (r *Room) temperatureDoubt(c *collection.Clutch) []string {
	const tolerance = 1.0 // °C
	set := r.Collection.Equipment.TadpoleTubs.WaterC
	measured, on := set.Value, civil.Date(0)
	known := set.Known
	for _, t := range r.Collection.Temperatures(c.ID) {
		if t.WaterC.Known {
			measured, on, known = t.WaterC.Value, t.On, true
		}
	}
	step, ok := r.profile(c.Species).Step("tadpole")
	if !known || !ok || !step.AtC.Known() || measured >= step.AtC.Low-tolerance && measured <= step.AtC.High+tolerance {
		return nil
	}
	where := "the tubs are set to"
	if on.Known() {
		where = fmt.Sprintf("the water was at (%s)", on)
	}
	direction := "later"
	if measured > step.AtC.High {
		direction = "earlier"
	}
	return []string{fmt.Sprintf("the windows of %s hold at %s; %s %.3g °C, so expect it %s than shown", c.ID, degrees(step.AtC.Low, step.AtC.High), where, measured, direction)}
}

func degrees(low, high float64) string {
	if low == high {
		return fmt.Sprintf("%.3g °C", low)
	}
	return fmt.Sprintf("%.3g to %.3g °C", low, high)
}
