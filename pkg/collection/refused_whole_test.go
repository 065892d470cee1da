package collection_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func TestReadRefusesWholeFiles(t *testing.T) {
	for _, row := range []struct {
		name, data string
		line       int
		want       string
	}{
		{"empty", "", 0, "the file is empty"},
		{"only blanks", " \n\n", 0, "the file is empty"},
		{"only a comment", "# nothing\n", 0, "nothing in the file"},
		{"a list", "- id: A\n", 1, "the file is a set of keys and values, not a list"},
		{"a text", "animals\n", 1, "the file is a set of keys and values, not"},
		{"anchor", "keeper: &k x\n", 1, "anchors (&k) are not used"},
		{"alias", "keeper: &k x\nholidays: *k\n", 0, "not used"},
		{"tag", "keeper: !!str 7\n", 1, "tags (!!str) are not used"},
		{"tab", "animals:\n\t- id: A\n", 2, "a tab is used to indent"},
		{"second document", "keeper: a\n---\nkeeper: b\n", 2, "a second YAML document"},
		{"not UTF-8", "keeper: a\nholidays: \xff\n", 2, "not valid UTF-8"},
		{"control character", "keeper: a\x00b\n", 1, "control character U+0000"},
		{"open quote", "keeper: \"a\n", 1, ""},
		{"too large", "#" + string(bytes.Repeat([]byte("x"), strictyaml.MaxBytes)), 0, "more than the"},
	} {
		t.Run(row.name, func(t *testing.T) {
			c, problems := collection.Read("f.yaml", []byte(row.data))
			assert.Nil(t, c)
			if assert.NotEmpty(t, problems) {
				assert.Equal(t, strictyaml.Error, problems[0].Severity)
				assert.Contains(t, problems[0].Message, row.want)
				assert.NotEmpty(t, problems[0].Cure)
				if row.line > 0 {
					assert.Equal(t, row.line, problems[0].Line)
				}
			}
		})
	}
}
