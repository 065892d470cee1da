package parentage_test

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// read reads a table that must be right, and gives its warnings as text.
func read(t *testing.T, text string, options parentage.Options) (*parentage.Table, string) {
	t.Helper()
	table, err := parentage.Read(strings.NewReader(text), options)
	require.NoError(t, err)
	return table, list(table.Warnings)
}

func list(problems []parentage.Problem) string {
	var lines []string
	for _, p := range problems {
		lines = append(lines, p.String())
	}
	return strings.Join(lines, "\n")
}

func TestRead(t *testing.T) {
	type records = []pedigree.Record
	abc := records{{ID: "c", Sire: "a", Dam: "b"}, {ID: "a"}, {ID: "b"}}
	for _, test := range []struct {
		name, text string
		want       records
	}{
		{"plain, young first", "id,sire,dam\nc,a,b\na,,\nb,,\n", abc},
		{"Windows line ends", "id,sire,dam\r\nc,a,b\r\na,,\r\nb,,\r\n", abc},
		{"line ends of old machines", "id,sire,dam\rc,a,b\ra,,\rb,,\r", abc},
		{"byte order mark", "\uFEFFid,sire,dam\nc,a,b\na,,\nb,,\n", abc},
		{"byte order mark before a quote", "\uFEFF\"id\",\"sire\",\"dam\"\nc,a,b\na,,\nb,,\n", abc},
		{"semicolons", "id;sire;dam\nc;a;b\na;;\nb;;\n", abc},
		{"semicolons, a comma in a name and in a number", "id;sire;dam;\"weight, g\"\nc;a;b;1,5\na;;;\nb;;;\n", abc},
		{"tabs", "id\tsire\tdam\nc\ta\tb\na\t\t\nb\t\t\n", abc},
		{"other names in another order", "Mother,x,FATHER,Individual\nb,1,a,c\n,2,,a\n,3,,b\n", abc},
		{"animal as a name, blanks", " Animal , sire,dam\n c , a\t,b \na,\u00a0,\nb,,\n", abc},
		{"quotes", "\"id\",\"sire\",\"dam\"\n\"c\" ,\"a\", \"b\"\n\"a\",\"\",\nb,,\n", abc},
		{"quotes hold quotes, commas and line breaks where nobody reads", "id,note,sire,dam\nc,\"one, \"\"two\"\",\r\nthree\",a,b\na,,,\nb,,,\n", abc},
		{"blank rows", "\n , \nid,sire,dam\n\nc,a,b\n,,\n  \na,,\nb,,\n\n", abc},
		{"empty values too many, as spreadsheets leave them", "id,sire,dam\nc,a,b,,\na,,,\"\" , \nb,,\n", abc},
		{"every word for unknown", "id,sire,dam\na,0,Unknown\nb,UNK,na\nc,.,NA\nd,,unk\n", records{{ID: "a"}, {ID: "b"}, {ID: "c"}, {ID: "d"}}},
		{"near words for unknown are names", "id,sire,dam\n00,,\nnan,,\nnone,,\n...,,\n", records{{ID: "00"}, {ID: "nan"}, {ID: "none"}, {ID: "..."}}},
		{"ids stay as they are", "id,sire,dam\n007,,\n7,,\n1e3,,\n\"Größe, die \"\"7.\"\"\",Ōta,\nŌta,,\n", records{{ID: "007"}, {ID: "7"}, {ID: "1e3"}, {ID: `Größe, die "7."`, Sire: "Ōta"}, {ID: "Ōta"}}},
		{"an animal called as a column", "id,sire,dam\nid,sire,\nsire,,\n", records{{ID: "id", Sire: "sire"}, {ID: "sire"}}},
		{"only a header", "id,sire,dam\n", nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, warnings := read(t, test.text, parentage.Options{})
			if diff := cmp.Diff(test.want, got.Records, cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
			assert.Empty(t, warnings)
			assert.Equal(t, len(test.want), got.Rows)
		})
	}
}

func TestColumns(t *testing.T) {
	want := []pedigree.Record{{ID: "c", Sire: "a", Dam: "b"}, {ID: "a"}, {ID: "b"}}
	for _, test := range []struct {
		name, text string
		columns    parentage.Columns
	}{
		{"all three", "Tier;Vater;Mutter\nc;a;b\na;;\nb;;\n", parentage.Columns{ID: "tier", Sire: "VATER", Dam: "Mutter"}},
		{"one, the others as usual", "ring,sire,dam\nc,a,b\na,,\nb,,\n", parentage.Columns{ID: "ring"}},
		{"a choice of two", "id,animal,sire,dam\nx,c,a,b\ny,a,,\nz,b,,\n", parentage.Columns{ID: "animal"}},
		{"the usual name is passed over", "id,sire,male,dam\nc,7,a,b\na,,,\nb,,,\n", parentage.Columns{Sire: "male"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			got, _ := read(t, test.text, parentage.Options{Columns: test.columns})
			assert.Equal(t, want, got.Records)
		})
	}
}

func TestAnySex(t *testing.T) {
	table, warnings := read(t, "id,sire,dam\na,,\nb,a,a\nc,b,a\nd,a,b\n", parentage.Options{AnySex: true})
	assert.Empty(t, warnings)
	assert.Equal(t, pedigree.Record{ID: "b", Sire: "a", Dam: "a"}, table.Records[1])
}

func TestParentsWithoutRow(t *testing.T) {
	table, warnings := read(t, "id,sire,dam\n\nc,A,b\nd,c,e\nb,,f\n", parentage.Options{})
	assert.Equal(t, []pedigree.Record{
		{ID: "c", Sire: "A", Dam: "b"},
		{ID: "d", Sire: "c", Dam: "e"},
		{ID: "b", Dam: "f"},
		{ID: "A"},
		{ID: "e"},
		{ID: "f"},
	}, table.Records)
	assert.Equal(t, 3, table.Rows)
	assert.Equal(t, `3:1: 3 parents have no row of their own and count as founders; "A" is the first; look whether they are spelt right, or add a row for each`, warnings)
	assert.Equal(t, []int{3, 4, 5, 0}, []int{table.Line(0), table.Line(1), table.Line(2), table.Line(3)})
	assert.PanicsWithValue(t, "parentage: no record 6 among 6", func() { table.Line(6) })
}

func TestWarnings(t *testing.T) {
	for _, test := range []struct{ name, text, want string }{
		{"one parent without a row", "id,sire,dam\nb,a,\n", `2:1: 1 parent has no row of its own and counts as a founder: "a"; look whether it is spelt right, or add a row`},
		{"the same row twice", "id,sire,dam\nb,,\na,b,NA\n\na, b,unknown\n", `5:1: "a" already has this row on line 3; it is taken once; remove one of them`},
		{"case", "id,sire,dam\nac-1,,\nAC-1,,\n", `3:1: "ac-1" and "AC-1" differ only in case or blanks and count as two animals; give one animal one spelling`},
		{"case, capitals first", "id,sire,dam\nAC-1,,\nac-1,,\n", `3:1: "AC-1" and "ac-1" differ only in case or blanks and count as two animals; give one animal one spelling`},
		{
			"case, three ways, one as a parent", "id,sire,dam\nÄ1,,\nb,ä1,\nc,,Ä 1\nä1,,\nÄ 1,,\n",
			`3:1: "Ä1" and "ä1" differ only in case or blanks and count as two animals; give one animal one spelling` + "\n" +
				`4:1: "Ä1" and "Ä 1" differ only in case or blanks and count as two animals; give one animal one spelling`,
		},
		{"blanks inside", "id,sire,dam\nold bob,,\nold  bob,,\n", `3:1: "old bob" and "old  bob" differ only in case or blanks and count as two animals; give one animal one spelling`},
		{"a mark that cannot be seen", "id,sire,dam\n12,,\n12\u200b,,\n", `3:1: "12" and "12\u200b" differ only in case or blanks and count as two animals; give one animal one spelling`},
		{"no line end at the end", "id,sire,dam\na,,\nb,,", `3:1: the last line has no line end, so the table may be cut off in the middle of it; end it with a line break if the table is complete`},
		{"a note that swallows rows", "id,sire,dam,note\na,,,\"big\nb,,,\nc,,,\"\n", `2:6: this value runs over 3 lines, which are not read as rows; look whether a quote is missing`},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, warnings := read(t, test.text, parentage.Options{})
			assert.Equal(t, test.want, warnings)
		})
	}
}

func TestManyWarnings(t *testing.T) {
	table, _ := read(t, "id,sire,dam\n"+strings.Repeat("a,,\n", 101), parentage.Options{})
	assert.Len(t, table.Warnings, parentage.Most)
	assert.Equal(t, 100-parentage.Most, table.MoreWarnings)
	assert.Len(t, table.Records, 1)
}

func TestErrors(t *testing.T) {
	const outOfPlace = "; put the whole value in quotes, and write a quote inside it twice"
	for _, test := range []struct{ name, text, want string }{
		{"nothing", "", "1:1: the table is empty; begin with a line that names the columns, such as id,sire,dam"},
		{"only a byte order mark", "\uFEFF", "1:1: the table is empty; begin with a line that names the columns, such as id,sire,dam"},
		{"blank rows only", "\n,,\n", "1:1: the table is empty; begin with a line that names the columns, such as id,sire,dam"},
		{"no header", "1,0,0\n2,0,0\n", "1:1: the first line names none of the columns; it must name a column id or individual or animal, one sire or father and one dam or mother, such as id,sire,dam"},
		{"no dam", "id,sire\na,b\n", "1:1: no column is called dam or mother; name one so, or tell its name (columns dam=NAME)"},
		{"a slip", "id;sire;mohter\n", `1:1: no column is called dam or mother; did you mean "mohter"? (columns dam=mohter)`},
		{
			"longer names", "\nSire ID,animal_id,dam_id\n", `2:1: no column is called id or individual or animal; did you mean "animal_id"? (columns id=animal_id)` + "\n" +
				`2:1: no column is called sire or father; did you mean "Sire ID"? (columns sire=Sire ID)` + "\n" +
				`2:1: no column is called dam or mother; did you mean "dam_id"? (columns dam=dam_id)`,
		},
		{
			"longer names, semicolons", "dam_id;no;animal_id;sire_id\n", `1:1: no column is called id or individual or animal; did you mean "animal_id"? (columns id=animal_id)` + "\n" +
				`1:1: no column is called sire or father; did you mean "sire_id"? (columns sire=sire_id)` + "\n" +
				`1:1: no column is called dam or mother; did you mean "dam_id"? (columns dam=dam_id)`,
		},
		{"a letter wrong", "id,size,dma\n", `1:1: no column is called sire or father; did you mean "size"? (columns sire=size)` + "\n" + `1:1: no column is called dam or mother; did you mean "dma"? (columns dam=dma)`},
		{"a letter missing or too many", "id,farther,mothr\n", `1:1: no column is called sire or father; did you mean "farther"? (columns sire=farther)` + "\n" + `1:1: no column is called dam or mother; did you mean "mothr"? (columns dam=mothr)`},
		{"nothing like it", "id,bull,cow\n", "1:1: no column is called sire or father; name one so, or tell its name (columns sire=NAME)\n1:1: no column is called dam or mother; name one so, or tell its name (columns dam=NAME)"},
		{"two columns for one thing", "id,sire,dam,Father\na,b,c,d\n", `1:13: columns "sire" and "Father" both mean sire; rename one, or tell which (columns sire=NAME)`},
		{"a value too many", "id,sire,dam\na,b,c,d\n", "2:1: this row has 4 values and the first line 3; complete the row, and put values that hold ',' in quotes"},
		{"a value missing", "id;sire;dam\nx;;\na;b\n", "3:1: this row has 2 values and the first line 3; complete the row, and put values that hold ';' in quotes"},
		{"cut off", "id,sire,dam\nx,,\na,b", "3:1: the table is cut off: its last row has 2 of 3 values and no line end; get the whole table again, or complete the row"},
		{"no id", "id,sire,dam\n,b,c\n", `2:1: "" is not an id: it means unknown; give the animal a name or a number`},
		{"no id, but a note", "id,sire,dam,note\n,,,tall\n", `2:1: "" is not an id: it means unknown; give the animal a name or a number`},
		{"id that means unknown", "sire,dam,id\nb,c,NA\n", `2:5: "NA" is not an id: it means unknown; give the animal a name or a number`},
		{"two rows that disagree", "id,sire,dam\na,,\nb,,\na,b,\n", `4:1: "a" has sire "b" and dam unknown here, and sire unknown and dam unknown on line 2; keep the right one`},
		{"two rows that disagree in the dam", "id,sire,dam\nb,,\nd,,\na,b,d\na,b,\n", `5:1: "a" has sire "b" and dam unknown here, and sire "b" and dam "d" on line 4; keep the right one`},
		{"sire here and dam there", "id,sire,dam\na,,\nb,a,\n\nc,b,a\n", `5:1: "a" is the dam of "c" and also a sire on line 3; correct one of them, unless an animal can be both here (any-sex)`},
		{"sire and dam of one", "id,sire,dam\na,,\nb,a,a\n", `3:1: "a" is the dam of "b" and also its sire; correct one of them, unless an animal can be both here (any-sex)`},
		{"a word for unknown that is none", "id,sire,dam\na,-,-\n", `2:1: "-" is the dam of "a" and also its sire; correct one of them, or leave the parent empty if this stands for an unknown one (any-sex)`},
		{"the header once more", "id,sire,dam\na,,\nID,Sire,dam\nb,,\n", "3:1: the names of the columns stand here once more, as where two tables were joined; remove the line"},
		{"quote inside", "id,sire,dam\na,b \"c\",\n", "2:5: a quote stands inside a value that does not begin with one" + outOfPlace},
		{"text behind a quote", "id,sire,dam\na,\"b\"c,\n", "2:5: text follows the quote that ends a value" + outOfPlace},
		{"quote not closed", "id,sire,dam\na,\"b,\n,,\"\"\n", "2:3: the quote that begins here is never closed; put a quote at the end of the value, or remove this one"},
		{
			"quote not closed, and what is wrong behind it", "id,sire,dam\na,\"b,\nc,d\n\"e\",\"\"\"f,\n", "2:3: the quote that begins here is never closed; put a quote at the end of the value, or remove this one\n" +
				"3:1: this row has 2 values and the first line 3; complete the row, and put values that hold ',' in quotes\n" +
				"4:5: the quote that begins here is never closed; put a quote at the end of the value, or remove this one",
		},
		{
			"two quotes not closed", "id,sire,dam\na,\"b,\nc,\"d,\ne,\"\",\n", "2:3: the quote that begins here is never closed; put a quote at the end of the value, or remove this one\n" +
				"3:3: the quote that begins here is never closed; put a quote at the end of the value, or remove this one",
		},
		{
			"a quote not closed, and one behind that closes lines below", "id,sire,dam\na,\"b,\nc,\"d,\ne,f\",\n", "2:3: the quote that begins here is never closed; put a quote at the end of the value, or remove this one\n" +
				"3:3: the quote that begins here is never closed; put a quote at the end of the value, or remove this one\n" +
				"4:4: a quote stands inside a value that does not begin with one" + outOfPlace,
		},
		{"quote in the header", "id,\"sire,dam\na,b,c\n", "1:4: the quote that begins here is never closed; put a quote at the end of the value, or remove this one"},
		{"line break in a value", "id,sire,dam\na,\"b\nc\",\n", `2:4: the sire "b\nc" has a line break or another control character in it; remove it, and look whether a quote is missing`},
		{"NUL", "id,sire,dam\na\x00,,\n", `2:1: the id "a\x00" has a line break or another control character in it; remove it, and look whether a quote is missing`},
		{"control of the upper half", "id,sire,dam\na\u0085b,,\n", `2:1: the id "a\u0085b" has a line break or another control character in it; remove it, and look whether a quote is missing`},
		{"columns count characters", "id,sire,dam\r\nÖöß,\"b\" x,\r\n", "2:7: text follows the quote that ends a value" + outOfPlace},
		{"not UTF-8", "id,sire,dam\na,b,c\nGr\xf6\xdfe,,\nx,,\nM\xfcll,,\n", "3:3: the byte 0xf6 is not UTF-8 text; save the table as CSV in UTF-8\n5:2: the byte 0xfc is not UTF-8 text; save the table as CSV in UTF-8"},
		{"not UTF-8 on the last line", "id,sire,dam\n\xff", "2:1: the byte 0xff is not UTF-8 text; save the table as CSV in UTF-8\n2:1: the table is cut off: its last row has 1 of 3 values and no line end; get the whole table again, or complete the row"},
		{"UTF-16", "\xff\xfei\x00d\x00", "1:1: this is UTF-16 text, not UTF-8; save the table as CSV in UTF-8"},
		{
			"several at once, in the order of the table", "id,sire,dam\nb,a,\n0,x,\nc,,a\nb,,\na,,\xff\n",
			"3:1: \"0\" is not an id: it means unknown; give the animal a name or a number\n" +
				"4:1: \"a\" is the dam of \"c\" and also a sire on line 2; correct one of them, unless an animal can be both here (any-sex)\n" +
				"5:1: \"b\" has sire unknown and dam unknown here, and sire \"a\" and dam unknown on line 2; keep the right one\n" +
				"6:4: the byte 0xff is not UTF-8 text; save the table as CSV in UTF-8",
		},
	} {
		t.Run(test.name, func(t *testing.T) {
			table, err := parentage.Read(strings.NewReader(test.text), parentage.Options{})
			var bad *parentage.Error
			require.ErrorAs(t, err, &bad)
			assert.Nil(t, table)
			assert.Equal(t, test.want, list(bad.Problems))
			assert.EqualError(t, err, "parentage: "+test.want)
		})
	}
}

func TestWrongColumns(t *testing.T) {
	for _, test := range []struct {
		name    string
		columns parentage.Columns
		want    string
	}{
		{"no such column", parentage.Columns{Dam: "cow"}, "1:1: no column is called cow; did you mean \"dam\"? (columns dam=dam)"},
		{"one column twice", parentage.Columns{Dam: "sire"}, "1:1: one column cannot be two of id, sire and dam; tell a column of its own for each"},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := parentage.Read(strings.NewReader("id,sire,dam\n"), parentage.Options{Columns: test.columns})
			require.EqualError(t, err, "parentage: "+test.want)
		})
	}
}

// A line of 10 MB is told in a few words and costs little, wherever it stands.
func TestLongLines(t *testing.T) {
	const tenMB = 10 << 20
	for _, test := range []struct{ name, text, want string }{
		{"a header", strings.Repeat("x", tenMB), "1:1: the first line has 10485760 bytes; the table needs line ends, and quotes only in pairs"},
		{"commas", strings.Repeat(",", tenMB) + "id", "1:1: the first line has 10485762 bytes; the table needs line ends, and quotes only in pairs"},
		{"an id", "id,sire,dam\n" + strings.Repeat("x", tenMB) + ",,\na,,", "2:1: this row has 10485763 bytes; at most 1048576 can be read; a line end or a quote must be missing"},
		{"values", "id,sire,dam\n" + strings.Repeat("a,", tenMB/2), "2:1: this row has 10485760 bytes; at most 1048576 can be read; a line end or a quote must be missing"},
		{"behind a quote", "id,sire,dam\na,\"" + strings.Repeat("b,,\n", tenMB/4) + "\"\n", "2:1: this row has 10485765 bytes; at most 1048576 can be read; a line end or a quote must be missing"},
		{"many columns", strings.Repeat("x,", 5000) + "id,sire,dam\n", "1:1: the table has 5003 columns, and at most 4096 can be read; leave some out"},
		{"a longish id", "id,sire,dam\n" + "x" + strings.Repeat("é", 1000) + "\x01,,\n", `2:1: the id "x` + strings.Repeat("é", 29) + `"... has a line break or another control character in it; remove it, and look whether a quote is missing`},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := parentage.Read(strings.NewReader(test.text), parentage.Options{})
			require.EqualError(t, err, "parentage: "+test.want)
		})
	}
}

func TestManyErrors(t *testing.T) {
	_, err := parentage.Read(strings.NewReader("id,sire,dam\nA,,\na,,\n"+strings.Repeat("a,b\n", 1000)), parentage.Options{})
	var bad *parentage.Error
	require.ErrorAs(t, err, &bad)
	assert.Len(t, bad.Problems, parentage.Most)
	assert.Equal(t, 1000-parentage.Most, bad.More)
	assert.Equal(t, 4, bad.Problems[0].Line)
	assert.True(t, strings.HasSuffix(err.Error(), "\nand 980 more"))
	assert.Len(t, bad.Warnings, 1, "doubts are told beside errors")
}

// Every animal that is sire and dam is counted, though few are told.
func TestManyRoles(t *testing.T) {
	var text strings.Builder
	text.WriteString("id,sire,dam\n")
	for i := range 50 {
		fmt.Fprintf(&text, "a%d,p%d,p%d\n", i, i, (i+1)%50)
	}
	_, err := parentage.Read(strings.NewReader(text.String()), parentage.Options{})
	var bad *parentage.Error
	require.ErrorAs(t, err, &bad)
	assert.Len(t, bad.Problems, parentage.Most)
	assert.Equal(t, 30, bad.More)
}

// Thousands of ids that differ in case take no more than a moment.
func TestManyAlike(t *testing.T) {
	var text strings.Builder
	text.WriteString("id,sire,dam\n")
	for i := range 1 << 12 {
		for bit := range 12 {
			text.WriteByte("aA"[i>>bit&1] + byte(bit))
		}
		text.WriteString(",,\n")
	}
	table, _ := read(t, text.String(), parentage.Options{})
	assert.Equal(t, parentage.Problem{
		Line: 3, Column: 1, Message: `"abcdefghijkl" and "Abcdefghijkl" differ only in case or blanks and count as two animals`, Cure: "give one animal one spelling",
	}, table.Warnings[0])
	assert.Equal(t, 1<<12-1-parentage.Most, table.MoreWarnings)
}

func TestLocate(t *testing.T) {
	table, _ := read(t, "id,sire,dam\nx,c,\na,,b\nb,c,\nc,a,\n", parentage.Options{})
	_, err := pedigree.New(table.Records)
	err = table.Locate(err)
	var bad *parentage.Error
	require.ErrorAs(t, err, &bad)
	assert.Equal(t, `3:1: "a" descends from itself: "a" (line 3) is from "b" (line 4) is from "c" (line 5) is from "a"; one of these parents must be wrong`, list(bad.Problems))
	var loop *pedigree.LoopError
	require.ErrorAs(t, err, &loop, "the cause stays")
	assert.Equal(t, []string{"a", "b", "c"}, loop.Members)

	assert.NoError(t, table.Locate(nil))
	other := errors.New("another one")
	assert.Equal(t, other, table.Locate(other))
}

func TestLocateSeveral(t *testing.T) {
	table, _ := read(t, "id,sire,dam\na,a,\nb,b,\n", parentage.Options{})
	loop := func(id string) error { return &pedigree.LoopError{Members: []string{id}} }
	err := table.Locate(errors.Join(loop("a"), fmt.Errorf("wrapped: %w", loop("b"))))
	assert.EqualError(t, err, `parentage: 2:1: "a" descends from itself: "a" (line 2) is from "a"; one of these parents must be wrong
3:1: "b" descends from itself: "b" (line 3) is from "b"; one of these parents must be wrong`)
	var many []error
	for range 25 {
		many = append(many, loop("a"))
	}
	var bad *parentage.Error
	require.ErrorAs(t, table.Locate(errors.Join(many...)), &bad)
	assert.Len(t, bad.Problems, parentage.Most)
	assert.Equal(t, 5, bad.More)
}

func TestLocateLongLoop(t *testing.T) {
	var text strings.Builder
	text.WriteString("id,sire,dam\n")
	for i := range 100 {
		fmt.Fprintf(&text, "a%d,a%d,\n", i, (i+1)%100)
	}
	table, _ := read(t, text.String(), parentage.Options{})
	_, err := pedigree.New(table.Records)
	assert.ErrorContains(t, table.Locate(err), `"a49" (line 51) is from ... 50 more ..., "a0"; one of`)
}

func TestReadKeepsTheReadersError(t *testing.T) {
	broken := errors.New("the disk is gone")
	_, err := parentage.Read(io.MultiReader(strings.NewReader("id,sire,dam\n"), iotest.ErrReader(broken)), parentage.Options{})
	require.ErrorIs(t, err, broken)
}

// A file, a pipe and a text in memory are read alike.
func TestReadSources(t *testing.T) {
	const text = "id,sire,dam\nb,a,\na,,\n"
	want, _ := read(t, text, parentage.Options{})
	name := t.TempDir() + "/table.csv"
	require.NoError(t, os.WriteFile(name, []byte(text), 0o600))
	file, err := os.Open(name)
	require.NoError(t, err)
	defer file.Close()
	for _, r := range []io.Reader{file, iotest.OneByteReader(strings.NewReader(text))} {
		got, err := parentage.Read(r, parentage.Options{})
		require.NoError(t, err)
		assert.Equal(t, want.Records, got.Records)
	}
}

// What was read does not hold on to the text.
func TestParseKeepsNothing(t *testing.T) {
	text := []byte("id,sire,dam\nb,a,\na,,\n")
	table, err := parentage.Parse(text, parentage.Options{})
	require.NoError(t, err)
	clear(text)
	assert.Equal(t, []pedigree.Record{{ID: "b", Sire: "a"}, {ID: "a"}}, table.Records)
}
