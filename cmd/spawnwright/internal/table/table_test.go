package table_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
)

func text(t *testing.T, tab *table.Table) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, tab.Text(&b))
	return b.String()
}

func csv(t *testing.T, tab *table.Table) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, tab.CSV(&b))
	return b.String()
}

func TestText(t *testing.T) {
	tab := &table.Table{
		Title:   "Kinship with H-01",
		Indent:  "  ",
		Columns: []table.Column{{Name: "id"}, {Name: "name", Width: 12}, {Name: "kinship", Right: true}},
	}
	tab.Add("H-02", "Fern", "0.25")
	tab.Add("H-03", "Frau Holle vom Moor", "0.0625")
	tab.Add("H-04", "", "0")
	want := `Kinship with H-01

  id    name          kinship
  ----  ------------  -------
  H-02  Fern             0.25
  H-03  Frau Holle     0.0625
        vom Moor
  H-04                      0
`
	if diff := cmp.Diff(want, text(t, tab)); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestTextWithoutRows(t *testing.T) {
	tab := &table.Table{Columns: []table.Column{{Name: "id"}, {Name: "name"}}}
	assert.Equal(t, "id  name\n--  ----\n", text(t, tab))
	tab.Title, tab.Empty, tab.Indent = "Relatives", "none are here", "  "
	assert.Equal(t, "Relatives\n\n  none are here\n", text(t, tab))
	assert.Equal(t, "id,name\r\n", csv(t, tab), "a table stays a table for a spreadsheet")
	tab.Add("H-01", "Moss")
	assert.NotContains(t, text(t, tab), "none are here")
}

// A name from a file must not clear the screen or begin a new row.
func TestTextDoesNotSteerTheTerminal(t *testing.T) {
	tab := &table.Table{Columns: []table.Column{{Name: "name"}}}
	tab.Add("a\x1b[2Jb\nc\u009bd\te")
	assert.Equal(t, "name\n------------\na [2Jb c d e\n", text(t, tab))
}

func TestCSV(t *testing.T) {
	tab := &table.Table{Title: "not in CSV", Indent: "  ", Columns: []table.Column{{Name: "id"}, {Name: "mean kinship", Right: true}}}
	tab.Add("H-02, \"Fern\"", "0.25")
	assert.Equal(t, "id,mean_kinship\r\n\"H-02, \"\"Fern\"\"\",0.25\r\n", csv(t, tab))
}

func TestDrop(t *testing.T) {
	tab := &table.Table{Columns: []table.Column{{Name: "id"}, {Name: "name"}, {Name: "sex"}, {Name: "kinship"}}}
	tab.Add("H-01", "Fern", "male", "0.25")
	tab.Add("H-02", "Moss", "female", "0")
	tab.Drop("sex", "name", "age")
	assert.Equal(t, "id,kinship\r\nH-01,0.25\r\nH-02,0\r\n", csv(t, tab))
}

// What begins a formula in a spreadsheet is taken for text (OWASP, CSV
// Injection); a number stays one.
func TestCSVHasNoFormulas(t *testing.T) {
	for cell, want := range map[string]string{
		"":            "",
		"H-01":        "H-01",
		"-0.5":        "-0.5",
		"12":          "12",
		"-":           "'-",
		"--1":         "'--1",
		"-1+1":        "'-1+1",
		"+49 170":     "'+49 170",
		"@name":       "'@name",
		"=1+1":        "'=1+1",
		" =1+1":       "' =1+1",
		"＝1+1":        "'＝1+1",
		"\t=1+1":      "'\t=1+1",
		"a=1":         "a=1",
		"Lindenhof -": "Lindenhof -",
	} {
		tab := &table.Table{Columns: []table.Column{{Name: "x"}, {Name: "y"}}}
		tab.Add(cell, "end")
		_, row, _ := strings.Cut(csv(t, tab), "\r\n")
		got, _, _ := strings.Cut(row, ",end")
		assert.Equal(t, want, strings.Trim(got, `"`), "cell %q", cell)
	}
}

type full struct{}

var errFull = errors.New("no space left")

func (full) Write([]byte) (int, error) { return 0, errFull }

func TestFullDisk(t *testing.T) {
	tab := &table.Table{Columns: []table.Column{{Name: "x"}}}
	require.ErrorIs(t, tab.Text(full{}), errFull)
	require.ErrorIs(t, tab.CSV(full{}), errFull)
}
