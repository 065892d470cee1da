package frogroom

import (
	"fmt"
	"math"
	"strconv"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// tolerance is how far the water may be from the temperatures of a profile
// before its windows are doubted, °C.
const tolerance = 1.0

// warmthDoubts says so when a clutch stands clearly outside the temperatures at
// which the profile's lengths hold: by the last measurement up to a day, or by
// the set-point of the tubs where there is none.
func (r *Room) warmthDoubts(c *collection.Clutch, on civil.Date) []string {
	step, ok := r.of(c.Species).profile.Step(species.Tadpole)
	set := r.Collection.Equipment.TadpoleTubs.WaterC
	water, where := set, "the tubs are set to "+degrees(set.Value, set.Value)
	for _, t := range r.Collection.Temperatures(c.ID) {
		if t.WaterC.Known && t.On <= on {
			water, where = t.WaterC, fmt.Sprintf("the water was at %s on %s", degrees(t.WaterC.Value, t.WaterC.Value), t.On)
		}
	}
	if !water.Known || !ok || !step.AtC.Known() {
		return nil
	}
	direction := ""
	switch {
	case water.Value < step.AtC.Low-tolerance:
		direction = "later"
	case water.Value > step.AtC.High+tolerance:
		direction = "earlier"
	default:
		return nil
	}
	return []string{fmt.Sprintf("clutch %s: the windows hold at %s, but %s: expect what is ahead %s than shown",
		c.ID, degrees(step.AtC.Low, step.AtC.High), where, direction)}
}

func degrees(low, high float64) string { return span(low, high) + " °C" }

// span writes a range of numbers, one number where both ends are the same.
func span(low, high float64) string {
	if plain(low) == plain(high) {
		return plain(low)
	}
	return plain(low) + " to " + plain(high)
}

// plain writes a number with up to two places.
func plain(x float64) string { return strconv.FormatFloat(rounded(x), 'f', -1, 64) }

func rounded(x float64) float64 { return math.Round(x*100) / 100 }
