package development

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestStageWords(t *testing.T) {
	words := []string{"laid", "hatched", "feeding", "hind-legs", "toes", "front-legs", "out-of-water", "eating", "sale-ready"}
	for i, w := range words {
		s, ok := ParseStage(w)
		assert.True(t, ok, w)
		assert.Equal(t, Stage(i), s, w)
		assert.Equal(t, w, s.String())
	}
	for _, w := range []string{"", "Hatched", "hatched ", "front legs", "froglet"} {
		_, ok := ParseStage(w)
		assert.False(t, ok, "%q", w)
	}
	assert.Equal(t, "Stage(9)", Stage(9).String())
	assert.Equal(t, "Stage(-1)", Stage(-1).String())
}

func TestFromGosner(t *testing.T) {
	for _, row := range []struct {
		first, last int
		want        Stage
	}{
		{1, 19, Laid}, // embryo
		{20, 24, Hatched},
		{25, 25, Feeding},
		{26, 36, HindLegs},
		{37, 41, Toes},
		{42, 45, FrontLegs},
		{46, 46, OutOfWater},
	} {
		for n := row.first; n <= row.last; n++ {
			assert.Equal(t, row.want, FromGosner(n), "Gosner %d", n)
		}
	}
	assert.Panics(t, func() { FromGosner(0) })
	assert.Panics(t, func() { FromGosner(47) })
}
