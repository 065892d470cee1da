// Package departure says who of a collection may leave for another keeper, when, and
// with what in the parcel; which young go together to somebody who will breed them;
// and what goes with an animal on a card.
//
//	leaving, err := register.Ready(today, departure.Wish{})
//	card, err := register.Card("AC-29", today)
//
// Welfare comes first: a date alone is never enough, whoever is ill or in quarantine
// stays, and what is not recorded is asked for.
package departure

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/parcel"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// Register is the animals and clutches of a collection, with what speaks for and against
// their leaving. All of it is given but for Shipping, whose zero value knows no holidays.
// It can be used by several goroutines at once.
type Register struct {
	Collection *collection.Collection
	Ancestry   *kin.Ancestry
	Rearing    *rearing.Rearing   // of the clutches
	Breeders   *breeders.Breeders // the rules about quarantine and illness
	Shipping   calendar.Shipping  // the days on which parcels are handed over
}

// Wish says whose leaving is asked for, and what is known of the way.
type Wish struct {
	IDs      []string        // animals and clutches; none for all young
	Species  string          // only these; empty for all
	Forecast parcel.Forecast // of the places on the way
	// Group asks for the least related young for a buyer: how many, 0 for none.
	Group int
	Nodes int // of the search for a group, see [pairing.Effort]; 0 is what is usual
}

// WishError is a wish for a group of a size that none has.
type WishError struct{ Message string }

func (e *WishError) Error() string { return e.Message }

// Report says which young may leave, and when.
type Report struct {
	On     civil.Date `json:"on"`
	Young  []Young    `json:"young"` // animals, then clutches, each in the order of the file
	Groups []Group    `json:"groups,omitempty"`
	// PackSource is who says at which temperatures a pack goes into a parcel, and
	// when nothing is sent; empty where no weather was looked at.
	PackSource string `json:"pack_source,omitempty"`
	// Warnings are doubts about all of it, and the usual caution.
	Warnings []string `json:"warnings"`
}

// readyCaution is shown with every answer.
const readyCaution = "whoever looks ill stays, and a veterinarian decides; the rules of the carrier, local codes and permits come first"

// Ready says which young may leave, which are held and why, and for each that
// may, or may once it is old enough, the next days on which it can travel. Young
// are the animals in the room that are promised or too young to be bred, and the
// clutches of which some have left the water; whoever is named is told of in any
// case. The error is a *[collection.UnknownError] or a *[WishError].
func (r *Register) Ready(on civil.Date, w Wish) (Report, error) {
	if w.Group < 0 || w.Group > mostGroup {
		return Report{}, &WishError{fmt.Sprintf("a group has 1 to %d young", mostGroup)}
	}
	if _, ok := r.Collection.Profile(w.Species); w.Species != "" && !ok {
		return Report{}, r.Collection.Unknown("species", w.Species)
	}
	animals, clutches, err := r.leaving(on, w)
	if err != nil {
		return Report{}, err
	}
	out := Report{On: on, Young: []Young{}}
	for _, i := range animals {
		out.Young = append(out.Young, r.animalDeparture(i, on, w.Forecast))
	}
	for _, c := range clutches {
		out.Young = append(out.Young, r.clutchDeparture(c, on, w.Forecast))
	}
	if w.Group > 0 {
		out.Groups = r.buyerGroups(out.Young, w)
	}
	if slices.ContainsFunc(out.Young, Young.weathered) {
		out.PackSource = parcel.BandSource
	}
	out.Warnings = r.readyWarnings(out.Young)
	return out, nil
}

// leaving gives the animals and clutches that are asked for.
func (r *Register) leaving(on civil.Date, w Wish) (animals []int, clutches []*collection.Clutch, err error) {
	for _, id := range w.IDs {
		_, isAnimal := r.Collection.Animal(id)
		_, isClutch := r.Collection.Clutch(id)
		if !isAnimal && !isClutch {
			return nil, nil, r.Collection.Unknown("animal or clutch", id)
		}
	}
	named := func(id string) bool { return slices.Contains(w.IDs, id) }
	for i := range r.Collection.Animals {
		a := &r.Collection.Animals[i]
		if w.Species != "" && a.Species != w.Species {
			continue
		}
		if named(a.ID) || len(w.IDs) == 0 && r.Ancestry.Status(i, on) == collection.Here && (a.Promised != "" || pairing.TooYoung(r.Breeders.Terms(on), r.Breeders.Animals([]string{a.ID}, on)[0])) {
			animals = append(animals, i)
		}
	}
	for i := range r.Collection.Clutches {
		c := &r.Collection.Clutches[i]
		if w.Species != "" && c.Species != w.Species {
			continue
		}
		if named(c.ID) || len(w.IDs) == 0 && r.Rearing.Running(c, on) && r.onLand(c.ID, on) {
			clutches = append(clutches, c)
		}
	}
	return animals, clutches, nil
}

// onLand reports whether some of a clutch were seen out of the water, and not
// all are dead or gone.
func (r *Register) onLand(clutch string, on civil.Date) bool {
	if n := r.Rearing.Counted(clutch, on); n != nil && *n == 0 {
		return false
	}
	return slices.ContainsFunc(r.Rearing.Looks(clutch, on), func(l development.Look) bool {
		return l.Stage >= development.OutOfWater && l.Kind != development.NotYet
	})
}

// readyWarnings says what was not looked at.
func (r *Register) readyWarnings(young []Young) []string {
	var out []string
	unknown := func(d parcel.Day) bool { return d.Outside == nil }
	if slices.ContainsFunc(young, func(d Young) bool { return d.Travel != nil && slices.ContainsFunc(d.Travel.Days, unknown) }) {
		out = append(out, "the weather on the way is not known for all of these days: look at it at both ends before anything is packed")
	}
	if r.Shipping.Holidays == nil {
		out = append(out, "no public holiday is known, for the file has no holidays")
	}
	return append(out, readyCaution)
}
