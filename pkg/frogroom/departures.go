package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/departure"
)

// Ready says which young may leave and when, see [departure.Register.Ready]. The error is
// a *[collection.UnknownError] or a *[departure.WishError].
func (r *Room) Ready(on civil.Date, w departure.Wish) (departure.Report, error) {
	mustKnow(on)
	return r.leaving.Ready(on, w)
}

// Card gives what goes with an animal, or with the young of a clutch, when it leaves. The
// error is a *[collection.UnknownError].
func (r *Room) Card(id string, on civil.Date) (departure.Card, error) {
	mustKnow(on)
	return r.leaving.Card(id, on)
}
