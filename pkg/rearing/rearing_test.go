package rearing_test

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// basic is the clockwork species and its founders, with more below.
const basic = clockwork.Basic

// room gives the clutches of a collection that has to be good, see [clockwork.Spelled].
func room(t testing.TB, text string) *rearing.Rearing {
	t.Helper()
	c, problems := collection.Read("room.yaml", []byte(clockwork.Spelled(text)))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	models := make(map[string]*development.Model)
	for _, p := range c.Species {
		models[p.ID], err = rearing.ModelOf(p)
		require.NoError(t, err)
	}
	return rearing.New(c, a, models)
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func exactly(text string) civil.Window { return civil.Exactly(day(text)) }

func asJSON(t testing.TB, v any) string {
	t.Helper()
	data, err := json.Marshal(v)
	require.NoError(t, err)
	return string(data)
}

func TestNeedsAModel(t *testing.T) {
	r := room(t, basic)
	assert.PanicsWithValue(t, `rearing: no model of the species "clockwork"`, func() { rearing.New(r.Collection, r.Ancestry, nil) })
	assert.Empty(t, r.Looks("nothing", day("2027-01-01")))
}
