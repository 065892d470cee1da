package pedigree_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestReadCSV(t *testing.T) {
	type records = []pedigree.Record
	abc := records{{ID: "c", Sire: "a", Dam: "b"}, {ID: "a"}, {ID: "b"}}
	for _, test := range []struct {
		name, text string
		want       records
	}{
		{"plain, young first", "id,sire,dam\nc,a,b\na,,\nb,,\n", abc},
		{"no line end at the end", "id,sire,dam\nc,a,b\na,,\nb,,", abc},
		{"Windows line ends", "id,sire,dam\r\nc,a,b\r\na,,\r\nb,,\r\n", abc},
		{"byte order mark", "\uFEFFid,sire,dam\nc,a,b\na,,\nb,,\n", abc},
		{"parents without a row", "id,sire,dam\nc,a,b\n", abc},
		{"other names in another order", "Mother,x,FATHER,Individual\nb,1,a,c\n", abc},
		{"animal as a name, blanks", " Animal , sire,dam\n c , a,b \n", abc},
		{"quotes", "\"id\",\"sire\",\"dam\"\n\"c\",\"a\",\"b\"\n", abc},
		{"blank rows", "\nid,sire,dam\n\nc,a,b\n,,\n  \n", abc},
		{"every word for unknown", "id,sire,dam\na,0,Unknown\nb,UNK,na\nc,,NA\n", records{{ID: "a"}, {ID: "b"}, {ID: "c"}}},
		{"ids with blanks, commas, umlauts", "id,sire,dam\n\"Größe, die\",Old Bob,\n", records{{ID: "Größe, die", Sire: "Old Bob"}, {ID: "Old Bob"}}},
		{"a parent named twice is added once", "id,sire,dam\nc,a,\nd,a,c\n", records{{ID: "c", Sire: "a"}, {ID: "d", Sire: "a", Dam: "c"}, {ID: "a"}}},
		{"case matters in ids", "id,sire,dam\nc,A,a\n", records{{ID: "c", Sire: "A", Dam: "a"}, {ID: "A"}, {ID: "a"}}},
		{"only a header", "id,sire,dam\n", nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, err := pedigree.ReadCSV(strings.NewReader(test.text))
			require.NoError(t, err)
			if diff := cmp.Diff(test.want, got, cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
		})
	}
}

func TestReadCSVErrors(t *testing.T) {
	for _, test := range []struct{ name, text, want string }{
		{"nothing", "", "1:1: the table is empty; begin with a row such as id,sire,dam"},
		{"blank rows only", "\n,,\n", "1:1: the table is empty; begin with a row such as id,sire,dam"},
		{"no dam", "id,sire\na,b\n", "1:1: no column is called dam or mother; name a column so"},
		{"semicolons", "id;sire;dam\na;b;c\n", "1:1: no column is called id or individual or animal; save the table with commas between the values\n" +
			"1:1: no column is called sire or father; save the table with commas between the values\n" +
			"1:1: no column is called dam or mother; save the table with commas between the values"},
		{"two columns for one thing", "id,sire,dam,Father\na,b,c,d\n", `1:13: columns "sire" and "Father" both mean sire; rename one`},
		{"a value too many", "id,sire,dam\na,b,c,d\n", "2:1: this row has 4 values and the header 3; put values that contain a comma in quotes"},
		{"a value missing", "id,sire,dam\nx,,\na,b\n", "3:1: this row has 2 values and the header 3; put values that contain a comma in quotes"},
		{"no id", "id,sire,dam\n,b,c\n", `2:1: "" is not an id: it means unknown; give the animal a name or a number`},
		{"id that means unknown", "sire,dam,id\nb,c,NA\n", `2:5: "NA" is not an id: it means unknown; give the animal a name or a number`},
		{"twice", "id,sire,dam\na,,\nb,,\na,b,\n", `4:1: "a" already has a row on line 2; remove one of them`},
		{"quote inside", "id,sire,dam\na,b \"c\",\n", "2:5: a quote is out of place; put the whole value in quotes, and write a quote inside it twice"},
		{"quote not closed", "id,sire,dam\na,\"b,\n", "2:7: a quote is out of place; put the whole value in quotes, and write a quote inside it twice"},
		{"line break in a value", "id,sire,dam\na,\"b\nc\",\n", "2:3: the sire has a control character or a line break in it; remove it"},
		{"not UTF-8", "id,sire,dam\na,b,c\nGr\xf6\xdfe,,\n", "3:3: this is not UTF-8 text; save the table as CSV in UTF-8"},
		{"UTF-16", "\xff\xfei\x00d\x00", "1:1: this is not UTF-8 text; save the table as CSV in UTF-8"},
		{
			"several at once", "id,sire,dam\na,b\n0,a,\na,,\na,,\n",
			"2:1: this row has 2 values and the header 3; put values that contain a comma in quotes\n" +
				"3:1: \"0\" is not an id: it means unknown; give the animal a name or a number\n" +
				"5:1: \"a\" already has a row on line 4; remove one of them",
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			records, err := pedigree.ReadCSV(strings.NewReader(test.text))
			require.EqualError(t, err, test.want)
			assert.Nil(t, records)
			var place *pedigree.TableError
			require.ErrorAs(t, err, &place)
			assert.True(t, strings.HasPrefix(test.want, place.Error()), "the first comes first")
		})
	}
}

func TestReadCSVKeepsTheReadersError(t *testing.T) {
	broken := errors.New("the disk is gone")
	_, err := pedigree.ReadCSV(io.MultiReader(strings.NewReader("id,sire,dam\n"), iotest.ErrReader(broken)))
	require.ErrorIs(t, err, broken)
}

// What is written comes back, whatever the ids.
func TestReadCSVRoundTrip(t *testing.T) {
	id := rapid.StringMatching(`[a-zä0-9][a-z ,";ß'-]{0,5}[a-z0-9]`)
	rapid.Check(t, func(t *rapid.T) {
		ids := rapid.SliceOfNDistinct(id.Filter(func(s string) bool { return s != "unk" && s != "na" }), 1, 8, rapid.ID).Draw(t, "ids")
		parent := rapid.SampledFrom(append(ids, ""))
		var want []pedigree.Record
		for _, id := range ids {
			want = append(want, pedigree.Record{ID: id, Sire: parent.Draw(t, "sire"), Dam: parent.Draw(t, "dam")})
		}
		got, err := pedigree.ReadCSV(bytes.NewReader(written(t, want)))
		require.NoError(t, err)
		require.Equal(t, want, got)
	})
}

func written(t require.TestingT, records []pedigree.Record) []byte {
	var text bytes.Buffer
	w := csv.NewWriter(&text)
	require.NoError(t, w.Write([]string{"id", "sire", "dam"}))
	for _, r := range records {
		require.NoError(t, w.Write([]string{r.ID, r.Sire, r.Dam}))
	}
	w.Flush()
	return text.Bytes()
}

// No text does harm: it is refused with a place inside it, or gives records that
// New understands, but for loops, and that come back when written.
func FuzzReadCSV(f *testing.F) {
	for _, seed := range []string{
		"id,sire,dam\nc,a,b\na,,\n", "\uFEFFMother,Father,Individual\r\nb,a,c\r\n", "id;sire;dam\n", "id,sire,dam\n\"a\nb\",,\n",
		"id,sire,dam\na,a,a\n", "id,sire,dam\n\"", "\xff\xfe", "id,sire,dam\n0,NA,unk\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		records, err := pedigree.ReadCSV(bytes.NewReader(text))
		if err != nil {
			var place *pedigree.TableError
			require.ErrorAs(t, err, &place)
			require.LessOrEqual(t, place.Line, 1+bytes.Count(text, []byte("\n")))
			require.Positive(t, place.Line)
			require.Positive(t, place.Column)
			return
		}
		if _, err := pedigree.New(records); err != nil {
			var loop *pedigree.LoopError
			require.ErrorAs(t, err, &loop)
		}
		again, err := pedigree.ReadCSV(bytes.NewReader(written(t, records)))
		require.NoError(t, err)
		require.Equal(t, records, again)
	})
}
