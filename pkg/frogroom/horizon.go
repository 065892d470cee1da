package frogroom

import (
	"cmp"
	"math"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/horizon"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Horizon is what becomes of the lines of a room.
type Horizon struct {
	On       civil.Date         `json:"on"`
	Goal     float64            `json:"goal"`
	Seed     uint64             `json:"seed"`
	Species  []horizon.Prospect `json:"species"`
	Warnings []string           `json:"warnings,omitempty"`
}

// Horizon plays the next years of each species. Kinship is expected kinship: no genes
// are drawn. The cost grows with runs, years and the cube of the animals of a line, and
// with more than [horizon.LargestLine] nothing is played. The error is a
// *[collection.UnknownError] or a *[horizon.WishError].
func (r *Room) Horizon(on civil.Date, w horizon.Wish) (Horizon, error) {
	mustKnow(on)
	if err := r.known(w.Species); err != nil {
		return Horizon{}, err
	}
	w, err := w.Complete()
	if err != nil {
		return Horizon{}, err
	}
	out := Horizon{On: on, Goal: w.Goal, Seed: w.Seed, Species: []horizon.Prospect{}, Warnings: []string{pedigree.FounderWarning}}
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
		l := r.line(on, p.ID)
		if len(l.here) == 0 {
			continue
		}
		prospect, unplayed := horizon.Unplayed(p.ID, len(l.pool))
		if !unplayed {
			prospect = l.keeping(seasons[p.ID]).Ahead(w)
		}
		out.Species = append(out.Species, prospect)
	}
	return out, nil
}

// roughly is the effort to find how many pairings the plan of the season has.
const roughly = 400

// keeping gives the animals that are promised to nobody as a line.
func (l *line) keeping(pairings int) horizon.Keeping {
	k := horizon.Keeping{Species: l.species, Matures: l.matures(), Ceiling: l.room.Collection.Rules.MaxInbreeding, Pairings: pairings}
	k.Line, k.Unsexed = l.start()
	return k
}

// start gives the animals of the pool as they are. Those of unknown sex count
// as male and female by turns.
func (l *line) start() (start horizon.Line, unsexed int) {
	start.Kinship = l.room.Ancestry.Pedigree.Block(l.pool, l.pool)
	for _, i := range l.pool {
		a := l.room.Ancestry.Animal(i)
		male := a.Sex == collection.Male
		if a.Sex == collection.UnknownSex {
			unsexed++
			male = unsexed%2 == 1
		}
		age := l.matures()
		if since := cmp.Or(a.OutOfWater, a.Hatched, l.room.Collection.LaidOn(a.Clutch)); since.Known() {
			age = max(0, l.on.Sub(since)/365)
		} else if a.Acquired.Known() {
			age += max(0, l.on.Sub(a.Acquired)/365) // most are bought grown
		}
		start.Male = append(start.Male, male)
		start.Age = append(start.Age, age)
	}
	return start, unsexed
}

// matures gives the age in whole years at which both sexes breed.
func (l *line) matures() int {
	need := l.room.breeders.Needs(l.species)
	days := max(need.Male.AgeDays, need.Female.AgeDays)
	return max(1, int(math.Ceil(float64(days)/365)))
}
