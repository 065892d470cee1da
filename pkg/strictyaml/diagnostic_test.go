package strictyaml_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func TestDiagnosticString(t *testing.T) {
	for _, row := range []struct {
		name string
		d    strictyaml.Diagnostic
		want string
	}{
		{"error", strictyaml.Diagnostic{File: "f", Line: 4, Column: 2, Severity: strictyaml.Error, Message: "m", Cure: "c"}, "f:4:2: m; c"},
		{"warning", strictyaml.Diagnostic{File: "f", Line: 4, Column: 2, Severity: strictyaml.Warning, Message: "m", Cure: "c"}, "f:4:2: warning: m; c"},
		{"note without cure", strictyaml.Diagnostic{File: "f", Line: 4, Column: 2, Severity: strictyaml.Note, Message: "m"}, "f:4:2: note: m"},
		{"whole line", strictyaml.Diagnostic{File: "f", Line: 4, Severity: strictyaml.Error, Message: "m"}, "f:4: m"},
		{"whole file", strictyaml.Diagnostic{File: "f", Severity: strictyaml.Error, Message: "m"}, "f: m"},
	} {
		assert.Equal(t, row.want, row.d.String(), row.name)
	}
	assert.Equal(t, "Severity(0)", strictyaml.Severity(0).String())
}

func TestDiagnosticJSON(t *testing.T) {
	text, err := json.Marshal(strictyaml.Diagnostic{File: "f", Line: 4, Column: 2, Severity: strictyaml.Warning, Message: "m", Cure: "c", Excerpt: "e"})
	require.NoError(t, err)
	assert.JSONEq(t, `{"file": "f", "line": 4, "column": 2, "severity": "warning", "message": "m", "cure": "c", "excerpt": "e"}`, string(text))
}

func TestPicture(t *testing.T) {
	long := strings.Repeat("abcdefghij", 30)
	for _, row := range []struct {
		name    string
		excerpt string
		column  int
		want    string
	}{
		{"short line", "a: &x 1", 4, "   12 | a: &x 1\n      |    ^\n"},
		{"first column", "a: 1", 1, "   12 | a: 1\n      | ^\n"},
		{"behind the end", "a:", 3, "   12 | a:\n      |   ^\n"},
		{"far behind the end", "a:", 99, "   12 | a:\n      |   ^\n"},
		{"whole line", "a: 1", 0, "   12 | a: 1\n"},
		{"nothing to show", "", 3, ""},
		{"tab", "a:\tb &x", 6, "   12 | a:\tb &x\n      |   \t  ^\n"},
		{"wide letters", "名前: &x", 5, "   12 | 名前: &x\n      | \u3000\u3000  ^\n"},
		{"wide signs and half-width forms", "（ｱ）: &x", 6, "   12 | （ｱ）: &x\n      | \u3000 \u3000  ^\n"},
		{"Hangul", "이름: &x", 5, "   12 | 이름: &x\n      | \u3000\u3000  ^\n"},
		{"picture sign", "🐸: &x", 4, "   12 | 🐸: &x\n      | \u3000  ^\n"},
		{"accent of its own", "e\u0301: &x", 5, "   12 | e\u0301: &x\n      |    ^\n"},
		{"long line, near the beginning", long, 7, "   12 | " + long[:100] + "…\n      |       ^\n"},
		{"long line, in the middle", long, 151, "   12 | …" + long[100:200] + "…\n      | " + strings.Repeat(" ", 51) + "^\n"},
		{"long line, at the end", long, 300, "   12 | …" + long[200:] + "\n      | " + strings.Repeat(" ", 100) + "^\n"},
		{"just not long", long[:100], 100, "   12 | " + long[:100] + "\n      | " + strings.Repeat(" ", 99) + "^\n"},
	} {
		t.Run(row.name, func(t *testing.T) {
			d := strictyaml.Diagnostic{File: "f", Line: 12, Column: row.column, Severity: strictyaml.Error, Excerpt: row.excerpt}
			if diff := cmp.Diff(row.want, d.Picture()); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestSort(t *testing.T) {
	at := func(severity strictyaml.Severity, file string, line, column int, message string) strictyaml.Diagnostic {
		return strictyaml.Diagnostic{File: file, Line: line, Column: column, Severity: severity, Message: message}
	}
	sorted := strictyaml.Diagnostics{
		at(strictyaml.Error, "a", 0, 0, "whole file first"),
		at(strictyaml.Error, "a", 2, 9, "then by line"),
		at(strictyaml.Error, "a", 10, 1, "by number, not by letter"),
		at(strictyaml.Error, "a", 10, 2, "z: said first"),
		at(strictyaml.Error, "a", 10, 2, "a: said second"),
		at(strictyaml.Error, "b", 1, 1, "by file"),
		at(strictyaml.Warning, "a", 1, 1, "warnings behind all errors"),
		at(strictyaml.Note, "a", 1, 1, "notes last"),
	}
	mixed := strictyaml.Diagnostics{sorted[7], sorted[3], sorted[5], sorted[2], sorted[6], sorted[0], sorted[4], sorted[1]}
	mixed.Sort()
	if diff := cmp.Diff(sorted, mixed); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

func TestErr(t *testing.T) {
	doc, m := mapping(t, "a: 1\nb: 2\nc: 3")
	require.NoError(t, doc.Problems().Err())

	doc.Warnf(m.Take("a"), "look", "a is %d", 1)
	require.NoError(t, doc.Problems().Err(), "a warning does not stop anything")
	assert.False(t, doc.Problems().HasErrors())

	doc.Errorf(m.Take("b"), "change it", "b is %d", 2)
	assert.True(t, doc.Problems().HasErrors())
	require.EqualError(t, doc.Problems().Err(), "f:2:4: b is 2; change it")

	doc.Report(doc.Diagnostic(strictyaml.Error, strictyaml.PositionOf(m.Take("c")), "c is 3", "change it"))
	err := fmt.Errorf("open: %w", doc.Problems().Err())
	var file *strictyaml.FileError
	require.ErrorAs(t, err, &file)
	assert.Len(t, file.Diagnostics, 2, "the warning is not among the errors")
	require.EqualError(t, errors.Unwrap(err), "f:2:4: b is 2; change it (and 1 more)")
	assert.Len(t, doc.Problems(), 3)
	assert.Equal(t, "c: 3", doc.Problems()[1].Excerpt)
	assert.Zero(t, strictyaml.PositionOf(nil))
}
