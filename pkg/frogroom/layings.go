package frogroom

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// layings are the days on which clutches were laid, in order; of one whose day
// is not known, the day on which it was first seen.
type layings struct {
	byDam     map[string][]civil.Date // every animal that may be the dam
	byPairing map[string][]civil.Date
}

func layingsOf(c *collection.Collection) layings {
	l := layings{byDam: make(map[string][]civil.Date), byPairing: make(map[string][]civil.Date)}
	for i := range c.Clutches {
		k := &c.Clutches[i]
		for _, dam := range k.Dams {
			l.byDam[dam] = append(l.byDam[dam], c.Since(k.ID))
		}
		if k.Pairing != "" {
			l.byPairing[k.Pairing] = append(l.byPairing[k.Pairing], c.Since(k.ID))
		}
	}
	for _, by := range []map[string][]civil.Date{l.byDam, l.byPairing} {
		for _, days := range by {
			slices.Sort(days)
		}
	}
	return l
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
