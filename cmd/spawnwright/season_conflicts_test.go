package main

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// TestConflictTexts: hundreds of pairings that are all wished for one female clash each with
// each, and nobody reads that beside an agenda.
func TestConflictTexts(t *testing.T) {
	for _, row := range []struct {
		clashes, told int
		last          string
	}{
		{0, 0, ""},
		{11, 11, "10"},
		{12, 11, "2 more are in the way; `spawnwright season` lists them"},
		{500, 11, "490 more are in the way; `spawnwright season` lists them"},
	} {
		list := make([]frogroom.Conflict, row.clashes)
		for i := range list {
			list[i].Message = strconv.Itoa(i)
		}
		told := conflictTexts(list)
		assert.Len(t, told, row.told)
		if row.told > 0 {
			assert.Equal(t, row.last, told[row.told-1])
		}
	}
}
