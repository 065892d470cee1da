package spreadsheet_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/spreadsheet"
)

// convert gives the animals of the file, one a line, and all that is said.
func convert(t *testing.T, text string, o spreadsheet.Options) (animals, said []string) {
	t.Helper()
	o.File = "t"
	r := spreadsheet.Convert([]byte(text), o)
	for _, p := range r.Problems {
		said = append(said, strings.TrimPrefix(p.String(), "t:"))
	}
	assert.Equal(t, r.YAML == nil, r.Problems.HasErrors(), "there is a file exactly when there is no error")
	if r.YAML == nil {
		return nil, said
	}
	c, problems := collection.Read("t", r.YAML)
	require.NotNil(t, c, "%v", problems)
	assert.Len(t, c.Animals, r.Animals)
	_, rest, _ := strings.Cut(string(r.YAML), "animals:\n")
	for line := range strings.Lines(rest) {
		animals = append(animals, strings.TrimSuffix(strings.TrimPrefix(line, "  - "), "\n"))
	}
	return animals, said
}

const frog = ", species: hyla-cinerea"

func TestConvert(t *testing.T) {
	for _, row := range []struct {
		name, text    string
		options       spreadsheet.Options
		animals, said []string
	}{
		{
			name: "all columns, with headers as they are in the file", text: "id,name,species,sex,sex_sign,line,locality,hatched,out_of_water,acquired,died,left,sire,dam,weight_g,length_mm,place,promised,food,note\n" +
				"A-1,Bram,hyla-cinerea,male,called,Reds,Ohio,2020-01-02,2020-03-04,2021-05-06,2025-07-08,2024-01-01,,,7.5,51,tank-1,Anna,crickets,old\n",
			animals: []string{`{id: A-1, name: Bram, species: hyla-cinerea, sex: male, sex_sign: called, line: Reds, locality: Ohio, hatched: 2020-01-02, out_of_water: 2020-03-04, acquired: 2021-05-06, died: 2025-07-08, left: 2024-01-01, weight: 7.5 g, length: 51 mm, place: tank-1, promised: Anna, food: crickets, note: old}`},
		},
		{
			name: "semicolons, a byte order mark, CRLF, words of the trade, a comma for the fraction", text: "\ufeffTag;Scientific Name;Gender;Morph Date;Mother;SVL (cm);Weight\r\nAC-01;Hyla Cinerea;0.1;2020-03-04;WC;5,1;7,5 g\r\n",
			animals: []string{"{id: AC-01" + frog + ", sex: female, out_of_water: 2020-03-04, weight: 7.5 g, length: 5.1 cm}"},
		},
		{
			name: "tabs and quotes", text: "id\tspecies\tnote\n007\tamerican green tree frog\t\"two\nlines, \"\"one\"\" cell\"\nnull\thyla-cinerea\t\\\n",
			animals: []string{`{id: "007"` + frog + `, note: "two\nlines, \"one\" cell"}`, `{id: "null"` + frog + `, note: "\\"}`},
		},
		{
			name: "one column, and a species for all", text: "id\nA\n\nB\n", options: spreadsheet.Options{Species: "American green tree frog"},
			animals: []string{`{id: A` + frog + "}", `{id: B` + frog + "}"},
		},
		{
			name: "columns by header and by letter", text: "Frosch,Vater,Art\nAB-1,AB-2,hyla-cinerea\nAB-2,,hyla-cinerea\n",
			options: spreadsheet.Options{Columns: map[string]string{"id": "frosch", "sire": "B", "species": "c"}},
			animals: []string{"{id: AB-1" + frog + ", sire: AB-2}", "{id: AB-2" + frog + "}"},
		},
		{
			name: "parents by name, several, and from nowhere", text: "id,name,species,sex,sire,dam\nAB-1,Bram,hyla-cinerea,m,wild,0\nAB-2,Otto,hyla-cinerea,m,?,unknown\nAB-3,,hyla-cinerea,,bram / AB-2,\nAB-4,,hyla-cinerea,,Bram or Otto or AB-2,-\n",
			animals: []string{
				"{id: AB-1, name: Bram" + frog + ", sex: male}", "{id: AB-2, name: Otto" + frog + ", sex: male}",
				"{id: AB-3" + frog + ", sire: [AB-1, AB-2]}", "{id: AB-4" + frog + ", sire: [AB-1, AB-2]}",
			},
		},
		{
			name: "one of several parents that is not known", text: "id,species,sex,sire\nAB-1,hyla-cinerea,m,\nAB-2,hyla-cinerea,,AB-1/XY-9\n",
			animals: []string{"{id: AB-1" + frog + ", sex: male}", "{id: AB-2" + frog + "}"},
			said:    []string{`3:20: warning: sire "XY-9" of "AB-2" is not in the table: all in this cell are left out; add a row for it, or leave the cell empty`},
		},
		{
			name: "numbers of males and females with a comma", text: "id;species;sex\nA;hyla-cinerea;1,0\nB;hyla-cinerea;0,1\nC;hyla-cinerea;0,0,1\n",
			animals: []string{"{id: A" + frog + ", sex: male}", "{id: B" + frog + ", sex: female}", "{id: C" + frog + ", sex: unknown}"},
		},
		{
			name: "parents that cannot be", text: "id,name,species,sex,sire,dam\nAB-1,Bram,hyla-cinerea,f,AB-1,AB-22\nAB-2,Bram,hyla-cinerea,f,AB-1,Bram\n",
			animals: []string{"{id: AB-1, name: Bram" + frog + ", sex: female}", "{id: AB-2, name: Bram" + frog + ", sex: female}"},
			said: []string{
				`2:26: warning: "AB-1" is named as its own sire: it is left out; correct it`,
				`2:31: warning: dam "AB-22" of "AB-1" is not in the table: it is left out; did you mean "AB-2"?`,
				`3:26: warning: sire "AB-1" of "AB-2" is recorded as female (line 2): it is left out; correct the one or the other`,
				`3:31: warning: dam "Bram" of "AB-2" is not in the table: it is left out; 2 animals have that name; write the id`,
			},
		},
		{
			name: "rows that cannot be taken", text: "id,species\nA-1,hyla-cinerea\nA-1,hyla-cinerea\n,hyla-cinerea\nA-2,hyla cinera\nA-3,\nA-4,frog of my aunt\n\"A,5\",hyla-cinerea\nA-6,hyla-cinerea,more\n",
			animals: []string{`{id: A-1` + frog + "}", `{id: A-6` + frog + "}"},
			said: []string{
				`3:1: warning: id "A-1" stands twice, first in line 2: the row is left out; give one of them another id`,
				"4:1: warning: there is no id: the row is left out; write one",
				`5:1: warning: the species of "A-2" is not known: the row is left out; write it, or say --species for all rows without one`,
				`5:5: warning: species "hyla cinera" is no species that is built in: it is left out; did you mean "Hyla cinerea"?`,
				`6:1: warning: the species of "A-3" is not known: the row is left out; write it, or say --species for all rows without one`,
				`7:1: warning: the species of "A-4" is not known: the row is left out; write it, or say --species for all rows without one`,
				"7:5: warning: species \"frog of my aunt\" is no species that is built in: it is left out; write its scientific name, or one that `spawnwright species list` shows",
				`8:1: warning: id "A,5" is no id: it is left out; write a short text without a comma`,
				"8:1: warning: there is no id: the row is left out; write one",
				`9:18: warning: "more" stands behind the last column; give it a header, or look for a delimiter too many`,
			},
		},
		{
			name: "a species that was not understood is not the usual one", text: "id,species\nA-1,hyla cinera\nA-2,\n", options: spreadsheet.Options{Species: "xenopus-laevis"},
			animals: []string{`{id: A-2, species: xenopus-laevis}`},
			said: []string{
				`2:1: warning: the species of "A-1" is not known: the row is left out; write it, or say --species for all rows without one`,
				`2:5: warning: species "hyla cinera" is no species that is built in: it is left out; did you mean "Hyla cinerea"?`,
			},
		},
		{
			name: "cells that are not understood", text: "id,species,sex,hatched,weight,length (mm),weight (g),place,Colour\nAB-1,hyla-cinerea,x,soon,7,5 kg,\"1,234\",=B2,green\nAB-2,hyla-cinerea,,,7 stone,0,#REF!,\"a\nb\",\n",
			animals: []string{"{id: AB-1" + frog + "}", "{id: AB-2" + frog + "}"},
			said: []string{
				`1:43: warning: column "weight (g)" is not taken: "weight" stands for weight already; say which it is with --columns weight=HEADER`,
				`1:60: warning: column "Colour" is not taken; --columns KEY=HEADER says what it is`,
				`2:19: warning: sex "x" is no sex: it is left out; write male, female or unknown`,
				`2:21: warning: hatched "soon" is no day: it is left out; write year, month and day as 2025-03-19`,
				`2:26: warning: weight "7" has no unit: it is left out; write the unit into the header, such as weight (g)`,
				`2:28: warning: length (mm) "5 kg" has no unit of a length: it is left out; units known here: mm, cm, in`,
				`2:41: warning: place "=B2" is a formula: it is left out; save the values of the table, not its formulae`,
				`3:21: warning: weight "7 stone" has no unit: it is left out; write the unit into the header, such as weight (g)`,
				`3:29: warning: length (mm) "0" is 0: it is left out; leave it empty when it was not measured`,
				"3:37: warning: place \"a\\nb\" has more than one line: it is left out; write it in one line",
			},
		},
		{
			name: "thousands or a fraction", text: "id,weight (mg),length (mm)\nA-1,\"1,234\",\"51,5\"\n", options: spreadsheet.Options{Species: "hyla-cinerea"},
			animals: []string{"{id: A-1" + frog + ", length: 51.5 mm}"},
			said:    []string{`2:5: warning: weight (mg) "1,234" could be thousands or a fraction: it is left out; write a point before the fraction, and none for thousands`},
		},
		{
			name: "what contradicts itself is taken away until the rest is right", text: "id,species,hatched,died,sire\nAB-1,hyla-cinerea,2025-01-01,2024-01-01,AB-2\nAB-2,hyla-cinerea,,,AB-1\nAB-3,hyla-cinerea,2020-01-01,,AB-4\nAB-4,xenopus-laevis,,,\n",
			animals: []string{
				"{id: AB-1" + frog + "}", "{id: AB-2" + frog + ", sire: AB-1}", "{id: AB-3" + frog + ", hatched: 2020-01-01}", "{id: AB-4, species: xenopus-laevis}",
			},
			said: []string{
				`2:1: warning: animal "AB-1" is its own ancestor: it comes from animal "AB-2" (line 3), that from animal "AB-1": its parents are left out; correct the table`,
				`2:1: warning: animal "AB-1" died on 2024-01-01, before it hatched on 2025-01-01: its dates are left out; correct the table`,
				`4:1: warning: sire "AB-4" is xenopus-laevis (line 5), but animal "AB-3" is recorded as hyla-cinerea: its parents are left out; correct the table`,
			},
		},
		{
			name: "a species of one's own", text: "id,species\nAB-1,Hyperolius sp.\nAB-2,Hyperolius sp.\n",
			animals: []string{"{id: AB-1, species: hyperolius-sp}", "{id: AB-2, species: hyperolius-sp}"},
			said:    []string{`2:6: warning: "Hyperolius sp." is not built in: an empty profile hyperolius-sp is written; fill it in under species:, or correct the name`},
		},
		{name: "nothing", text: " \n", said: []string{" the table is empty; it begins with a line of headers, such as id,species,sex"}},
		{name: "no ids", text: "name,species\n", said: []string{"1: no column has the ids of the animals; name it id, or say which it is with --columns id=HEADER"}},
		{name: "no rows", text: "id,species\n", said: []string{" no row of the table could be taken; look at what was left out, and why"}},
		{name: "no text", text: "id\xff", said: []string{" this is not valid UTF-8 text; save the table as CSV in UTF-8"}},
		{name: "a workbook", text: "PK\x03\x04\x00\x00", said: []string{" this is not a table in text; save it as CSV in UTF-8"}},
		{name: "a quote that is not closed", text: "id,note\nA,\"b\n", said: []string{`2:5: the quotes of this line do not match; write " inside a cell twice, and put the cell in quotes`}},
		{
			name: "a row of ten thousand cells, which would take minutes", text: "id,species\nA" + strings.Repeat(",", 9999) + "\n",
			said: []string{"2: the row has 10000 cells, more than the 4096 that are read; leave some out, or say which sign stands between the cells with --delimiter"},
		},
		{name: "two delimiters", text: "id,a;b\n", said: []string{"1: it is not plain which sign stands between the cells of the headers; say it with --delimiter comma, semicolon or tab"}},
		{name: "a column that is not there", text: "id\n", options: spreadsheet.Options{Columns: map[string]string{"sire": "Vater"}}, said: []string{`1: there is no column "Vater", which --columns names for sire; the headers are "id"`}},
		{name: "a usual species that is none", text: "id\nA\n", options: spreadsheet.Options{Species: "hyla-cinera"}, said: []string{` the species "hyla-cinera", meant for rows without one, is not built in; did you mean "hyla-cinerea"?`}},
	} {
		t.Run(row.name, func(t *testing.T) {
			animals, said := convert(t, row.text, row.options)
			if diff := cmp.Diff(row.animals, animals); diff != "" {
				t.Errorf("animals (-want +got):\n%s", diff)
			}
			if diff := cmp.Diff(row.said, said); diff != "" {
				t.Errorf("said (-want +got):\n%s", diff)
			}
		})
	}
}

func TestDates(t *testing.T) {
	const unstated, iso, day, month = spreadsheet.Unstated, spreadsheet.OnlyISO, spreadsheet.DayFirst, spreadsheet.MonthFirst
	for _, row := range []struct {
		cell   string
		order  spreadsheet.DateOrder
		want   string // the date, or what is wrong
		reason string
	}{
		{"2025-03-04", unstated, "2025-03-04", "one meaning"},
		{"2025-03-04 00:00:00", unstated, "2025-03-04", "midnight is added by spreadsheets"},
		{"2025/3/4", unstated, "2025-03-04", "the year first leaves no doubt"},
		{"03/04/2025", unstated, "could be 2025-04-03 or 2025-03-04", "never guessed"},
		{"3.4.2025", unstated, "could be 2025-04-03 or 2025-03-04", "points do not say it either"},
		{"03/04/2025", day, "2025-04-03", "as stated"},
		{"03/04/2025", month, "2025-03-04", "as stated"},
		{"25.12.2025", unstated, "2025-12-25", "there is no month 25"},
		{"12/25/2025", unstated, "2025-12-25", "there is no month 25"},
		{"5/5/2025", unstated, "2025-05-05", "both are the same"},
		{"12/25/2025", day, "is no day in the order that --dates states", "what was stated holds"},
		{"25.12.2025", month, "is no day in the order that --dates states", "what was stated holds"},
		{"25.12.2025", iso, "is not written 2006-01-02", "nothing else was stated"},
		{"4 Mar 2025", unstated, "2025-03-04", "a word for the month"},
		{"March 4, 2025", unstated, "2025-03-04", "a word for the month"},
		{"03/04/25", unstated, "has no year of four digits", "which century, and which part is the year"},
		{"2025", unstated, "is no day", "a year is no day"},
		{"45000", unstated, "is no day", "nor is the number of one"},
		{"31/02/2025", unstated, "is no day", "February has 28"},
		{"01/01/1025", unstated, "is in the year 1025", "a slip"},
	} {
		animals, said := convert(t, "id,hatched\nAB-1,\""+row.cell+"\"\n", spreadsheet.Options{Species: "hyla-cinerea", Dates: row.order})
		got := strings.TrimSuffix(strings.TrimPrefix(strings.Join(animals, ""), "{id: AB-1"+frog+", hatched: "), "}")
		if len(said) > 0 {
			_, got, _ = strings.Cut(said[0], fmt.Sprintf("%q ", row.cell))
			got, _, _ = strings.Cut(got, ": it is left out")
		}
		assert.Equal(t, row.want, got, "%s: %s", row.cell, row.reason)
	}
}

// FuzzConvert asks for a file without an error or for an error, the same each
// time, whatever the table.
func FuzzConvert(f *testing.F) {
	for _, seed := range []string{
		"id,species,sex,hatched,sire,dam,weight (g),note\nA,hyla-cinerea,m,2020-01-01,B,C,7,x\nB,hyla-cinerea,m,2021-01-01,A,,,\n",
		"\ufeffid;species\r\nA;Hyla sp.\r\n", "id\tname\n\"A\nB\"\t=1\n", "id,id,Gender,died,left\n1,2,0.1,2020-01-02,2019-01-01", "id,species\n\\,Hyla cinerea\n\u00a0,x\n",
	} {
		f.Add(seed, 0, "hyla-cinerea")
		f.Add(seed, 2, "")
	}
	f.Fuzz(func(t *testing.T, text string, order int, species string) {
		o := spreadsheet.Options{File: "t", Dates: spreadsheet.DateOrder(order & 3), Species: species}
		r := spreadsheet.Convert([]byte(text), o)
		again := spreadsheet.Convert([]byte(text), o)
		if string(r.YAML) != string(again.YAML) || len(r.Problems) != len(again.Problems) {
			t.Fatal("another result for the same table")
		}
		if (r.YAML == nil) != r.Problems.HasErrors() {
			t.Fatalf("%v\n%s", r.Problems, r.YAML)
		}
		if r.YAML != nil {
			if c, problems := collection.Read("t", r.YAML); c == nil || len(c.Animals) != r.Animals {
				t.Fatalf("%v\n%s", problems, r.YAML)
			}
		}
	})
}
