package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// temperatures compares what was measured in clutches that are running, and the
// set-point of the tubs, with the safe range of the species.
func (c *check) temperatures() {
	set := c.room.Collection.Equipment.TadpoleTubs.WaterC
	warned := make(map[string]bool)
	for i := range c.room.Collection.Clutches {
		clutch := &c.room.Collection.Clutches[i]
		safe := c.room.of(clutch.Species).profile.Safe
		if !safe.Known() || !c.room.running(clutch, c.on) {
			continue
		}
		for _, t := range c.room.Collection.Temperatures(clutch.ID) {
			if t.On <= c.on {
				c.measured(clutch, t, safe)
			}
		}
		if outside(set, safe) && !warned[clutch.Species] {
			warned[clutch.Species] = true
			c.warn(clutch.At, fmt.Sprintf("the tadpole tubs are set to %s, outside the safe range of %s for %s",
				degrees(set.Value, set.Value), degrees(safe.Low, safe.High), clutch.Species),
				"give these clutches a place of their own, or change equipment.tadpole_tubs.water_c")
		}
	}
}

func (c *check) measured(clutch *collection.Clutch, t collection.Temperature, safe species.Range) {
	for _, m := range []struct {
		what  string
		value collection.Given[float64]
	}{{"water", t.WaterC}, {"air", t.AirC}} {
		if outside(m.value, safe) {
			c.warn(t.At, fmt.Sprintf("%s at %s on %s is outside the safe range of %s for %s (clutch %s)",
				m.what, degrees(m.value.Value, m.value.Value), t.On, degrees(safe.Low, safe.High), clutch.Species, clutch.ID),
				"bring it back slowly, and ask a veterinarian when animals look unwell")
		}
	}
}

func outside(v collection.Given[float64], safe species.Range) bool {
	t := rounded(v.Value) // what is shown
	return v.Known && (t < safe.Low || t > safe.High)
}

// unsafe says where the water or the air of a clutch is by now outside the safe
// range of its species: by the last measurement up to a day, or of the water by
// the set-point where there is none. On land they do not mind the water.
func (r *Room) unsafe(c *collection.Clutch, inWater bool, on civil.Date) []doubt {
	safe := r.of(c.Species).profile.Safe
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
	var out []doubt
	for _, m := range []struct {
		what  string
		value collection.Given[float64]
		at    strictyaml.Position
	}{{"water", water, waterAt}, {"air", air, airAt}} {
		if outside(m.value, safe) && (inWater || m.what == "air") {
			out = append(out, doubt{m.at, fmt.Sprintf("clutch %s: the %s is at %s, outside the safe range of %s: bring it back slowly, and ask a veterinarian when animals look unwell",
				c.ID, m.what, degrees(m.value.Value, m.value.Value), degrees(safe.Low, safe.High))})
		}
	}
	return out
}
