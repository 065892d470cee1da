package horizon

import "fmt"

// Keeping is how a line is kept now.
type Keeping struct {
	Line
	Species  string
	Unsexed  int     // animals of the line whose sex is not known; they count as male and female by turns
	Matures  int     // age in years at which both sexes breed
	Ceiling  float64 // inbreeding of young that the keeper refuses, see [Future.Ceiling]
	Pairings int     // of this season; 0 is no limit
}

// Prospect is what becomes of a line under each way to choose young.
type Prospect struct {
	Species     string   `json:"species"`
	Living      int      `json:"living"`
	Runs        int      `json:"runs"` // that were played to their end, of the way with the fewest
	Assumptions []string `json:"assumptions"`
	Ways        []Way    `json:"ways"` // the plan first
	// Help is the fewest unrelated animals that keep the chance to be under the
	// goal in the last year at one in five or less, with the plan; nil when
	// none are needed, ten are not enough, or it is open.
	Help *Help `json:"help,omitempty"`
	// HelpOpen says that it was stopped before that was found out.
	HelpOpen bool `json:"help_open,omitempty"`
	// Enough says that no unrelated animals are needed.
	Enough   bool   `json:"enough"`
	NoFuture string `json:"no_future,omitempty"` // why nothing was simulated
}

// Way is the line under one way to choose young: "plan", "plan, lines crossed
// every 5 years", "equal families" or "random".
type Way struct {
	Way   string `json:"way"`
	Years []Year `json:"years"` // from year 0, the line as it is
}

// Help is a number of unrelated animals, and the year at whose beginning they join.
type Help struct {
	Animals int     `json:"animals"`
	Year    int     `json:"year"`
	Below   float64 `json:"below_goal"` // share of the runs in the last year
}

// LargestLine is how many animals a line may have to be looked ahead for: the cost of the
// plan grows with their cube, and a thousand take seconds a run already.
const LargestLine = 1000

// Unplayed gives the prospect of a line of so many animals when it is too small or too
// large to be played, so that its kinships need not be worked out; false for others.
func Unplayed(species string, animals int) (Prospect, bool) {
	out := Prospect{Species: species, Living: animals, Ways: []Way{}, Assumptions: []string{}}
	switch {
	case animals < 2:
		out.NoFuture = fmt.Sprintf("a line goes on from two animals at least, and %d is in the room and promised to nobody", animals)
	case animals > LargestLine:
		out.NoFuture = fmt.Sprintf("lines of up to %d animals are played, and this one has %d", LargestLine, animals)
	}
	return out, out.NoFuture != ""
}

// Ahead plays the next years of a line in each way, and with unrelated animals when
// the plan alone does not keep the goal. Nothing is played of what is [Unplayed]. It panics
// when the wish is not [Wish.Complete]. Cost: that of [Simulate] for each way, and each
// number of animals that join.
func (k Keeping) Ahead(w Wish) Prospect {
	out, unplayed := Unplayed(k.Species, len(k.Kinship))
	if unplayed {
		return out
	}
	f := k.future(w)
	out.Assumptions = k.assumptions(f, w.CrossEvery)
	out.Ways, out.Runs = ways(k.Line, f, w.CrossEvery)
	if len(out.Ways) == 0 {
		out.NoFuture = "it was stopped before the first run was at its end"
		return out
	}
	out.Enough, out.Help, out.HelpOpen = help(k.Line, f, out.Ways[0])
	return out
}

func (k Keeping) future(w Wish) Future {
	f := Future{
		Years: w.Years, Runs: w.Runs, Seed: w.Seed, Workers: w.Workers, Weight: w.Weight,
		Size: len(k.Kinship), Matures: k.Matures, Lives: max(w.Lives, k.Matures), Death: w.Death,
		Pairings: k.Pairings, Ceiling: k.Ceiling, Goal: w.Goal, Stop: w.Stop,
	}
	if w.Pairings > 0 {
		f.Pairings = w.Pairings
	}
	if w.Progress != nil {
		f.Progress = func(done int) { w.Progress(done, w.Runs) }
	}
	return f
}

func (k Keeping) assumptions(f Future, crossEvery int) []string {
	out := []string{
		fmt.Sprintf("%d animals are kept; young take the places of those that die or breed no more", f.Size),
		fmt.Sprintf("animals breed from the age of %d to that of %d years (the second is an assumption without a source)", f.Matures, f.Lives),
		fmt.Sprintf("%.0f %% of the animals die each year by chance", 100*f.Death),
		fmt.Sprintf("the plan refuses young inbred to %v as long as there are others", f.Ceiling),
	}
	if f.Pairings > 0 {
		pairs := fmt.Sprintf("%d different pairs", f.Pairings)
		if f.Pairings == 1 {
			pairs = "one pair"
		}
		out = append(out, "the plan has at most "+pairs+" a year")
	}
	if k.Unsexed > 0 {
		out = append(out, fmt.Sprintf("%d of unknown sex, taken as male and female by turns", k.Unsexed))
	}
	if crossEvery > 0 {
		out = append(out, fmt.Sprintf("lines are kept apart among kin below %v, and crossed every %s", f.Ceiling, years(crossEvery)))
	}
	return out
}

// ways plays all ways to choose young, the plan first, and gives the fewest runs of one. A way
// of which no run came to its end is left out.
func ways(start Line, f Future, crossEvery int) (out []Way, runs int) {
	out = []Way{}
	play := func(name string, strategy Strategy, crossEvery int) {
		f.Strategy, f.CrossEvery = strategy, crossEvery
		o := Simulate(start, f)
		if o.Runs == 0 {
			return
		}
		if runs == 0 || o.Runs < runs {
			runs = o.Runs
		}
		out = append(out, Way{Way: name, Years: o.Years})
	}
	play(Plan.String(), Plan, 0)
	if crossEvery > 0 {
		play(fmt.Sprintf("plan, lines crossed every %s", years(crossEvery)), Plan, crossEvery)
	}
	for _, s := range []Strategy{EqualFamilies, Random} {
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

const (
	tolerated = 0.2 // chance to be under the goal that needs no help
	mostHelp  = 10  // greatest number of unrelated animals that is looked at
)

// help looks for the fewest unrelated animals that keep the line at its goal. They join in
// the first year in which the line would more likely than tolerated be under it.
func help(start Line, f Future, plan Way) (enough bool, help *Help, open bool) {
	if plan.Years[f.Years].Below <= tolerated {
		return true, nil, false
	}
	f.Strategy = Plan
	for _, y := range plan.Years[1:] {
		if y.Below > tolerated {
			f.Arrive = y.Year
			break
		}
	}
	for f.Newcomers = 1; f.Newcomers <= mostHelp; f.Newcomers++ {
		o := Simulate(start, f)
		if o.Runs < f.Runs {
			return false, nil, true
		}
		if o.Years[f.Years].Below <= tolerated {
			return false, &Help{Animals: f.Newcomers, Year: f.Arrive, Below: o.Years[f.Years].Below}, false
		}
	}
	return false, nil, false
}
