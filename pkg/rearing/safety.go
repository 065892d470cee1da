package rearing

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/internal/figures"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Outside reports whether a temperature, as it is shown, is outside a safe range.
func Outside(v collection.Given[float64], safe species.Range) bool {
	t := figures.Rounded(v.Value) // what is shown
	return v.Known && (t < safe.Low || t > safe.High)
}

// unsafe says where the water or the air of a clutch is by now outside the safe
// range of its species: by the last measurement up to a day, or of the water by
// the set-point where there is none. On land they do not mind the water.
func (r *Rearing) unsafe(c *collection.Clutch, inWater bool, on civil.Date) []Doubt {
	safe := r.Collection.MustProfile(c.Species).Safe
	if !safe.Known() {
		return nil
	}
	water, air := r.Collection.Equipment.TadpoleTubs.WaterC, collection.Given[float64]{}
	waterAt, airAt := c.At, c.At
	for _, t := range r.Collection.Temperatures(c.ID) {
		if t.On <= on && t.WaterC.Known {
			water, waterAt = t.WaterC, t.At
		}
		if t.On <= on && t.AirC.Known {
			air, airAt = t.AirC, t.At
		}
	}
	var out []Doubt
	for _, m := range []struct {
		what  string
		value collection.Given[float64]
		at    strictyaml.Position
	}{{"water", water, waterAt}, {"air", air, airAt}} {
		if Outside(m.value, safe) && (inWater || m.what == "air") {
			out = append(out, Doubt{m.at, fmt.Sprintf("clutch %s: the %s is at %s, outside the safe range of %s: bring it back slowly, and ask a veterinarian when animals look unwell",
				c.ID, m.what, figures.Degrees(m.value.Value, m.value.Value), figures.Degrees(safe.Low, safe.High))})
		}
	}
	return out
}
