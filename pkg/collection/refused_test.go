package collection_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// A refusal is a file with something wrong, and all that is said about it.
type refusal struct {
	name   string
	reason string // why the reader must say so
	yaml   string
	want   []string // in order, without the name of the file
}

// refuse reads the files of a table and compares all that is said about them.
func refuse(t *testing.T, table []refusal) {
	t.Helper()
	for _, row := range table {
		t.Run(row.name, func(t *testing.T) {
			text := strings.TrimPrefix(row.yaml, "\n")
			c, problems := collection.Read("f", []byte(text))
			var got []string
			for _, p := range problems {
				got = append(got, strings.TrimPrefix(p.String(), "f:"))
				if p.Line > 0 {
					assert.Equal(t, strings.Split(text, "\n")[p.Line-1], p.Excerpt, "the excerpt is the line itself")
				}
			}
			if diff := cmp.Diff(row.want, got); diff != "" {
				t.Errorf("%s (-want +got):\n%s", row.reason, diff)
			}
			assert.Equal(t, problems.HasErrors(), c == nil, "a collection is given exactly when there is no error")
		})
	}
}
