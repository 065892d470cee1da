package figures_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/internal/figures"
)

func TestFigures(t *testing.T) {
	assert.Equal(t, "7", figures.Plain(7))
	assert.Equal(t, "7.1", figures.Plain(7.1))
	assert.Equal(t, "7.13", figures.Plain(7.126), "two places")
	assert.Equal(t, "0.3", figures.Plain(0.3004))
	assert.Equal(t, "24 to 28 °C", figures.Degrees(24, 28))
	assert.Equal(t, "24 °C", figures.Degrees(24, 24))
	assert.Equal(t, "0.3", figures.Span(0.3, 0.3004), "no two ends that are shown alike")
	assert.Equal(t, 21.46, figures.Rounded(21.4567))
}
