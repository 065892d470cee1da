package civil_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

func TestWindow(t *testing.T) {
	day := civil.Of(2027, time.March, 1)
	for _, row := range []struct {
		name           string
		window         civil.Window
		known, certain bool
		text           string
	}{
		{"unknown", civil.Window{}, false, false, "unknown"},
		{"happened", civil.Exactly(day), true, true, "2027-03-01"},
		{"expected", civil.Window{Early: day, Likely: day.Add(4), Late: day.Add(30)}, true, false, "2027-03-01 / 2027-03-05 / 2027-03-31"},
		{"early and likely the same", civil.Window{Early: day, Likely: day, Late: day.Add(1)}, true, false, "2027-03-01 / 2027-03-01 / 2027-03-02"},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.Equal(t, row.known, row.window.Known())
			assert.Equal(t, row.certain, row.window.Certain())
			assert.Equal(t, row.text, row.window.String())
		})
	}
}

func TestWindowAdd(t *testing.T) {
	day := civil.Of(2027, time.March, 1)
	w := civil.Window{Early: day, Likely: day.Add(2), Late: day.Add(6)}
	assert.Equal(t, civil.Window{Early: day.Add(-3), Likely: day.Add(-1), Late: day.Add(3)}, w.Add(-3))
	assert.Equal(t, civil.Window{}, civil.Window{}.Add(5), "unknown stays unknown")
}
