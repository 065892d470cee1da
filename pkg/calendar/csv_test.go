package calendar_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
)

func table(t *testing.T, c calendar.Calendar) (string, [][]string) {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, calendar.WriteCSV(&out, c))
	lines, err := csv.NewReader(bytes.NewReader(out.Bytes())).ReadAll()
	require.NoError(t, err)
	return out.String(), lines
}

func TestWriteCSV(t *testing.T) {
	text, lines := table(t, room())
	uid := func(key string) string { return calendar.UID("lindenhof", key) }
	want := [][]string{
		{"date_first", "date_last", "what", "category", "details", "status", "uid"},
		{
			"2027-12-30", "2028-01-02", "C-27-09: sale-ready", "sale-ready",
			"Early, likely and late: 2027-12-30, 2027-12-31, 2028-01-02.", "confirmed", uid("clutch/C-27-09/sale-ready"),
		},
		{"2028-01-02", "2028-01-02", "C-27-08: hatches", "hatch", "", "cancelled", uid("clutch/C-27-08/hatched")},
		{
			"2028-01-24", "2028-03-05", "P-28-01: cooling", "cooling",
			"Bram × Brama, cooling place 2.\nDay 20 °C, night 16 °C; mist once a day.", "confirmed", uid("pairing/P-28-01/cooling"),
		},
		{"2028-02-29", "2028-02-29", "Make rain chamber 1 ready, for P-28-01", "rain chamber", "", "confirmed", uid("pairing/P-28-01/rain")},
	}
	if diff := cmp.Diff(want, lines); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	assert.NotContains(t, strings.ReplaceAll(text, "\r\n", ""), "\n", "every line ends in CRLF, those in cells too")
}

func TestWriteCSVWithoutEvents(t *testing.T) {
	text, _ := table(t, calendar.Calendar{ID: "a", Name: "A"})
	assert.Equal(t, "date_first,date_last,what,category,details,status,uid\r\n", text)
}

func TestCellsAreNoFormulas(t *testing.T) {
	for _, test := range []struct{ name, text, want string }{
		{"equals", "=1+1", "'=1+1"},
		{"plus", "+49 89 1", "'+49 89 1"},
		{"minus", "-2", "'-2"},
		{"at", "@SUM(A1)", "'@SUM(A1)"},
		{"behind blanks", "  =1", "'  =1"},
		{"behind a tab", "\t=1", "'\t=1"},
		{"behind a line end", "\r\n=1", "'\n=1"},
		{"behind what is dropped", "\x00=1", "'=1"},
		{"full width", "＝1", "'＝1"},
		{"inside", "a=1", "a=1"},
		{"an apostrophe of the keeper's", "'tis", "'tis"},
		{"empty", "", ""},
	} {
		t.Run(test.name, func(t *testing.T) {
			c := room()
			c.Events = c.Events[:1]
			c.Events[0].Description = test.text
			_, lines := table(t, c)
			assert.Equal(t, test.want, lines[1][4])
		})
	}
	c := room()
	c.Events = c.Events[:1]
	c.Events[0].Summary, c.Events[0].Category = "=A", "-b, c"
	_, lines := table(t, c)
	assert.Equal(t, []string{"'=A", "'-b c"}, lines[1][2:4], "titles and categories too")
	c.Events[0].Key, c.Events[0].UID = "", "=1+1@elsewhere"
	_, lines = table(t, c)
	assert.Equal(t, "'=1+1@elsewhere", lines[1][6], "and a UID that an earlier file brought")
}
