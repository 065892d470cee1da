package collection

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// checkCapacities reports capacities of zero that a pairing needs.
func (r *reader) checkCapacities() {
	e := &r.c.Equipment
	rains := func(p *species.Profile) bool { _, ok := p.Phase(species.Rain); return ok }
	cools := func(p *species.Profile) bool { _, ok := p.Phase(species.Cooling); return ok }
	swims := func(p *species.Profile) bool { _, ok := p.Step(species.Tadpole); return ok }
	always := func(*species.Profile) bool { return true }
	for _, c := range [...]struct {
		capacity Given[int]
		needs    func(*species.Profile) bool
		keys     []string
	}{
		{e.RainChambers, rains, []string{"rain_chambers"}},
		{e.CoolingPlaces, cools, []string{"cooling_places"}},
		{e.TadpoleTubs.Count, swims, []string{"tadpole_tubs", "count"}},
		{e.FrogletBins.Count, always, []string{"froglet_bins", "count"}},
		{e.MinutesADay, always, []string{"minutes_a_day"}},
	} {
		if c.capacity.Known && c.capacity.Value == 0 {
			r.checkCapacity(c.keys, c.needs)
		}
	}
}

func (r *reader) checkCapacity(keys []string, needs func(*species.Profile) bool) {
	for i := range r.c.Pairings {
		if p, ok := r.c.Profile(r.c.Pairings[i].Species); ok && needs(p) {
			n := strictyaml.Value(r.doc.Root, "equipment")
			for _, key := range keys {
				n = strictyaml.Value(n, key)
			}
			r.errorAt(strictyaml.PositionOf(n),
				fmt.Sprintf("%s is 0, but %s needs it (line %s)", keys[0], r.called(subject{pairingKind, i}), line(r.c.Pairings[i].At)),
				"write how many there are, or remove the line: then they are not limited")
			return
		}
	}
}
