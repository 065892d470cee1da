package record

import (
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// The random files of the tests: a room drawn by rapid and written in any of the
// ways that a keeper may write it.

// room is what ids a random file has.
type room struct{ animals, young, clutches, pairings []string }

var remarks = rapid.SampledFrom([]string{
	"", "", "", "  # so", " #", "   # it's \"odd\" [x] {y}, - z: |", "      # far off",
})

var between = rapid.SampledFrom([]string{
	"", "", "", "", "\n", "\n\n", "# - {on: 2027-01-01, animal: X, note: gone}\n", "      # deep\n", "  # it's a quote\n\n", "   \n",
})

var notes = rapid.SampledFrom([]string{
	"", "", "plain", "two words", "'it''s'", `"a \" # b"`, "'# no'", "\"ends, in: [ }\"", "蛙 🐸", "a#b", "'007'", "null x",
})

// blockNotes only stand in entries without braces.
var blockNotes = rapid.SampledFrom([]string{
	"|\n%sone\n%s# two", ">\n%sone\n\n%stwo", "|-\n%sone", "|+\n%sone\n\n", "\"one\n%s# two\"", "'one\n%stwo'", "one\n%stwo", ">- # folded\n%sone\n", "|2\n%s three",
})

// hand writes a file as a person does.
type hand struct {
	strings.Builder
	t      *rapid.T
	indent int
}

// draw gives a random file that is right, with what is in it.
func drawFile(t *rapid.T) (string, room) {
	h := &hand{t: t}
	var r room
	if rapid.Bool().Draw(t, "begin") {
		h.WriteString("# Lindenhof frog room\n---\n")
	}
	if rapid.Bool().Draw(t, "keeper") {
		h.WriteString("keeper: \"Lindenhof\" # invented\n")
	}
	parts := rapid.Permutation([]string{"animals", "clutches", "pairings", "diary"}).Draw(t, "order")
	if rapid.Bool().Draw(t, "usual order") {
		parts = []string{"animals", "clutches", "pairings", "diary"}
	}
	n := rapid.IntRange(1, 5).Draw(t, "animals")
	for i := range n {
		r.animals = append(r.animals, fmt.Sprintf("HC-%02d", i+1))
	}
	for i := range rapid.IntRange(0, 3).Draw(t, "clutches") {
		r.clutches = append(r.clutches, fmt.Sprintf("C-27-%02d", i+1))
	}
	if len(r.clutches) > 0 {
		for i := range rapid.IntRange(0, 3).Draw(t, "young") {
			r.young = append(r.young, fmt.Sprintf("HC-9%d", i))
		}
	}
	if n > 1 && rapid.Bool().Draw(t, "pairing") {
		r.pairings = []string{"P-27-01"}
	}
	for _, part := range parts {
		h.indent = rapid.IntRange(0, 4).Draw(t, "indent")
		h.section(part, h.rows(part, r))
		h.WriteString(between.Draw(t, "between"))
	}
	if rapid.IntRange(0, 5).Draw(t, "end") == 0 {
		h.WriteString("...\n# over\n")
	}
	text := h.String()
	if rapid.IntRange(0, 5).Draw(t, "no last line end") == 0 {
		text = strings.TrimRight(text, "\n")
	}
	if rapid.IntRange(0, 3).Draw(t, "CR LF") == 0 {
		text = strings.ReplaceAll(text, "\n", "\r\n")
	}
	if rapid.IntRange(0, 7).Draw(t, "mark") == 0 {
		text = "\ufeff" + text
	}
	return text, r
}

// rows gives the entries of a list, each as pairs.
func (h *hand) rows(part string, r room) [][]string {
	var rows [][]string
	add := func(pairs ...string) {
		if note := notes.Draw(h.t, "note"); note != "" {
			pairs = append(pairs, "note: "+note)
		}
		rows = append(rows, pairs)
	}
	switch part {
	case "animals":
		for i, id := range r.animals {
			pairs := []string{"id: " + id, "species: hyla-cinerea", "sex: " + []string{"female", "male"}[i%2]}
			if rapid.Bool().Draw(h.t, "place") {
				pairs = append(pairs, "place: tank 2")
			}
			add(pairs...)
		}
		for _, id := range r.young {
			add("id: "+id, "clutch: "+r.clutches[0])
		}
	case "clutches":
		for i, id := range r.clutches {
			dam := r.animals[0]
			if i > 0 && i <= len(r.young) { // a grandchild of the first
				dam = r.young[i-1]
			}
			add("id: "+id, fmt.Sprintf("laid: 2027-01-%02d", 10+i), "dam: "+dam, "eggs: 300")
		}
	case "pairings":
		for _, id := range r.pairings {
			add("id: "+id, "dam: "+r.animals[0], "sire: ["+r.animals[1]+"]", "start: 2027-03-01")
		}
	case "diary":
		for i := range rapid.IntRange(0, 4).Draw(h.t, "entries") {
			on := "on: " + civil.Of(2027, 1, 20).Add(i).String()
			if len(r.clutches) > 0 && rapid.Bool().Draw(h.t, "clutch") {
				add(on, "clutch: "+r.clutches[0], fmt.Sprintf("count: %d", 200-i))
			} else {
				add(on, "animal: "+r.animals[0], "weight_g: 7.5")
			}
		}
		add("on: 2027-01-30", "place: tub-1", "water_c: 24")
		if rapid.IntRange(0, 2).Draw(h.t, "empty") == 0 {
			return nil
		}
	}
	return rows
}

// section writes a list in one of its forms.
func (h *hand) section(key string, rows [][]string) {
	remark := remarks.Draw(h.t, "beside the key")
	form := rapid.IntRange(0, 9).Draw(h.t, "form")
	switch {
	case len(rows) == 0 && form < 3:
	case len(rows) == 0 && form < 6:
		h.WriteString(key + ": [" + strings.Repeat(" ", form-3) + "]" + remark + "\n")
	case len(rows) == 0:
		h.WriteString(key + ":" + remark + "\n")
	case form == 0:
		texts := make([]string, len(rows))
		for i, row := range rows {
			texts[i] = "{" + strings.Join(row, ", ") + "}"
		}
		h.WriteString(key + ": [" + strings.Join(texts, " , ") + []string{"", ",", " ,"}[len(rows)%3] + "]" + remark + "\n")
	case form == 1:
		h.WriteString(key + ": [" + remark + "\n")
		for i, row := range rows {
			comma := ","
			if i == len(rows)-1 && rapid.Bool().Draw(h.t, "no comma") {
				comma = ""
			}
			h.WriteString("   {" + strings.Join(row, ",  ") + "}" + comma + remarks.Draw(h.t, "remark") + "\n" + between.Draw(h.t, "between"))
		}
		h.WriteString(" ]\n")
	default:
		h.WriteString(key + ":" + remark + "\n" + between.Draw(h.t, "between"))
		for _, row := range rows {
			h.entry(row, form)
			h.WriteString(between.Draw(h.t, "between"))
		}
	}
}

// entry writes an entry with its dash.
func (h *hand) entry(row []string, form int) {
	lead := strings.Repeat(" ", h.indent)
	gap := strings.Repeat(" ", 1+form%3)
	inner := lead + " " + gap
	switch {
	case form < 6:
		sep := []string{", ", ",", ",\n" + inner + " ", " , "}[rapid.IntRange(0, 3).Draw(h.t, "comma")]
		h.WriteString(lead + "-" + gap + "{" + strings.Join(row, sep) + "}" + remarks.Draw(h.t, "remark") + "\n")
		return
	case form == 6:
		h.WriteString(lead + "-" + remarks.Draw(h.t, "beside the dash") + "\n" + inner)
	default:
		h.WriteString(lead + "-" + gap)
	}
	if rapid.IntRange(0, 2).Draw(h.t, "block") == 0 && !strings.Contains(row[len(row)-1], "note: ") {
		row = append(row[:len(row):len(row)], "note: "+strings.ReplaceAll(blockNotes.Draw(h.t, "block note"), "%s", inner+"  "))
		h.WriteString(strings.Join(row, "\n"+inner) + "\n")
		return
	}
	for i, pair := range row {
		if i > 0 {
			h.WriteString(inner)
		}
		h.WriteString(pair + remarks.Draw(h.t, "remark") + "\n")
	}
}
