package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// began gives the phases of a pairing that have begun by a day.
func (r *Room) began(p *collection.Pairing, on civil.Date) []season.Began {
	began := r.recorded(p, on)
	if rain, _, ok := r.presumedRain(p, on); ok {
		began = append(began, season.Began{Phase: season.Rain, On: rain})
	}
	return began
}

// recorded gives what the diary says of it: nothing of a wish, whatever it is
// called.
func (r *Room) recorded(p *collection.Pairing, on civil.Date) []season.Began {
	if !r.written(p) {
		return nil
	}
	var began []season.Began
	for _, b := range r.Collection.Began(p.ID) {
		if b.On <= on {
			began = append(began, season.Began{Phase: string(b.Phase), On: b.On})
		}
	}
	return began
}

// presumedRain gives the first night of a rain of which nothing is recorded, if
// the first clutch of the pairing was laid by a day, and when that was: the
// likely number of nights before the eggs, but not before the phases that are
// recorded and cannot have begun after the eggs.
func (r *Room) presumedRain(p *collection.Pairing, on civil.Date) (rain, laid civil.Date, ok bool) {
	days := r.laid[p.ID]
	if n, _ := upTo(on, days); n == 0 || !r.written(p) {
		return 0, 0, false
	}
	laid = days[0]
	b := r.of(p.Species)
	rain = laid
	if b.Eggs.Known() {
		rain = laid.Add(-b.Eggs.Quantile(0.5))
	}
	inCycle := false
	for _, ph := range b.Phases {
		inCycle = inCycle || ph.Name == season.Rain
	}
	for _, began := range r.recorded(p, on) {
		if began.Phase == season.Rain || began.Phase == season.Rest {
			return 0, 0, false
		}
		rain = max(rain, min(began.On, laid))
	}
	return rain, laid, inCycle
}

// written reports whether a pairing stands in the file.
func (r *Room) written(p *collection.Pairing) bool {
	q, ok := r.Collection.Pairing(p.ID)
	return ok && p == q
}
