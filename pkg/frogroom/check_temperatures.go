package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/internal/figures"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// temperatures compares what was measured in clutches that are running, and the
// set-point of the tubs, with the safe range of the species.
func (c *check) temperatures() {
	set := c.room.Collection.Equipment.TadpoleTubs.WaterC
	warned := make(map[string]bool)
	for i := range c.room.Collection.Clutches {
		clutch := &c.room.Collection.Clutches[i]
		safe := c.room.of(clutch.Species).Profile.Safe
		if !safe.Known() || !c.room.rearing.Running(clutch, c.on) {
			continue
		}
		for _, t := range c.room.Collection.Temperatures(clutch.ID) {
			if t.On <= c.on {
				c.measured(clutch, t, safe)
			}
		}
		if rearing.Outside(set, safe) && !warned[clutch.Species] {
			warned[clutch.Species] = true
			c.warn(clutch.At, fmt.Sprintf("the tadpole tubs are set to %s, outside the safe range of %s for %s",
				figures.Degrees(set.Value, set.Value), figures.Degrees(safe.Low, safe.High), clutch.Species),
				"give these clutches a place of their own, or change equipment.tadpole_tubs.water_c")
		}
	}
}

func (c *check) measured(clutch *collection.Clutch, t collection.Temperature, safe species.Range) {
	for _, m := range []struct {
		what  string
		value collection.Given[float64]
	}{{"water", t.WaterC}, {"air", t.AirC}} {
		if rearing.Outside(m.value, safe) {
			c.warn(t.At, fmt.Sprintf("%s at %s on %s is outside the safe range of %s for %s (clutch %s)",
				m.what, figures.Degrees(m.value.Value, m.value.Value), t.On, figures.Degrees(safe.Low, safe.High), clutch.Species, clutch.ID),
				"bring it back slowly, and ask a veterinarian when animals look unwell")
		}
	}
}
