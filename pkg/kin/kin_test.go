package kin_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/parentage"
)

// ancestry is that of a collection that has to be good; a line with CLOCKWORK stands
// for an invented species of which nothing is known.
func ancestry(t testing.TB, text string) *kin.Ancestry {
	t.Helper()
	text = strings.ReplaceAll(text, "- CLOCKWORK\n", "- {id: clockwork, name: Rana horologia, source: invented}\n")
	c, problems := collection.Read("room.yaml", []byte(text))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	return a
}

// basic is two males and two females that are related to nobody, with more below.
const basic = `
species:
  - CLOCKWORK
animals:
  - {id: A, name: Anton, species: clockwork, sex: male, acquired: 2020-01-01}
  - {id: B, species: clockwork, sex: male, acquired: 2020-01-01}
  - {id: D, name: Dora, species: clockwork, sex: female, acquired: 2020-01-01}
  - {id: E, species: clockwork, sex: female, acquired: 2020-01-01}
`

func readTable(text string) (*kin.Ancestry, error) {
	return kin.ReadTable(strings.NewReader(text), parentage.Options{})
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func asJSON(t testing.TB, v any) string {
	t.Helper()
	data, err := json.Marshal(v)
	require.NoError(t, err)
	return string(data)
}
