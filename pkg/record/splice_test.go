package record_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/record"
)

var today = civil.Of(2027, 2, 3)

const frogs = `animals:
  - {id: AC-01, species: agalychnis-callidryas, sex: male}
  - {id: AC-02, species: agalychnis-callidryas, sex: female}
`

// weighed is an edit that adds one entry.
func weighed(t *testing.T, text string) *record.Plan {
	t.Helper()
	b := open(t, text)
	e, err := b.Weight(today, "AC-02", "12.4g")
	require.NoError(t, err)
	p, err := b.Plan(e)
	require.NoError(t, err)
	return p
}

func open(t *testing.T, text string) *record.Book {
	t.Helper()
	b, problems := record.Read("room.yaml", []byte(text))
	require.NotNil(t, b, "%v", problems)
	return b
}

// TestPlanAddsLines looks at where the new entry goes. In the texts the line
// that is added begins with >, which is taken out of what is wanted, and out of
// what is given with all of its line.
func TestPlanAddsLines(t *testing.T) {
	const entry = "{on: 2027-02-03, animal: AC-02, weight_g: 12.4}"
	for _, row := range []struct{ name, reason, text string }{
		{"flow", "the usual form", frogs + "diary:\n  - {on: 2027-01-01, animal: AC-01, note: x}\n>  - " + entry + "\n"},
		{"block", "written like the last one", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: x\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n"},
		{"wide dash", "the gap behind the dash is kept", frogs + "diary:\n-   on: 2027-01-01\n    animal: AC-01\n    note: x\n>-   on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n"},
		{"dash alone", "the dash has a line of its own", frogs + "diary:\n  -\n    on: 2027-01-01\n    animal: AC-01\n    note: x\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n"},
		{"padded", "blanks within the braces", frogs + "diary:\n  - { on: 2027-01-01, animal: AC-01, note: x }\n>  - { on: 2027-02-03, animal: AC-02, weight_g: 12.4 }\n"},
		{"not indented", "the list begins in the column of its key", frogs + "diary:\n- {on: 2027-01-01, animal: AC-01, note: x}\n>- " + entry + "\nkeeper: y\n"},
		{"comment beside", "it belongs to the line before", frogs + "diary:\n  - {on: 2027-01-01, animal: AC-01, note: x}   # so he was\n>  - " + entry + "\n"},
		{"comment behind", "it may be about what follows", frogs + "diary:\n  - {on: 2027-01-01, animal: AC-01, note: x}\n>  - " + entry + "\n  # the end\n\n# of it\n"},
		{"empty lines behind", "they stay where they are", frogs + "diary:\n  - {on: 2027-01-01, animal: AC-01, note: x}\n>  - " + entry + "\n\n\n"},
		{"another key behind", "the diary need not be last", "diary:\n  - {on: 2027-01-01, animal: AC-01, note: x}\n>  - " + entry + "\n\n# the frogs\n" + frogs},
		{"marks", "a document may have a beginning and an end", "---\n" + frogs + "diary:\n  - {on: 2027-01-01, animal: AC-01, note: x}\n>  - " + entry + "\n...\n# over\n"},
		{"nothing behind the key", "the list begins here", frogs + "diary:\n>  - " + entry + "\n"},
		{"nothing but a comment", "the list begins behind it", frogs + "diary:  # dated facts\n>  - " + entry + "\n  # here\n"},
		{"no diary", "a key comes at the end", frogs + ">diary:\n>  - " + entry + "\n"},
		{"no diary, spaced", "the file separates its keys", "keeper: x\n\n" + frogs + ">\n>diary:\n>  - " + entry + "\n"},
		{"no diary, end mark", "the end stays the end", frogs + ">diary:\n>  - " + entry + "\n...\n"},
		{"no diary, lists not indented", "it looks like the others", strings.ReplaceAll(frogs, "  -", "-") + ">diary:\n>- " + entry + "\n"},
		{"literal", "a text of several lines", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: |\n      one\n      # two\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n\n"},
		{"literal and a comment", "what is less indented is a comment", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: >-\n      one\n      # two\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n    # three\n"},
		{"literal with its empty lines", "the + keeps them", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: |+\n      one\n\n\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n"},
		{"quotes over lines", "a # in quotes is no comment", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: \"one\n      # two \\\" \"\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n"},
		{"single quotes", "a quote is written twice", frogs + "diary:\n  - {on: 2027-01-01, animal: AC-01, note: 'it''s }'}\n>  - " + entry + "\n"},
		{"plain over lines", "a value goes on in the next line", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: one\n\n      two\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n\n# end\n"},
		{"braces over lines", "an entry need not be one line", frogs + "diary:\n  - {on: 2027-01-01, # the day\n     animal: AC-01,\n     note: x y, # }\n    }  # there\n>  - " + entry + "\n"},
		{"empty key last", "a key without a value", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    saw:\n    note: x\n    count:\n>  - on: 2027-02-03\n>    animal: AC-02\n>    weight_g: 12.4\n"},
		{"all indented", "the keys themselves are indented", "  keeper: x\n  animals:\n   - {id: AC-02, species: agalychnis-callidryas}\n>  diary:\n>   - " + entry + "\n"},
		{"key with a question mark", "the long form of a key", frogs + "? diary\n:\n>  - " + entry + "\n"},
		{"quoted key", "a key may stand in quotes", frogs + "\"diary\":\n  - {on: 2027-01-01, animal: AC-01, note: x}\n>  - " + entry + "\n"},
		{"brackets over lines", "an entry a line, with a last comma", frogs + "diary: [\n  {on: 2027-01-01, animal: AC-01, note: x},  # so\n>  " + entry + ",\n]\n"},
	} {
		t.Run(row.name, func(t *testing.T) {
			var given, want strings.Builder
			for l := range strings.Lines(row.text) {
				rest, added := strings.CutPrefix(l, ">")
				want.WriteString(rest)
				if !added {
					given.WriteString(l)
				}
			}
			for _, end := range []string{"\n", "\r\n"} {
				for _, mark := range []string{"", "\ufeff"} {
					p := weighed(t, mark+strings.ReplaceAll(given.String(), "\n", end))
					assert.Equal(t, mark+strings.ReplaceAll(want.String(), "\n", end), string(p.Text), row.reason)
				}
			}
			p := weighed(t, given.String())
			lines := strings.Split(want.String(), "\n")
			for _, l := range p.Lines {
				assert.Equal(t, lines[l.Number-1], l.Text, "the line that is shown")
			}
		})
	}
}

// TestPlanWithinLines has the texts in which the entry is no line of its own.
func TestPlanWithinLines(t *testing.T) {
	const entry = "{on: 2027-02-03, animal: AC-02, weight_g: 12.4}"
	const old = "{on: 2027-01-01, animal: AC-01, note: x}"
	for _, row := range []struct{ name, reason, given, want string }{
		{"empty brackets", "the first entry", "diary: []\n", "diary: [" + entry + "]\n"},
		{"blank in brackets", "the same", "diary: [ ] # none\n", "diary: [" + entry + " ] # none\n"},
		{"brackets", "behind the last one", "diary: [" + old + "]\n", "diary: [" + old + ", " + entry + "]\n"},
		{"last comma", "the comma goes behind the new one", "diary: [" + old + ",]\n", "diary: [" + old + ", " + entry + ",]\n"},
		{"lines without last comma", "one is added", "diary: [\n  " + old + " # x\n]\n", "diary: [\n  " + old + ", # x\n  " + entry + "\n]\n"},
		{"no last line end", "the line before gets one", "diary:\n- " + old, "diary:\n- " + old + "\n- " + entry + "\n"},
		{"no last line end, no list", "likewise", "diary:", "diary:\n  - " + entry + "\n"},
		{"no last line end, no key", "likewise", "keeper: x", "keeper: x\ndiary:\n  - " + entry + "\n"},
		{"old line ends", "of machines of long ago", "diary:\r- " + old + "\r", "diary:\r- " + old + "\r- " + entry + "\r"},
	} {
		t.Run(row.name, func(t *testing.T) {
			list := "animals: [{id: AC-01, species: agalychnis-callidryas}, {id: AC-02, species: agalychnis-callidryas}]\n"
			p := weighed(t, list+row.given)
			assert.Equal(t, list+row.want, string(p.Text), row.reason)
		})
	}
	p := weighed(t, "{animals: [{id: AC-02, species: agalychnis-callidryas}], diary: []}")
	assert.Equal(t, "{animals: [{id: AC-02, species: agalychnis-callidryas}], diary: ["+entry+"]}", string(p.Text))
	assert.Equal(t, []record.Line{{Number: 1, Text: string(p.Text)}}, p.Lines)
}

func TestPlanRefuses(t *testing.T) {
	for _, row := range []struct{ name, reason, text, says string }{
		{"whole file in braces", "a key cannot be added by lines", "{animals: [{id: AC-02, species: agalychnis-callidryas}]}", "the whole file stands in { }"},
		{"written null", "it would have to be taken away", frogs + "diary: ~\n", "has a value that says nothing"},
		{"literal without line end", "the text would get a line end that it does not have", frogs + "diary:\n  - on: 2027-01-01\n    animal: AC-01\n    note: |\n      one", "would say something else: the diary entry in line 5 is not what it was"},
	} {
		t.Run(row.name, func(t *testing.T) {
			b := open(t, row.text)
			e, err := b.Weight(today, "AC-02", "12.4g")
			require.NoError(t, err)
			_, err = b.Plan(e)
			var unsafe *record.UnsafeError
			require.ErrorAs(t, err, &unsafe, row.reason)
			assert.Contains(t, unsafe.Reason, row.says)
			assert.Equal(t, "diary:\n  - {on: 2027-02-03, animal: AC-02, weight_g: 12.4}\n", unsafe.Hand)
		})
	}
}

// TestPlanAddsRecords adds to three lists at once.
func TestPlanAddsRecords(t *testing.T) {
	b := open(t, frogs+`  # more to come
clutches:
  - {id: C-27-02, laid: 2027-01-30, dam: AC-02, sire: AC-01, eggs: 40}

diary: []
`)
	e, err := b.Laid(today, record.Laying{Dams: []string{"AC-02"}, Sires: []string{"AC-01"}, Eggs: 43})
	require.NoError(t, err)
	p, err := b.Plan(e)
	require.NoError(t, err)
	b = open(t, string(p.Text))
	e, err = b.HeldBack(today, record.Holding{Clutch: "C-27-03", Count: 2})
	require.NoError(t, err)
	p, err = b.Plan(e)
	require.NoError(t, err)
	assert.Equal(t, frogs+`  - {id: AC-03, clutch: C-27-03}
  - {id: AC-04, clutch: C-27-03}
  # more to come
clutches:
  - {id: C-27-02, laid: 2027-01-30, dam: AC-02, sire: AC-01, eggs: 40}
  - {id: C-27-03, laid: 2027-02-03, dam: AC-02, sire: AC-01, eggs: 43}

diary: [{on: 2027-02-03, clutch: C-27-03, note: laid}, {on: 2027-02-03, clutch: C-27-03, held_back: 2, note: "as AC-03, AC-04"}]
`, string(p.Text))
}

// TestPlanRefusesWhatWouldBeLeftOut: a temperature that cannot be meant is only a
// warning to the reader of the file, and no reason to write it.
func TestPlanRefusesWhatWouldBeLeftOut(t *testing.T) {
	b := open(t, frogs)
	e, err := b.Temperature(today, "AC-02", "235C", false, false)
	require.NoError(t, err)
	_, err = b.Plan(e)
	var invalid *record.InvalidError
	require.ErrorAs(t, err, &invalid)
	require.Len(t, invalid.Diagnostics, 1)
	assert.Contains(t, invalid.Diagnostics[0].Message, "235")
	assert.Equal(t, invalid.Lines[len(invalid.Lines)-1].Number, invalid.Diagnostics[0].Line)
}

// TestPlanReportsWhatWouldBeWrong tells errors from warnings, and new from old.
func TestPlanReportsWhatWouldBeWrong(t *testing.T) {
	text := frogs + `clutches:
  - {id: C-27-02, laid: 2027-01-30, dam: AC-02, sire: AC-01, eggs: 40, ended: 2027-01-31}
diary:
  - {on: 2027-02-01, clutch: C-27-02, count: 38}
`
	b := open(t, text)
	e, err := b.Seen(today, "C-27-02", record.Sight{Count: collection.Given[int]{Value: 41, Known: true}})
	require.NoError(t, err)
	_, err = b.Plan(e)
	var invalid *record.InvalidError
	require.ErrorAs(t, err, &invalid)
	require.True(t, invalid.Diagnostics.HasErrors())
	assert.Contains(t, invalid.Diagnostics[0].Message, "more than its eggs")
	assert.Equal(t, 8, invalid.Diagnostics[0].Line, "in the new text")
	assert.Equal(t, []record.Line{{8, "  - {on: 2027-02-03, clutch: C-27-02, count: 41}"}}, invalid.Lines)

	e.Entry.Count.Value = 39
	p, err := b.Plan(e)
	require.NoError(t, err)
	var said []string
	for _, w := range p.Warnings {
		said = append(said, w.Message)
	}
	assert.Len(t, said, 2, "%q: the old warning is not told again", said)
}
