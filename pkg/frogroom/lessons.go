package frogroom

import (
	"sync"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
)

// lessons is what the clutches of the collection have taught by a day, species
// by species. Learning costs far more than an outlook, and all outlooks of a day
// share it, so that it is kept for the day that was asked for last.
type lessons struct {
	newest civil.Date // last day of the diary: nothing is learned after it

	mu sync.Mutex
	on civil.Date
	of map[string]*development.Room
}

func newLessons(c *collection.Collection) *lessons {
	l := &lessons{}
	for i := range c.Diary {
		l.newest = max(l.newest, c.Diary[i].On)
	}
	return l
}

// lesson gives what all clutches of a species have taught by a day, those that
// have ended and those that run.
func (r *Room) lesson(species string, on civil.Date) *development.Room {
	l := r.lessons
	on = min(on, l.newest)
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.of == nil || l.on != on {
		l.on, l.of = on, make(map[string]*development.Room)
	}
	if l.of[species] == nil {
		var taught []development.Clutch
		for i := range r.Collection.Clutches {
			if c := &r.Collection.Clutches[i]; c.Species == species && c.Laid <= on {
				taught = append(taught, r.developing(c, on))
			}
		}
		l.of[species] = r.of(species).model.Learn(taught)
	}
	return l.of[species]
}

// outlook gives the dates of a clutch in the light of what the others of its
// species have taught.
func (r *Room) outlook(c *collection.Clutch, on civil.Date) development.Outlook {
	k := r.developing(c, on)
	room := r.lesson(c.Species, on)
	if c.Laid <= min(on, r.lessons.newest) {
		room = room.Without(k)
	}
	return r.of(c.Species).model.Outlook(k, room)
}

// developing gives what is known of a clutch by a day. The water is that of the
// tubs from laying on, until something else was measured; of the air only what
// was measured is known.
func (r *Room) developing(c *collection.Clutch, on civil.Date) development.Clutch {
	k := development.Clutch{Laid: c.Laid, Looks: r.looks(c.ID, on)}
	if set := r.Collection.Equipment.TadpoleTubs.WaterC; set.Known {
		k.Water = append(k.Water, development.Reading{From: c.Laid, C: set.Value})
	}
	for _, t := range r.Collection.Temperatures(c.ID) {
		if t.On > on {
			continue
		}
		if t.WaterC.Known {
			k.Water = append(k.Water, development.Reading{From: t.On, C: t.WaterC.Value})
		}
		if t.AirC.Known {
			k.Air = append(k.Air, development.Reading{From: t.On, C: t.AirC.Value})
		}
	}
	return k
}
