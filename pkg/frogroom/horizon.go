package frogroom

import (
	"fmt"
	"math"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/horizon"
)

// HorizonWish says how a line goes on. The zero value of a number stands for
// what is usual.
type HorizonWish struct {
	Species string  // only this one; all when empty
	Years   int     // 0 is 10
	Runs    int     // 0 is 1,000
	Seed    uint64  // the same seed gives the same result
	Workers int     // goroutines; makes no difference to the result
	Goal    float64 // gene diversity to keep; 0 is 0.9
	Weight  float64 // of the inbreeding of the young, as in [breedingplan.Wish]
	// CrossEvery adds a way: lines are kept apart, as with [breedingplan.Wish.Apart], and crossed
	// by the plan in each CrossEvery-th year; 0 does not.
	CrossEvery int
	Pairings   int     // a year; 0 is what the plan of the season gives the species
	Lives      int     // age in years at which an animal breeds for the last time; 0 is 8
	Death      float64 // chance to die within a year
	Stop       func() bool
	Progress   func(done, of int) // may be nil
}

// Horizon is what becomes of the lines of a room.
type Horizon struct {
	On       civil.Date       `json:"on"`
	Goal     float64          `json:"goal"`
	Seed     uint64           `json:"seed"`
	Species  []SpeciesHorizon `json:"species"`
	Warnings []string         `json:"warnings,omitempty"`
}

// SpeciesHorizon is what becomes of the line of one species.
type SpeciesHorizon struct {
	Species     string       `json:"species"`
	Living      int          `json:"living"`
	Runs        int          `json:"runs"` // that were played to their end
	Assumptions []string     `json:"assumptions"`
	Ways        []HorizonWay `json:"ways"`
	// Help is the fewest unrelated animals that keep the chance to be under the
	// goal in the last year at one in five or less, with the plan; nil when
	// none are needed, or ten are not enough.
	Help *HorizonHelp `json:"help,omitempty"`
	// Enough says that no unrelated animals are needed.
	Enough   bool   `json:"enough"`
	NoFuture string `json:"no_future,omitempty"` // why nothing was simulated
}

// HorizonWay is the line under one way to choose young: "plan", "plan, lines crossed
// every 5 years", "equal families" or "random".
type HorizonWay struct {
	Way   string        `json:"way"`
	Years []HorizonYear `json:"years"` // from year 0, the line as it is
}

// HorizonYear is the line at the end of a year.
type HorizonYear struct {
	Year          int         `json:"year"`
	GeneDiversity HorizonBand `json:"gene_diversity"`
	Inbreeding    HorizonBand `json:"inbreeding"` // mean of the living animals
	Below         float64     `json:"below_goal"` // share of the runs
	Lost          float64     `json:"lost"`       // share of the runs without a male or without a female
}

// HorizonBand is a mean with an 80 % band.
type HorizonBand struct {
	Low  float64 `json:"low"`
	Mean float64 `json:"mean"`
	High float64 `json:"high"`
}

// HorizonHelp is a number of unrelated animals, and the year at whose beginning they join.
type HorizonHelp struct {
	Animals int     `json:"animals"`
	Year    int     `json:"year"`
	Below   float64 `json:"below_goal"` // share of the runs in the last year
}

// HorizonWishError is a wish that makes no sense.
type HorizonWishError struct{ Message string }

func (e *HorizonWishError) Error() string { return e.Message }

// Horizon plays the next years of each species. Kinship is expected kinship: no
// genes are drawn. The error is an *[UnknownSpeciesError] or a *[HorizonWishError].
func (r *Room) Horizon(on civil.Date, w HorizonWish) (Horizon, error) {
	mustKnow(on)
	if err := r.wholeFuture(&w); err != nil {
		return Horizon{}, err
	}
	out := Horizon{On: on, Goal: w.Goal, Seed: w.Seed, Species: []SpeciesHorizon{}, Warnings: []string{founderWarning}}
	seasons := make(map[string]int)
	if season, err := r.Pairs(on, breedingplan.Wish{Weight: w.Weight, Nodes: roughly, Stop: w.Stop}); err == nil {
		for _, s := range season.Species {
			seasons[s.Species] = len(s.Pairs)
		}
	}
	for _, p := range r.Collection.Species {
		if w.Species != "" && w.Species != p.ID {
			continue
		}
		if l := r.line(on, p.ID); len(l.here) > 0 {
			out.Species = append(out.Species, l.horizon(w, seasons[p.ID]))
		}
	}
	return out, nil
}

func (r *Room) wholeFuture(w *HorizonWish) error {
	if w.Species != "" {
		if _, ok := r.Collection.Profile(w.Species); !ok {
			return r.unknownSpecies(w.Species)
		}
	}
	orElse(&w.Years, 10)
	orElse(&w.Runs, 1000)
	orElse(&w.Lives, 8)
	if w.Goal == 0 {
		w.Goal = 0.9
	}
	for _, n := range []struct {
		what      string
		value     int
		low, high int
	}{{"years", w.Years, 1, 200}, {"runs", w.Runs, 1, 1_000_000}, {"pairings", w.Pairings, 0, 100_000}, {"years from one crossing to the next", w.CrossEvery, 0, 200}, {"the greatest age", w.Lives, 1, 100}} {
		if n.value < n.low || n.value > n.high {
			return &HorizonWishError{fmt.Sprintf("%s: write %d to %d", n.what, n.low, n.high)}
		}
	}
	for _, x := range []struct {
		what        string
		value, high float64
	}{{"the goal", w.Goal, 1}, {"the weight of inbreeding", w.Weight, 1000}, {"the chance to die", w.Death, 0.99}} {
		if !(x.value >= 0 && x.value <= x.high) {
			return &HorizonWishError{fmt.Sprintf("%s: write 0 to %v", x.what, x.high)}
		}
	}
	return nil
}

func orElse(n *int, usual int) {
	if *n == 0 {
		*n = usual
	}
}

// ways plays all ways to choose young, the plan first.
func ways(start horizon.Line, f horizon.Future, crossEvery int) (out []HorizonWay, runs int) {
	play := func(name string, strategy horizon.Strategy, crossEvery int) {
		f.Strategy, f.CrossEvery = strategy, crossEvery
		o := horizon.Simulate(start, f)
		runs = o.Runs
		out = append(out, wayOf(name, o))
	}
	play(horizon.Plan.String(), horizon.Plan, 0)
	if crossEvery > 0 {
		play(fmt.Sprintf("plan, lines crossed every %s", years(crossEvery)), horizon.Plan, crossEvery)
	}
	for _, s := range []horizon.Strategy{horizon.EqualFamilies, horizon.Random} {
		play(s.String(), s, 0)
	}
	return out, runs
}

func years(n int) string {
	if n == 1 {
		return "year"
	}
	return fmt.Sprintf("%d years", n)
}

// roughly is the effort to find how many pairings the plan of the season has.
const roughly = 400

// mostHelp is the greatest number of unrelated animals that is looked at.
const mostHelp = 10

func (l *line) horizon(w HorizonWish, pairings int) SpeciesHorizon {
	out := SpeciesHorizon{Species: l.species, Living: len(l.pool), Ways: []HorizonWay{}, Assumptions: []string{}}
	start, unsexed := l.start()
	if len(start.Kinship) < 2 {
		out.NoFuture = fmt.Sprintf("a line goes on from two animals at least, and %d is in the room and promised to nobody", len(start.Kinship))
		return out
	}
	if w.Pairings > 0 {
		pairings = w.Pairings
	}
	f := horizon.Future{
		Years: w.Years, Runs: w.Runs, Seed: w.Seed, Workers: w.Workers, Weight: w.Weight,
		Size: len(start.Kinship), Matures: l.matures(), Death: w.Death, Pairings: pairings,
		Ceiling: l.room.Collection.Rules.MaxInbreeding, Goal: w.Goal, Stop: w.Stop,
	}
	f.Lives = max(w.Lives, f.Matures)
	out.Assumptions = l.assumptions(f, unsexed)
	if w.CrossEvery > 0 {
		out.Assumptions = append(out.Assumptions, fmt.Sprintf("lines are kept apart among kin below %v, and crossed every %s", f.Ceiling, years(w.CrossEvery)))
	}
	if w.Progress != nil {
		f.Progress = func(done int) { w.Progress(done, w.Runs) }
	}
	out.Ways, out.Runs = ways(start, f, w.CrossEvery)
	out.Enough, out.Help = l.help(start, f, out.Ways[0])
	return out
}

// start gives the animals of the pool as they are. Those of unknown sex count
// as male and female by turns.
func (l *line) start() (start horizon.Line, unsexed int) {
	start.Kinship = l.room.Ancestry.Pedigree.Block(l.pool, l.pool)
	for _, i := range l.pool {
		a := l.room.Ancestry.animal(i)
		male := a.Sex == collection.Male
		if a.Sex == collection.UnknownSex {
			unsexed++
			male = unsexed%2 == 1
		}
		age := l.matures()
		for _, since := range []civil.Date{a.OutOfWater, a.Hatched, a.Acquired} {
			if since.Known() {
				age = max(0, l.on.Sub(since)/365)
				if since == a.Acquired && !a.OutOfWater.Known() && !a.Hatched.Known() {
					age += l.matures() // most are bought grown
				}
				break
			}
		}
		start.Male = append(start.Male, male)
		start.Age = append(start.Age, age)
	}
	return start, unsexed
}

// matures gives the age in whole years at which both sexes breed.
func (l *line) matures() int {
	need := l.room.needs[l.species]
	days := max(need.Male.AgeDays, need.Female.AgeDays)
	return max(1, int(math.Ceil(float64(days)/365)))
}

func (l *line) assumptions(f horizon.Future, unsexed int) []string {
	out := []string{
		fmt.Sprintf("%d animals are kept; young take the places of those that die or breed no more", f.Size),
		fmt.Sprintf("animals breed from the age of %d to that of %d years (the second is an assumption without a source)", f.Matures, f.Lives),
		fmt.Sprintf("%.0f %% of the animals die each year by chance", 100*f.Death),
		fmt.Sprintf("the plan refuses young inbred to %v as long as there are others", f.Ceiling),
	}
	if f.Pairings > 0 {
		out = append(out, fmt.Sprintf("the plan has at most %d different pairs a year", f.Pairings))
	}
	if unsexed > 0 {
		out = append(out, fmt.Sprintf("%d of unknown sex count as male and female by turns", unsexed))
	}
	return out
}

func wayOf(name string, o horizon.Outlook) HorizonWay {
	w := HorizonWay{Way: name, Years: []HorizonYear{}}
	band := func(b horizon.Band) HorizonBand { return HorizonBand{b.Low, b.Mean, b.High} }
	for i, y := range o.Years {
		w.Years = append(w.Years, HorizonYear{
			Year: i, GeneDiversity: band(y.GeneDiversity), Inbreeding: band(y.Inbreeding), Below: y.Below, Lost: y.Lost,
		})
	}
	return w
}

// tolerated is the chance to be under the goal that needs no help.
const tolerated = 0.2

// help looks for the fewest unrelated animals that keep the line at its goal. They join in
// the first year in which the line would more likely than tolerated be under it.
func (l *line) help(start horizon.Line, f horizon.Future, plan HorizonWay) (enough bool, help *HorizonHelp) {
	if len(plan.Years) == 0 || plan.Years[f.Years].Below <= tolerated {
		return len(plan.Years) > 0, nil
	}
	f.Strategy = horizon.Plan
	for _, y := range plan.Years[1:] {
		if y.Below > tolerated {
			f.Arrive = y.Year
			break
		}
	}
	for f.Newcomers = 1; f.Newcomers <= mostHelp; f.Newcomers++ {
		o := horizon.Simulate(start, f)
		if len(o.Years) > 0 && o.Years[f.Years].Below <= tolerated {
			return false, &HorizonHelp{Animals: f.Newcomers, Year: f.Arrive, Below: o.Years[f.Years].Below}
		}
	}
	return false, nil
}
