// Package horizon looks ahead: what becomes of the gene diversity and the
// inbreeding of a line in the next years, if its keeper goes on in a certain
// way.
//
// A [Line] is the animals as they are, by their kinships. A [Future] says how it
// goes on: how many animals are kept, how long they breed, how young are chosen.
// [Simulate] plays that many times with chance deaths and chance ties, and gives
// the mean and the band of each year. [Keeping.Ahead] does so for each way to choose
// young, and finds how many unrelated animals would keep the line at a goal. Kinship is
// expected kinship, as from a pedigree: no genes are drawn.
//
// Every run has random numbers of its own from the seed, so that the result is
// the same for any number of workers.
package horizon

import "fmt"

// Line is the animals of a line that are alive.
type Line struct {
	Kinship [][]float64 // of each with each; with itself (1+F)/2
	Male    []bool
	Age     []int // in years
}

// Strategy is how young are chosen.
type Strategy int

// The strategies.
const (
	// Plan takes each young from the pair with which the line has the lowest mean
	// kinship, [Future.Weight] times the inbreeding of the young included, and
	// then moves young from pair to pair as long as that helps.
	Plan Strategy = iota
	// EqualFamilies takes as many young from each breeder as from any other of
	// its sex, as nearly as that can be, and mates them by chance.
	EqualFamilies
	// Random takes each young from a male and a female drawn by chance.
	Random
)

// String gives "plan", "equal families" or "random".
func (s Strategy) String() string {
	switch s {
	case Plan:
		return "plan"
	case EqualFamilies:
		return "equal families"
	case Random:
		return "random"
	}
	return fmt.Sprintf("Strategy(%d)", int(s))
}

// Future is how a line goes on.
type Future struct {
	Years, Runs int
	Seed        uint64
	Workers     int // goroutines; 0 is 1
	Strategy    Strategy
	Weight      float64 // of the mean inbreeding of a year's young against the mean kinship of the line, for Plan
	// Ceiling is an inbreeding from which a pair is only used by Plan when there
	// is no other; 0 is none.
	Ceiling float64
	// CrossEvery lets Plan keep lines apart: mates are chosen among kin below the
	// ceiling, but in each CrossEvery-th year among those least related. The loss of
	// diversity in a year is the smaller the more inbred the parents are. 0 crosses
	// every year.
	CrossEvery int
	// Size is how many animals are kept: young fill the places of those that
	// die or are too old, and keep their sex.
	Size int
	// Matures is the age at which animals breed; at Lives they breed for the last
	// time, and leave. With 1 and 1 generations do not overlap.
	Matures, Lives int
	Death          float64 // chance to die within a year
	Pairings       int     // most different pairs a year, for Plan; 0 is no limit
	// Newcomers are unrelated grown animals, male and female by turns, that join
	// at the beginning of Arrive, counted from 1.
	Newcomers, Arrive int
	// Goal is the gene diversity below which the line should not fall.
	Goal float64
	// Stop is asked before each run, and within one before each young of the plan and
	// after each year, one call at a time; true ends the simulation, and a run that is
	// not at its end does not count. It may be nil, and should be quick.
	Stop     func() bool
	Progress func(done int) // told of each run that is done, one call at a time. May be nil
}

// Outlook is what becomes of a line.
type Outlook struct {
	Runs  int    // that were played to their end
	Years []Year // from year 0, the line as it is
}

// Year is the line at the end of a year.
type Year struct {
	Year          int  `json:"year"` // 0 is the line as it is
	GeneDiversity Band `json:"gene_diversity"`
	Inbreeding    Band `json:"inbreeding"` // mean of the living animals
	Young         Band `json:"-"`          // mean inbreeding of the young of the year; those without young do not count
	// Below is the share of the runs in which the gene diversity is below the
	// goal.
	Below float64 `json:"below_goal"`
	// Lost is the share in which the line has no male or no female any more.
	Lost float64 `json:"lost"`
}

// Band is the mean over the runs, its standard error, and the values that one
// run in ten stays below and one in ten is above: an 80 % band.
type Band struct {
	Low   float64 `json:"low"`
	Mean  float64 `json:"mean"`
	High  float64 `json:"high"`
	Error float64 `json:"-"`
}

func (l Line) mustBeSound() {
	n := len(l.Kinship)
	if len(l.Male) != n || len(l.Age) != n || n == 0 {
		panic("horizon: a line needs a kinship, a sex and an age for each of at least one animal")
	}
	for _, row := range l.Kinship {
		if len(row) != n {
			panic("horizon: kinships that are no square table")
		}
	}
}

func (f Future) mustBeSound() {
	switch {
	case f.Years < 1 || f.Runs < 1 || f.Size < 2 || f.Pairings < 0 || f.Newcomers < 0 || f.Workers < 0 || f.CrossEvery < 0:
		panic("horizon: a future needs years, runs and a size, and no number below 0")
	case f.Matures < 0 || f.Lives < f.Matures:
		panic("horizon: animals leave before they breed")
	case !(f.Death >= 0 && f.Death < 1) || !(f.Weight >= 0):
		panic("horizon: a chance or a weight out of its range")
	}
}
