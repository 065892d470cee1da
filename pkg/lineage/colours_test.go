package lineage

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/internal/eyes"
)

// The grounds get darker in steps that anybody sees, also in a print without colour,
// and what is written on them can be read.
func TestGroundsCanBeSeen(t *testing.T) {
	for i, g := range grounds {
		for _, text := range []string{"#000000", goneText} {
			assert.GreaterOrEqual(t, eyes.Contrast(text, g.colour), 4.5, "%s on %s", text, g.colour)
		}
		if i == 0 {
			continue
		}
		for _, e := range eyes.Eyes {
			assert.Greater(t, e.Distance(grounds[i-1].colour, g.colour), 4.0, "%s and %s: %s", grounds[i-1].colour, g.colour, e.Name)
		}
	}
	assert.GreaterOrEqual(t, eyes.Contrast(goneEdge, "#ffffff"), 3.0, "an edge, as WCAG 2.2, 1.4.11")
	assert.GreaterOrEqual(t, eyes.Contrast("#000000", clutchGround), 4.5)
}
