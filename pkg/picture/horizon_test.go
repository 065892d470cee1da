package picture_test

import (
	"encoding/xml"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/horizon"
	"github.com/spawnwright/spawnwright/pkg/picture"
)

func ahead(ways ...string) frogroom.Horizon {
	s := horizon.Prospect{Species: "hyla-cinerea", Runs: 7}
	for _, w := range ways {
		way := horizon.Way{Way: w}
		for year := range 3 {
			down := float64(year) / 50
			way.Years = append(way.Years, horizon.Year{
				Year:          year,
				GeneDiversity: horizon.Band{Low: 0.88 - 2*down, Mean: 0.88 - down, High: 0.88},
				Inbreeding:    horizon.Band{Low: 0, Mean: down, High: 2 * down},
			})
		}
		s.Ways = append(s.Ways, way)
	}
	return frogroom.Horizon{Goal: 0.9, Species: []horizon.Prospect{s}}
}

func TestHorizon(t *testing.T) {
	text := string(picture.Horizon("Lindenhof <frogs>", ahead("plan", "random")))
	wellFormed(t, text)
	assert.Contains(t, text, "Lindenhof &lt;frogs&gt;: The lines in the years ahead")
	assert.Contains(t, text, "hyla-cinerea, plan: in year 2 gene diversity 0.8400 (80 % from 0.8000 to 0.8800), inbreeding 0.0400.")
	assert.Equal(t, 2*2*2, strings.Count(text, "<path"), "a line and an area for each way, twice")
	assert.Equal(t, 1, strings.Count(text, ">goal 0.9<"), "the goal is one of gene diversity")
	for _, v := range []string{"0.80", "0.82", "0.84", "0.86", "0.88", "0.90"} {
		assert.Contains(t, text, ">"+v+"<", "the axis goes from the lowest band to the goal")
	}
}

func TestHorizonWithout(t *testing.T) {
	h := ahead()
	h.Species[0].NoFuture = "there is no female"
	text := string(picture.Horizon("", h))
	wellFormed(t, text)
	assert.Contains(t, text, "There is no line whose years ahead could be played.")
	assert.Contains(t, text, "hyla-cinerea: there is no female.")
}

func wellFormed(t *testing.T, text string) {
	t.Helper()
	require.NoError(t, xml.Unmarshal([]byte(text), new(struct {
		XMLName xml.Name `xml:"http://www.w3.org/2000/svg svg"`
	})))
}
