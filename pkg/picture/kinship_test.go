package picture_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/picture"
	"github.com/spawnwright/spawnwright/pkg/svg"
)

// Two sisters and their brother: he is not to be paired with either, one of
// whom is named to break out of the picture.
func family(hostile string) kin.Square {
	return kin.Square{
		Species: "hyla-cinerea", Warn: 0.0625, Refuse: 0.125,
		Animals: []kin.SquareAnimal{{ID: "H1", Name: hostile, Sex: collection.Female}, {ID: "H2", Sex: collection.Female}, {ID: "H3", Sex: collection.Male}, {ID: "H4", Sex: collection.Male}},
		Kinship: [][]float64{{0.5, 0.25, 0.25, 0.0625}, {0.25, 0.5, 0.25, 0}, {0.25, 0.25, 0.5, 0}, {0.0625, 0, 0, 0.5}},
	}
}

func TestKinship(t *testing.T) {
	const hostile = `<script>"&'</script>`
	text := string(picture.Kinship([]kin.Square{family(hostile)}))
	assert.Contains(t, text, "hyla-cinerea: 4 animals, the closest are H1 and H2 with 0.2500; pairs not to be made: 2.")
	assert.Contains(t, text, "H1 &lt;script&gt;&quot;&amp;&#39;&lt;/script&gt; f", "the name as text, cut to its width")
	assert.NotContains(t, text, "<script")
	assert.Equal(t, 2*2*2, strings.Count(text, "<line"), "a cross is two lines; two pairs, on both sides")
	assert.Equal(t, 2, strings.Count(text, "<circle"), "one pair is warned about")
	assert.Equal(t, 6, strings.Count(text, ">0.250<"))
	assert.Equal(t, 4, strings.Count(text, ">0.500<"))
	assert.Equal(t, 1+16+1, strings.Count(text, "<rect"), "ground, cells, frame")
	assert.Contains(t, string(picture.Kinship(nil)), "No animal is in the room.")
}

func TestKinshipOfATable(t *testing.T) {
	s := family("")
	s.Species, s.Warn, s.Refuse = "", 0, 0
	text := string(picture.Kinship([]kin.Square{s}))
	assert.NotContains(t, text, "<line", "no rule is known, so nothing is forbidden")
	assert.NotContains(t, text, "A cross")
}

// Four animals take less room than the lines below them.
func TestKinshipLegendFits(t *testing.T) {
	text := string(picture.Kinship([]kin.Square{family("")}))
	width := 0.0
	_, err := fmt.Sscanf(text[strings.Index(text, `viewBox="`):], `viewBox="0 0 %g`, &width)
	require.NoError(t, err)
	last := "A cross: not to be paired, the young would be inbred to 0.125 or more. A dot: warned about from 0.0625. Two of one sex have no mark."
	assert.Contains(t, text, last)
	assert.GreaterOrEqual(t, width, svg.Width(last, 0)+2*16)
}

func BenchmarkKinship200(b *testing.B) {
	s := kin.Square{Species: "hyla-cinerea", Warn: 0.0625, Refuse: 0.125}
	for i := range 200 {
		s.Animals = append(s.Animals, kin.SquareAnimal{ID: "H", Sex: []collection.Sex{collection.Male, collection.Female}[i%2]})
		row := make([]float64, 200)
		for j := range row {
			row[j] = float64((i*j)%33) / 64
		}
		s.Kinship = append(s.Kinship, row)
	}
	for b.Loop() {
		picture.Kinship([]kin.Square{s})
	}
}
