package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Clutches gives all clutches that run, see [rearing.Rearing.Clutches].
func (r *Room) Clutches(on civil.Date) []rearing.Clutch {
	mustKnow(on)
	return r.rearing.Clutches(on)
}

// Clutch gives one clutch, also when it has ended. The error is a
// *[collection.UnknownError].
func (r *Room) Clutch(id string, on civil.Date) (rearing.Clutch, error) {
	mustKnow(on)
	return r.rearing.Clutch(id, on)
}

// ClutchReport gives all that can be told of a clutch, also when it has ended. The
// error is a *[collection.UnknownError].
func (r *Room) ClutchReport(id string, on civil.Date) (rearing.Report, error) {
	mustKnow(on)
	return r.rearing.Report(id, on)
}
