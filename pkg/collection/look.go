package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Look is what was seen of a clutch on a day. Either Saw or Gosner is given.
type Look struct {
	On     civil.Date
	Saw    string
	Gosner int
	Some   bool // only some of the clutch were that far
	At     strictyaml.Position
}

// Count is a head-count of a clutch.
type Count struct {
	On     civil.Date
	Living Given[int] // what was counted
	Some   bool       // only those were counted that had reached a stage
	Losses int        // dead ones that were found
	// Sold left, and HeldBack became animals of the collection.
	Sold, HeldBack int
	At             strictyaml.Position
}

// Gone gives how many died or left.
func (n Count) Gone() int { return n.Losses + n.Sold + n.HeldBack }

// lived gives the entries about a clutch from the day on which it was laid.
// Those before it, which are warned about, cannot be meant.
func (c *Collection) lived(clutch string) []*Entry {
	entries := c.DiaryOf(clutch)
	if k, ok := c.Clutch(clutch); ok {
		for len(entries) > 0 && before(entries[0].On, k.Laid) {
			entries = entries[1:]
		}
	}
	return entries
}

// Looks gives what was seen of a clutch, by date. Looks that contradict each
// other are all given. Those before it was laid are left out.
func (c *Collection) Looks(clutch string) []Look {
	var looks []Look
	for _, e := range c.lived(clutch) {
		if e.Saw != "" || e.Gosner > 0 {
			looks = append(looks, Look{On: e.On, Saw: e.Saw, Gosner: e.Gosner, Some: e.Some, At: e.At})
		}
	}
	return looks
}

// Counts gives the head-counts of a clutch and those that died or left, by date.
// Entries before it was laid are left out.
func (c *Collection) Counts(clutch string) []Count {
	var counts []Count
	for _, e := range c.lived(clutch) {
		if e.Count.Known || out(e) > 0 {
			counts = append(counts, Count{On: e.On, Living: e.Count, Some: e.Some, Losses: e.Losses, Sold: e.Sold, HeldBack: e.HeldBack, At: e.At})
		}
	}
	return counts
}
