package almanac

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// target adds the day of a target and the last day on which a parcel can be
// handed over to arrive by it.
func (e *events) target(t collection.Target) {
	e.about = change{last: e.unchanged}
	e.add(calendar.Event{
		Key: Key("target", t.Name), Span: civil.Day(t.On), Category: TargetCategory,
		Summary: fmt.Sprintf("%s: %d froglets of %s wanted", t.Name, t.Froglets, t.Species),
	})
	if last, ok := e.Shipping.LastToArrive(t.On); ok {
		e.add(calendar.Event{
			Key: Key("target", t.Name, "last parcel"), Span: civil.Day(last), Category: ParcelCategory,
			Summary:     fmt.Sprintf("last day to hand over a parcel for %s", t.Name),
			Description: shippingCaution,
		})
	}
}

// shippingCaution goes with every day on which a parcel could be sent.
const shippingCaution = "Weekday and holidays only: look at the forecast at both ends, the carrier's rules for live animals, and permits (CITES, local law) before sending."
