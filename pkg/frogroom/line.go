package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// line is the animals of a species that are in the room.
type line struct {
	room    *Room
	species string
	on      civil.Date
	here    []int // numbers of the animals, in the order of the file
	pool    []int // those that are promised to nobody
}

func (r *Room) line(on civil.Date, species string) *line {
	l := &line{room: r, species: species, on: on}
	for i := range r.Collection.Animals {
		a := &r.Collection.Animals[i]
		if a.Species != species || r.Ancestry.Status(i, on) != collection.Here {
			continue
		}
		l.here = append(l.here, i)
		if a.Promised == "" {
			l.pool = append(l.pool, i)
		}
	}
	return l
}
