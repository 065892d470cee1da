package collection_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Of a large list only the places are kept, and an entry is read again for a
// check that comes late. One entry over several lines makes all be kept: both
// must find the same in the same places.
func TestReadLargeListsFindTheSame(t *testing.T) {
	var animals, clutches, diary strings.Builder
	for i := range 70 {
		fmt.Fprintf(&animals, "  - {id: A%d, species: hyla-cinerea, note: \"ä, %d\"}\n", i, i)
		fmt.Fprintf(&clutches, "  - {id: C%d, laid: 2026-01-01, dam: A%d}\n", i, i)
		fmt.Fprintf(&diary, "  - {on: 2026-02-01, clutch: C%d, count: 9}\n", i)
	}
	animals.WriteString(`  - {id: B1, name: "ö", species: hyla-cinerea, sire: [A1, nobody], dam: A2, hatched: 2020-01-01, died: 2019-01-01}
  - {id: B2, species: dendrobates-tinctorius, sire: A1, clutch: C3, weight: 5}
  - {id: B3, species: hyla-cinerea, clutch: B1, wieght_g: 3}
  - {id: B1, species: hyla-cinerea, sex: femal}
`)
	clutches.WriteString(`  - {id: D1, dam: A1}
  - {id: D2, laid: 2026-01-01, sire: D2, dam_mix: one, pairing: "ü"}
  - {id: D3, laid: 2026-01-01}
`)
	diary.WriteString(`  - {on: 2025-02-01, clutch: C1, saw: hatched}
  - {on: 2026-02-01, place: "é", animal: B2, water_c: 24}
  - {on: 2026-02-30, clutch: nothing, losses: 1000}
  - {on: 2026-03-01, animal: A1, hold: health, until: 2026-02-01}
`)
	read := func(format string) []string {
		more := func(a, b string) string { return fmt.Sprintf(format, a, b) }
		_, problems := collection.Read("f", []byte("keeper: K\nanimals:\n"+more("id: A99", "species: hyla-cinerea")+animals.String()+
			"clutches:\n"+more("id: C99", "laid: 2026-01-01")+clutches.String()+
			"diary:\n"+more("on: 2026-02-01", "place: x, note: y")+diary.String()))
		return plain(problems)
	}
	byLine, whole := read("  - {%s, %s}\n\n"), read("  - {%s,\n     %s}\n")
	require.Greater(t, len(byLine), 15)
	assert.Empty(t, cmp.Diff(whole, byLine))
}

// plain gives problems without the lines that they show.
func plain(ds strictyaml.Diagnostics) (out []string) {
	for _, d := range ds {
		out = append(out, d.String())
	}
	return out
}
