package rearing

import (
	"sync"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// lessons is what the clutches of the collection have taught by a day, species
// by species. Learning costs far more than an outlook, and all outlooks of a day
// share it, so that it is kept for the day that was asked for last.
type lessons struct {
	newest civil.Date // last day of the diary: nothing is learned after it

	mu sync.Mutex
	on civil.Date
	of map[string]func() *development.Room
}

func newLessons(c *collection.Collection) *lessons {
	l := &lessons{}
	for i := range c.Diary {
		l.newest = max(l.newest, c.Diary[i].On)
	}
	return l
}

// Lesson gives what all clutches of a species have taught by a day, those that
// have ended and those that run. It is worked out when it is first asked for, and kept
// for the day that was asked for last. It panics for a species that the collection does
// not have.
func (r *Rearing) Lesson(species string, on civil.Date) *development.Room {
	l := r.lessons
	on = r.Taught(on)
	l.mu.Lock()
	if l.of == nil || l.on != on {
		l.on, l.of = on, make(map[string]func() *development.Room)
	}
	if l.of[species] == nil {
		l.of[species] = sync.OnceValue(func() *development.Room { return r.learn(species, on) })
	}
	lesson := l.of[species]
	l.mu.Unlock()
	return lesson()
}

// learn works out what the clutches of a species have taught by a day.
func (r *Rearing) learn(species string, on civil.Date) *development.Room {
	var taught []development.Clutch
	for i := range r.Collection.Clutches {
		if c := &r.Collection.Clutches[i]; c.Species == species && r.begun(c, on) {
			taught = append(taught, r.developing(c, on).Clutch)
		}
	}
	return r.models[species].Learn(taught)
}

// begun reports whether a clutch was laid by a day, or else seen by then.
func (r *Rearing) begun(c *collection.Clutch, on civil.Date) bool {
	since := r.Collection.Since(c.ID)
	return since.Known() && since <= on
}

// outlook gives the dates of a clutch in the light of what the others of its
// species have taught.
func (r *Rearing) outlook(c *collection.Clutch, k developing, on civil.Date) development.Outlook {
	room := r.Lesson(c.Species, on)
	if r.begun(c, r.Taught(on)) {
		room = room.Without(k.Clutch)
	}
	return r.models[c.Species].Outlook(k.Clutch, room)
}

// developing is what is known of a clutch, and where it stands in the file.
type developing struct {
	development.Clutch
	looksAt []strictyaml.Position // of the looks
	spelled []collection.Temperature
}

// developing gives what is known of a clutch by a day. The water is that of the
// tubs from its begin on, until something else was measured; of the air only what
// was measured is known.
func (r *Rearing) developing(c *collection.Clutch, on civil.Date) developing {
	seen := r.sightings(c, on)
	k := developing{Clutch: development.Clutch{Laid: c.Laid, Looks: seen.looks}, looksAt: seen.at}
	if set := r.Collection.Equipment.TadpoleTubs.WaterC; set.Known {
		k.Water = append(k.Water, development.Reading{From: r.Collection.Since(c.ID), C: set.Value})
	}
	for _, t := range r.Collection.Temperatures(c.ID) {
		if t.On > on {
			continue
		}
		k.spelled = append(k.spelled, t)
		if t.WaterC.Known {
			k.Water = append(k.Water, development.Reading{From: t.On, C: t.WaterC.Value})
		}
		if t.AirC.Known {
			k.Air = append(k.Air, development.Reading{From: t.On, C: t.AirC.Value})
		}
	}
	return k
}
