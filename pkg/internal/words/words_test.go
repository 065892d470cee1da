package words_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/internal/words"
)

func TestWords(t *testing.T) {
	assert.Equal(t, "front legs", words.Stage("front-legs"))
	assert.Equal(t, "warm-up", words.Stage("warm-up"), "one word")
	assert.Equal(t, "eggs", words.Planned("laid"))
	assert.Equal(t, "out of water", words.Planned("out-of-water"))
	assert.Equal(t, "1 day", words.Days(1))
	assert.Equal(t, "0 days", words.Days(0))
	assert.Equal(t, "A, B and C", words.And([]string{"A", "B", "C"}))
	assert.Equal(t, "A", words.And([]string{"A"}))
	assert.Empty(t, words.And(nil))
	assert.Equal(t, "C-1 (tub 2)", words.At("C-1", "tub 2"))
	assert.Equal(t, "C-1", words.At("C-1", ""))
}
