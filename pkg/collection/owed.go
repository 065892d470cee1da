package collection

import (
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Owed gives the promises of a clutch that are still open on a day, in the
// order of the file: what was sold to the same name, in any case, is taken off, and what is
// fulfilled is left out. An unknown day stands for the end of the diary.
func (c *Collection) Owed(clutch string, on civil.Date) []Promise {
	k, ok := c.Clutch(clutch)
	if !ok || len(k.Promised) == 0 {
		return nil
	}
	sold := make(map[string]int)
	for _, e := range c.lived(clutch) {
		if past(e.On, on) {
			sold[strings.ToLower(e.To)] += e.Sold
		}
	}
	var open []Promise
	for _, p := range k.Promised {
		to := strings.ToLower(p.To)
		given := min(sold[to], p.Count)
		sold[to] -= given
		if p.Count -= given; p.Count > 0 {
			open = append(open, p)
		}
	}
	return open
}
