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
	At     strictyaml.Position
}

// Looks gives what was seen of a clutch, by date.
func (c *Collection) Looks(clutch string) []Look {
	var looks []Look
	for _, e := range c.DiaryOf(clutch) {
		if e.Saw != "" || e.Gosner > 0 {
			looks = append(looks, Look{On: e.On, Saw: e.Saw, Gosner: e.Gosner, Some: e.Some, At: e.At})
		}
	}
	return looks
}

// Counts gives the head-counts and losses of a clutch, by date.
func (c *Collection) Counts(clutch string) []Count {
	var counts []Count
	for _, e := range c.DiaryOf(clutch) {
		if e.Count.Known || e.Losses > 0 {
			counts = append(counts, Count{On: e.On, Living: e.Count, Some: e.Some, Losses: e.Losses, At: e.At})
		}
	}
	return counts
}
