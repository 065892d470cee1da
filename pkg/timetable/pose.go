package timetable

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// mostDelay is room at the end of a season for pairings that begin later than
// wished, when that is looked at as a cure, or is allowed.
const mostDelay = 130

// mostHorizon is how many days of the room are looked at, at most.
const mostHorizon = 4 * mostDays

// animalResource begins the name of an animal as a resource.
const animalResource = "animal "

// pose writes down what all pairings share. What is kept counts as taken.
func (f *fitting) pose() {
	p := planner.Problem{First: f.on, Days: 1, Away: f.Away, Chains: []planner.Chain{}, Taken: f.Taken[:len(f.Taken):len(f.Taken)]}
	for _, c := range f.Capacity {
		if c.Known {
			p.Resources = append(p.Resources, planner.Resource{Name: c.Place, Count: c.Count})
		}
	}
	free := make(map[int]bool)
	for _, i := range f.free {
		free[i] = true
	}
	f.held = make(map[string]string)
	for i, in := range f.inputs {
		if !free[i] {
			f.keep(&p, i)
			continue
		}
		if k := f.begun(i); k >= 0 && in.Work[in.Phases[k].Name] > 0 {
			span := civil.Span{First: f.on, Last: f.alone.Cycles[i].Phases[k].Span.Last}
			p.Taken = append(p.Taken, planner.Taken{Resource: planner.Minutes, Span: span, Amount: in.Work[in.Phases[k].Name]})
		}
	}
	for _, i := range f.free {
		p.Days = max(p.Days, f.ends(i))
	}
	for _, t := range p.Taken {
		p.Days = max(p.Days, t.Span.Last.Sub(f.on)+1)
	}
	p.Days = min(p.Days, mostHorizon)
	f.base = p
}

// keep books what a pairing holds that is not moved.
func (f *fitting) keep(p *planner.Problem, i int) {
	in, days := f.inputs[i], daysOf(f.alone.Cycles[i])
	if len(in.Phases) == 0 {
		return
	}
	for _, t := range booked(f.keptChain(i), days) {
		if t.Span.Last >= f.on {
			p.Taken = append(p.Taken, t)
		}
	}
	for _, id := range in.Animals {
		if f.held[id] == "" {
			f.held[id] = animalResource + id
			p.Resources = append(p.Resources, planner.Resource{Name: f.held[id], Count: 1})
		}
		p.Taken = append(p.Taken, planner.Taken{Resource: f.held[id], Span: f.alone.Cycles[i].Span(), Amount: 1})
	}
}

// keptChain gives what a pairing holds that is not moved.
func (f *fitting) keptChain(i int) planner.Chain {
	in := f.inputs[i]
	var c planner.Chain
	for _, ph := range in.Phases {
		q := planner.Phase{Name: ph.Name, Minutes: in.Work[ph.Name]}
		if ph.Place != "" {
			q.Uses = []planner.Use{{Resource: ph.Place, Amount: 1}}
		}
		c.Phases = append(c.Phases, q)
	}
	f.young(in, &c, adults)
	return c
}

// ends gives how many days have to be planned for a pairing that is moved.
func (f *fitting) ends(i int) int {
	c := f.alone.Cycles[i]
	last := c.Span().Last
	var slack int
	for _, ph := range f.inputs[i].Phases {
		slack += ph.Max - ph.Min
	}
	for _, h := range f.inputs[i].Young {
		last = max(last, c.RainStart.Add(h.To), h.Until)
	}
	if f.Retry {
		last = max(last, c.RainStart.Add(f.RetryAfter))
	}
	return last.Sub(f.on) + 1 + min(slack, mostStretch) + mostDelay + f.waits(i)
}

// waits gives the days for which a pairing that may be late can have to wait for
// its animals, while they are in other pairings one after another.
func (f *fitting) waits(i int) (days int) {
	if !f.inputs[i].MayBeLate {
		return 0
	}
	for _, k := range f.free {
		if k == i || !slices.ContainsFunc(f.inputs[k].Animals, func(id string) bool { return slices.Contains(f.inputs[i].Animals, id) }) {
			continue
		}
		for _, ph := range f.inputs[k].Phases {
			days += ph.Min
		}
	}
	return days
}

// problem gives the whole, with at most the rules of least.
func (f *fitting) problem(least rules) planner.Problem {
	p := f.base
	p.Chains = make([]planner.Chain, len(f.free))
	for k, i := range f.free {
		p.Chains[k] = f.chain(i, max(least, f.single[k].rules))
	}
	return p
}

// booked gives what a chain holds with its days, animals left aside.
func booked(c planner.Chain, days []civil.Date) []planner.Taken {
	var out []planner.Taken
	add := func(resource string, first, end civil.Date, amount int) {
		if first < end && amount > 0 {
			out = append(out, planner.Taken{Resource: resource, Span: civil.Span{First: first, Last: end.Add(-1)}, Amount: amount})
		}
	}
	start := map[string]civil.Date{planner.End: days[len(days)-1]}
	for k, ph := range c.Phases {
		start[ph.Name] = days[k]
		for _, u := range ph.Uses {
			add(u.Resource, days[k], days[k+1], u.Amount)
		}
		add(planner.Minutes, days[k], days[k+1], ph.Minutes)
	}
	for _, h := range c.Holds {
		end := start[h.Phase].Add(h.To)
		if h.Until.Known() {
			end = max(end, h.Until.Add(1))
		}
		add(h.Resource, start[h.Phase].Add(h.From), end, h.Amount)
	}
	for _, v := range c.Visits {
		add(planner.Minutes, start[v.Phase].Add(v.Day), start[v.Phase].Add(v.Day+1), v.Minutes)
	}
	return out
}

// unchecked says what was not looked at.
func (f *fitting) unchecked() []string {
	known := make(map[string]bool)
	for _, c := range f.Capacity {
		known[c.Place] = c.Known
	}
	var out, words []string
	asked := make(map[string]bool)
	ask := func(resource, word string) {
		if !known[resource] && !asked[resource] {
			asked[resource] = true
			words = append(words, word)
		}
	}
	for _, p := range f.inputs {
		for _, ph := range p.Phases {
			if ph.Place != "" {
				ask(ph.Place, ph.Place+"s")
			}
		}
	}
	ask(Tub, Tub+"s")
	ask(Bin, Bin+"s")
	ask(planner.Minutes, "minutes of work a day")
	switch n := len(words); {
	case n == 1:
		out = append(out, words[0]+", for how many there are is not given")
	case n > 1:
		out = append(out, fmt.Sprintf("%s and %s, for how many there are is not given", strings.Join(words[:n-1], ", "), words[n-1]))
	}
	if f.base.Days == mostHorizon {
		out = append(out, fmt.Sprintf("the room from %s on", f.on.Add(mostHorizon)))
	}
	if !f.Retry {
		out = append(out, "room for a second attempt when there are no eggs")
	}
	return append(out, "cleaning a place between two pairings")
}
