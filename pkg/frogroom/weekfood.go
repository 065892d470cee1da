package frogroom

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// WeekFood is what the animals of one species and age eat in a week, from little to
// much. It goes by who is likely to be there on the Thursday, and by the meals of the
// profile.
type WeekFood struct {
	Week    civil.Date `json:"week"` // its Monday
	Species string     `json:"species"`
	Age     string     `json:"age"` // "tadpoles", "froglets", "half-grown" or "grown"
	Animals int        `json:"animals"`
	What    string     `json:"what,omitempty"`
	// Feeders is how many, FeederMM how long they are: the shortest and the longest.
	Feeders  [2]int     `json:"feeders,omitempty"`
	FeederMM [2]float64 `json:"feeder_mm,omitempty"`
	DryG     [2]float64 `json:"dry_g,omitempty"` // dry food instead
}

// firstMeal is how many days after they left the water froglets begin to eat: none
// do while the tail goes (from memory: 3 to 7 days).
const firstMeal = 3

// eaters are animals of one species and age on some days.
type eaters struct {
	species string
	age     string
	days    civil.Span
	count   float64
}

// The ages that eat.
const (
	tadpoleAge = "tadpoles"
	frogletAge = "froglets"
	halfAge    = "half-grown" // longer out of the water than young are raised, and too young to be bred
	grownAge   = "grown"
)

var eatingAges = []string{tadpoleAge, frogletAge, halfAge, grownAge}

// eaters gives the young that run and those that are planned, and the animals of
// the room.
func (p *plan) eaters() []eaters {
	var out []eaters
	young := func(species string, tadpoles, froglets float64, day func(development.Stage) civil.Date) {
		add := func(age string, count float64, from, to civil.Date) {
			if from.Known() && to.Known() && from < to {
				out = append(out, eaters{species, age, civil.Span{First: from, Last: to.Add(-1)}, count})
			}
		}
		add(tadpoleAge, tadpoles, day(development.Feeding), day(development.FrontLegs))
		if out := day(development.OutOfWater); out.Known() {
			add(frogletAge, froglets, out.Add(firstMeal), day(development.SaleReady))
		}
	}
	for _, one := range p.planned {
		tadpoles, known := p.room.of(one.Species).Tadpoles(len(one.Dams), p.raised(one.Pairing))
		if !known || !p.room.awaits(one.Pairing, p.on) {
			continue
		}
		froglets := tadpoles * p.room.of(one.Species).Survival(development.Hatched, development.OutOfWater)
		young(one.Species, tadpoles, froglets, func(stage development.Stage) civil.Date {
			for _, s := range one.cycle.Stages {
				if s.Stage == stage.String() {
					return s.Window.Likely
				}
			}
			return 0
		})
	}
	for _, h := range p.running {
		tadpoles, froglets := h.Heads()
		young(h.Species, tadpoles, froglets, func(stage development.Stage) civil.Date {
			if stage == development.SaleReady {
				return h.BinsFree(0.5) // who is still there when it is over eats on
			}
			return h.Day(stage, 0.5)
		})
	}
	return append(out, p.residents()...)
}

// residents are the animals of the room, for as long as the file knows.
func (p *plan) residents() []eaters {
	terms := p.room.breeders.Terms(p.on)
	var out []eaters
	for i := range p.room.Collection.Animals {
		a := &p.room.Collection.Animals[i]
		if p.room.Ancestry.Status(i, p.on) != collection.Here {
			continue
		}
		last := civil.Last
		for _, gone := range []civil.Date{a.Died, a.Left} {
			if gone.Known() {
				last = min(last, gone.Add(-1))
			}
		}
		here := civil.Span{First: p.on, Last: last}
		animal := p.room.breeders.Animals([]string{a.ID}, p.on)[0]
		if !pairing.TooYoung(terms, animal) {
			out = append(out, eaters{a.Species, grownAge, here, 1})
			continue
		}
		days, known := pairing.DaysOut(terms, animal)
		out = append(out, p.growing(a.Species, here, days, known)...)
	}
	return out
}

// growing is an animal that is too young to be bred: a froglet for as long as young are
// raised, and half-grown from there. One of which that is not known stays a froglet.
func (p *plan) growing(kind string, here civil.Span, days int, known bool) []eaters {
	raised, ok := p.room.of(kind).Profile.Step(species.GrowOut)
	if !ok || !raised.Days.Known() || !known {
		return []eaters{{kind, frogletAge, here, 1}}
	}
	half := max(here.First, here.First.Add(int(math.Round(raised.Days.P50))-days))
	var out []eaters
	if half > here.First {
		out = append(out, eaters{kind, frogletAge, civil.Span{First: here.First, Last: min(here.Last, half-1)}, 1})
	}
	if half <= here.Last {
		out = append(out, eaters{kind, halfAge, civil.Span{First: half, Last: here.Last}, 1})
	}
	return out
}

// food adds up what is eaten in the week that begins on a Monday, by species in the
// order of the file, and by age.
func (p *plan) food(all []eaters, monday civil.Date) []WeekFood {
	out := []WeekFood{}
	thursday := monday.Add(3)
	for _, s := range p.room.Collection.Species {
		for _, age := range eatingAges {
			count := 0.0
			for _, e := range all {
				if e.species == s.ID && e.age == age && e.days.Contains(max(thursday, p.on)) {
					count += e.count
				}
			}
			if n := int(math.Round(count)); n > 0 {
				out = append(out, weekOf(monday, s, age, n))
			}
		}
	}
	return out
}

// halfMeal lies between the meals of froglets and of grown animals: as often and as many as
// either, of feeders longer than those of the first and not longer than the shortest of the
// second. Profiles have no meals of their own for those between; that these eat so is
// common practice, no source.
func halfMeal(p *species.Profile) species.Meal {
	small, large := p.Food.Froglet, p.Food.Adult
	either := func(a, b species.Range) species.Range {
		if !a.Known() || !b.Known() {
			return species.Range{}
		}
		return species.Range{Low: min(a.Low, b.Low), High: max(a.High, b.High), Source: b.Source}
	}
	meal := species.Meal{What: large.What, Feeders: either(small.Feeders, large.Feeders), EveryDays: either(small.EveryDays, large.EveryDays)}
	if small.FeederMM.Known() && large.FeederMM.Known() {
		meal.FeederMM = species.Range{
			Low: min(small.FeederMM.High, large.FeederMM.Low), High: max(small.FeederMM.High, large.FeederMM.Low), Source: large.FeederMM.Source,
		}
	}
	return meal
}

// weekOf gives what so many animals eat in a week. Nothing is said of what the
// profile does not have.
func weekOf(monday civil.Date, p *species.Profile, age string, animals int) WeekFood {
	meal := map[string]species.Meal{tadpoleAge: p.Food.Tadpole, frogletAge: p.Food.Froglet, halfAge: halfMeal(p), grownAge: p.Food.Adult}[age]
	f := WeekFood{Week: monday, Species: p.ID, Age: age, Animals: animals, What: meal.What.Value}
	if !meal.EveryDays.Known() {
		return f
	}
	seldom, often := 7*float64(animals)/meal.EveryDays.High, 7*float64(animals)/meal.EveryDays.Low
	if meal.Feeders.Known() {
		f.Feeders = [2]int{int(math.Round(seldom * meal.Feeders.Low)), int(math.Round(often * meal.Feeders.High))}
		f.FeederMM = [2]float64{meal.FeederMM.Low, meal.FeederMM.High}
	}
	if meal.DryMG.Known() {
		f.DryG = [2]float64{math.Round(seldom*meal.DryMG.Low/10) / 100, math.Round(often*meal.DryMG.High/10) / 100}
	}
	return f
}

// known reports whether the profile says how much is eaten.
func (f WeekFood) known() bool { return f.Feeders[1] > 0 || f.DryG[1] > 0 }

// foodPeaks gives the week in which each species and age eats most, the first of
// several, in the order of the species and ages.
func (p *plan) foodPeaks(weeks []Week) []WeekFood {
	top := make(map[[2]string]WeekFood)
	for _, w := range weeks {
		for _, f := range w.Food {
			key := [2]string{f.Species, f.Age}
			if f.known() && f.Animals > top[key].Animals {
				top[key] = f
			}
		}
	}
	peaks := []WeekFood{}
	for _, s := range p.room.Collection.Species {
		for _, age := range eatingAges {
			if f, ok := top[[2]string{s.ID, age}]; ok {
				peaks = append(peaks, f)
			}
		}
	}
	return peaks
}
