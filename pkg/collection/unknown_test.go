package collection_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

func TestUnknown(t *testing.T) {
	c, problems := collection.Read("room.yaml", []byte(`
animals:
  - {id: Bram, species: hyla-cinerea}
  - {id: Ulla, species: hyla-cinerea}
clutches:
  - {id: clutch-1, laid: 2026-03-01, species: hyla-cinerea}
pairings:
  - {id: pairing-1, sire: Bram, dam: Ulla, start: 2027-02-01}
`))
	require.NotNil(t, c, "%v", problems)
	for _, row := range []struct{ kind, id, want string }{
		{"animal", "Brem", `there is no animal "Brem"; did you mean "Bram"?`},
		{"animal", "clutch-2", `there is no animal "clutch-2"`},
		{"clutch", "clutch-2", `there is no clutch "clutch-2"; did you mean "clutch-1"?`},
		{"animal or clutch", "Ula", `there is no animal or clutch "Ula"; did you mean "Ulla"?`},
		{"animal or clutch", "clutch1", `there is no animal or clutch "clutch1"; did you mean "clutch-1"?`},
		{"pairing", "pairing1", `there is no pairing "pairing1"; did you mean "pairing-1"?`},
		{"species", "hyla-cinera", `there is no species "hyla-cinera"; did you mean "hyla-cinerea"?`},
	} {
		assert.EqualError(t, c.Unknown(row.kind, row.id), row.want)
	}
	assert.PanicsWithValue(t, `collection: there is no kind "tank"`, func() { _ = c.Unknown("tank", "1") })
}
