package season

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// yard is all pairings with their plans, and what they share.
type yard struct {
	jobs     []*job
	today    int
	capacity map[string]int // of the places where it is known

	placeNames  []string
	holds       map[string][]hold
	animalNames []string
	cycles      map[string][]hold

	// What was found while looking for cures.
	moves  map[int]int        // by pairing, see move
	noRoom map[string][]crowd // by place, see occupied
}

func newYard(room Room, pairings []Pairing, today civil.Date) *yard {
	y := &yard{today: int(today), capacity: map[string]int{}, moves: map[int]int{}, noRoom: map[string][]crowd{}}
	for _, c := range room.Capacity {
		if c.Known {
			y.capacity[c.Place] = c.Count
		}
	}
	away := mergedDays(room.Away)
	for _, p := range pairings {
		y.jobs = append(y.jobs, newJob(p, away, today))
	}
	y.placeNames, y.holds = holdsOf(y.jobs)
	y.animalNames, y.cycles = cyclesOf(y.jobs)
	return y
}

// season gives the result.
func (y *yard) season() Season {
	var s Season
	for _, j := range y.jobs {
		j.warn()
		s.Cycles = append(s.Cycles, j.cycle())
		s.Conflicts = append(s.Conflicts, j.conflicts...)
	}
	conflicts, unchecked := y.places()
	s.Conflicts = append(s.Conflicts, conflicts...)
	s.Conflicts = append(s.Conflicts, y.animals()...)
	rank := []Kind{TooLate, Away, PlaceFull, AnimalTwice}
	slices.SortStableFunc(s.Conflicts, func(a, b Conflict) int {
		return cmp.Or(
			cmp.Compare(a.Days.First, b.Days.First),
			cmp.Compare(slices.Index(rank, a.Kind), slices.Index(rank, b.Kind)),
		)
	})
	s.Unchecked = append(unchecked,
		"tadpole tubs, froglet bins and hours of work",
		"room for a second attempt when there are no eggs, and for cleaning a place between two pairings",
	)
	return s
}

func (y *yard) ids(pairings []int) []string {
	var ids []string
	for _, i := range pairings {
		ids = append(ids, y.jobs[i].ID)
	}
	return ids
}
