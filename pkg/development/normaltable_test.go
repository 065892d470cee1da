package development

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// Nieuwkoop and Faber 1994, Normal Table of Xenopus laevis, at 22 to 24 °C:
// stage 35/36 (hatching) at 50 hours, stage 45 (feeding) at 98 hours, stage 58
// (front legs out) on day 44, stage 66 (tail gone) on day 58.
func TestXenopusAgainstTheNormalTable(t *testing.T) {
	p, ok := species.Find("xenopus-laevis")
	require.True(t, ok)
	m := mustModel(t, p)
	for _, row := range []struct {
		stage Stage
		day   float64
	}{
		{Hatched, 50.0 / 24},
		{Feeding, 98.0 / 24},
		{FrontLegs, 44},
		{OutOfWater, 58},
	} {
		assert.InDelta(t, row.day, m.Until(row.stage).Quantile(0.5), 1, "%v", row.stage)
	}
}

// Whatever a built-in profile says, it makes a model, and the likely days rise.
func TestBuiltinProfiles(t *testing.T) {
	for _, p := range species.Builtin() {
		t.Run(p.ID, func(t *testing.T) {
			m := mustModel(t, p)
			last := 0
			for _, l := range links {
				d := m.Until(l.end)
				if !d.Known() {
					continue
				}
				assert.GreaterOrEqual(t, d.Quantile(0.5), last, "%v", l.end)
				last = d.Quantile(0.5)
			}
		})
	}
}
