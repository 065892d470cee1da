package occupancy

import (
	"slices"
	"sort"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Options say how a season is played.
type Options struct {
	// Seasons is how often, 1 to 10,000,000: 20,000 give a chance of one in four
	// with a standard error of 0.003.
	Seasons int
	Seed    uint64
	Workers int // goroutines; 0 is 1. The result does not depend on it
}

// Risk is how likely a room is to run out.
type Risk struct {
	Any       Chance     // that any of the resources runs out on any day
	Resources []Shortage // in the order of Season.Resources
}

// Shortage is how likely a resource is to run out.
type Shortage struct {
	Resource
	Loads []Load // exactly, for each day
	Short Chance // that it runs out on any day of the season
	// DaysShort is on how many days there are too few, on average of the seasons
	// in which that happens.
	DaysShort float64
	// Worst is the day on which more is needed than there is with the greatest
	// chance, the first of several, and WorstOver is this chance, exactly. They
	// are 0 when that cannot happen.
	Worst     civil.Date
	WorstOver float64
	peaks     []int32 // the greatest need of each season that was played, ascending
}

// With gives the chance of running out when there were more of the resource, on
// the same seasons. A negative number is fewer.
func (s Shortage) With(more int) Chance {
	count := s.Count + more
	enough := sort.Search(len(s.peaks), func(i int) bool { return int(s.peaks[i]) > count })
	return Chance{Seasons: len(s.peaks) - enough, Of: len(s.peaks)}
}

// More gives the least number of further places, from 0, with which the resource
// runs out at most with the wished chance. It panics when that is no chance from
// 0 to 1.
func (s Shortage) More(wished float64) int {
	mustShare(wished)
	allowed := min(int(wished*float64(len(s.peaks))+rounding), len(s.peaks))
	if allowed == len(s.peaks) {
		return 0
	}
	return max(int(s.peaks[len(s.peaks)-1-allowed])-s.Count, 0)
}

// Assess gives the risk of a season: by day exactly, and for the whole season by
// playing it. The error is a *[SeasonError]. It panics when o.Seasons is out of
// range or o.Workers negative.
//
// The cost is that of [Loads] and, for each season that is played, O(days ×
// resources + holds).
func Assess(s Season, o Options) (Risk, error) {
	o.must()
	if err := s.check(); err != nil {
		return Risk{}, err
	}
	played := s.play(o)
	risk := Risk{Any: played.any(o.Seasons)}
	loads := s.loads()
	for r, resource := range s.Resources {
		shortage := Shortage{Resource: resource, Loads: loads[r], peaks: slices.Sorted(slices.Values(played.peaks[r]))}
		shortage.Short = shortage.With(0)
		if short := shortage.Short.Seasons; short > 0 {
			shortage.DaysShort = float64(played.daysOver(r)) / float64(short)
		}
		for _, l := range loads[r] {
			if l.Over > shortage.WorstOver {
				shortage.Worst, shortage.WorstOver = l.On, l.Over
			}
		}
		risk.Resources = append(risk.Resources, shortage)
	}
	return risk, nil
}

const mostSeasons = 10_000_000

func (o Options) must() {
	if o.Seasons < 1 || o.Seasons > mostSeasons {
		panic("occupancy: the number of seasons is not from 1 to 10,000,000")
	}
	if o.Workers < 0 {
		panic("occupancy: a negative number of workers")
	}
}
