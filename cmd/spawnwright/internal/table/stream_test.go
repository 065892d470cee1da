package table_test

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
)

// A stream and a table of the same cells are the same CSV to the byte.
func TestStream(t *testing.T) {
	cell := rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"", "AC-14", "-1", "-a", "=1+1", "a,b", "a b", " a", `\.`, `q"`, "line\nbreak", "＝1"}), rapid.StringMatching(`[ -~]{0,4}`))
	value := rapid.SampledFrom([]float64{0, 1, 0.25, 1. / 3, 1e-9, 12})
	rapid.Check(t, func(t *rapid.T) {
		whole := &table.Table{Columns: []table.Column{{Name: "id"}, {Name: "mean kinship"}, {Name: "sire"}}}
		stream := table.NewStream(0, "id", "mean kinship", "sire")
		for range rapid.IntRange(0, 5).Draw(t, "rows") {
			id, x, sire := cell.Draw(t, "id"), value.Draw(t, "x"), cell.Draw(t, "sire")
			whole.Add(id, strconv.FormatFloat(x, 'g', -1, 64), sire)
			stream.Text(id)
			stream.Number(x)
			stream.Text(sire)
			stream.End()
		}
		var got testWriter
		require.NoError(t, whole.CSV(&got))
		require.Equal(t, string(got), string(stream.Bytes()))
	})
}

type testWriter []byte

func (w *testWriter) Write(p []byte) (int, error) { *w = append(*w, p...); return len(p), nil }
