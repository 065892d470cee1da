package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pictures are those of docs/pictures, with the commands that make them. Of the
// lineage it is what Graphviz draws from, for each version of that draws a little
// otherwise; `make pictures` draws it.
var pictures = map[string]string{
	"season.svg":  "season",
	"kinship.svg": "kin",
	"horizon.svg": "horizon --runs 200",
	"lineage.dot": "lineage",
}

// TestPictures fails when a picture of the documentation is not what the program
// makes of the working example. `make pictures` makes them anew.
func TestPictures(t *testing.T) {
	t.Chdir("../..")
	for name, command := range pictures {
		t.Run(name, func(t *testing.T) {
			kept := filepath.Join("docs", "pictures", name)
			to := filepath.Join(t.TempDir(), name)
			if *update {
				to = kept
			}
			args := append(strings.Fields(command), "-q", "-f", "examples/working/collection.yaml", "--on", "2027-02-01", "-o", to)
			var said bytes.Buffer
			require.Zero(t, run(args, strings.NewReader(""), &said, &said), said.String())
			made, err := os.ReadFile(to)
			require.NoError(t, err)
			want, err := os.ReadFile(kept)
			require.NoError(t, err)
			assert.True(t, bytes.Equal(want, made), "%s is another one now: look at it, and run make pictures", kept)
		})
	}
}
