package frogroom

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// layings gives the days on which the clutches of each pairing were laid, in order; of
// one whose day is not known, the day on which it was first seen.
func layings(c *collection.Collection) map[string][]civil.Date {
	days := make(map[string][]civil.Date)
	for i := range c.Clutches {
		if k := &c.Clutches[i]; k.Pairing != "" {
			days[k.Pairing] = append(days[k.Pairing], c.Since(k.ID))
		}
	}
	for _, of := range days {
		slices.Sort(of)
	}
	return days
}

// upTo gives how many of some days in order are not after on, and the last of
// these; it is unknown when there is none.
func upTo(on civil.Date, days []civil.Date) (count int, last civil.Date) {
	count, _ = slices.BinarySearch(days, on+1)
	if count > 0 {
		last = days[count-1]
	}
	return count, last
}
