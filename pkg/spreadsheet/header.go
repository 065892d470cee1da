package spreadsheet

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// headers are the keys that a table can fill, in the order in which they are
// written, with the headers by which keepers call them.
var headers = []struct {
	key   string
	names []string
}{
	{"id", []string{"id", "no", "nr", "number", "animal", "animal id", "tag"}},
	{"name", []string{"name", "called"}},
	{"species", []string{"species", "scientific name", "common name", "latin name"}},
	{"sex", []string{"sex", "gender"}},
	{"sex_sign", []string{"sex sign", "sexed by"}},
	{"line", []string{"line", "bloodline", "strain"}},
	{"locality", []string{"locality", "origin", "location of origin"}},
	{"hatched", []string{"hatched", "hatch date", "hatched on", "date hatched"}},
	{"out_of_water", []string{"out of water", "morphed", "morph date", "metamorphosed", "metamorphosis"}},
	{"acquired", []string{"acquired", "acquired on", "bought", "date acquired", "purchased"}},
	{"died", []string{"died", "death", "date of death", "dead"}},
	{"left", []string{"left", "sold", "sold on", "date sold"}},
	{"sire", []string{"sire", "father", "male parent"}},
	{"dam", []string{"dam", "mother", "female parent"}},
	{"weight", []string{"weight", "mass"}},
	{"length", []string{"length", "svl", "snout vent length", "size"}},
	{"place", []string{"place", "tank", "enclosure", "terrarium", "vivarium"}},
	{"promised", []string{"promised", "reserved", "reserved for"}},
	{"food", []string{"food", "diet"}},
	{"note", []string{"note", "notes", "remark", "remarks", "comment", "comments"}},
}

// Keys gives the keys of the collection file that a column can fill.
func Keys() []string {
	var keys []string
	for _, h := range headers {
		keys = append(keys, h.key)
	}
	return keys
}

// column is what a column of the table fills.
type column struct {
	key  string // empty for one that is not taken
	unit string // that its header states
	name string // its header
}

// header finds what each column is. It is false without a column of ids.
func (c *converter) header() bool {
	first := c.table[0]
	c.columns = make([]column, len(first.cells))
	taken := make(map[string]cell)
	for _, key := range slices.Sorted(maps.Keys(c.Columns)) {
		i := c.columnOf(c.Columns[key])
		if i < 0 {
			c.fail(first.line, 0, fmt.Sprintf("there is no column %q, which --columns names for %s", c.Columns[key], key), c.cureForColumn(c.Columns[key]))
			return false
		}
		c.columns[i].key = key
		taken[key] = first.cells[i]
	}
	for i, h := range first.cells {
		col := &c.columns[i]
		known := col.key != ""
		words := ""
		words, col.unit = unitOf(h.text)
		col.name = h.text
		key := keyOf(words)
		switch before, twice := taken[key]; {
		case known || h.text == "":
		case key == "":
			c.warn(h, fmt.Sprintf("column %q is not taken", h.text), c.cureFor(words))
		case twice:
			c.warn(h, fmt.Sprintf("column %q is not taken: %q stands for %s already", h.text, before.text, key), "say which it is with --columns "+key+"=HEADER")
		default:
			col.key, taken[key] = key, h
		}
	}
	if _, ok := taken["id"]; !ok {
		c.fail(first.line, 0, "no column has the ids of the animals", "name it id, or say which it is with --columns id=HEADER")
		return false
	}
	return true
}

func (c *converter) cureFor(words string) string {
	var names []string
	for _, h := range headers {
		names = append(names, h.names...)
	}
	if cure := strictyaml.DidYouMean(words, names); cure != "" {
		return cure
	}
	return "--columns KEY=HEADER says what it is"
}

func (c *converter) cureForColumn(name string) string {
	var names, shown []string
	for _, h := range c.table[0].cells {
		names = append(names, h.text)
		shown = append(shown, strconv.Quote(h.text))
	}
	if cure := strictyaml.DidYouMean(name, names); cure != "" {
		return cure
	}
	return "the headers are " + strings.Join(shown, ", ")
}

// columnOf finds a column by its header, or else by its letter; -1 for none.
func (c *converter) columnOf(name string) int {
	for i, h := range c.table[0].cells {
		if strings.EqualFold(h.text, strings.TrimSpace(name)) {
			return i
		}
	}
	letters := 0
	for _, r := range strings.ToUpper(name) {
		if r < 'A' || r > 'Z' || letters > 1000 {
			return -1
		}
		letters = letters*26 + int(r-'A') + 1
	}
	if letters > len(c.columns) {
		return -1
	}
	return letters - 1
}

// plainName gives a header in small letters, with single blanks for joiners.
func plainName(header string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(header), func(r rune) bool { return r == ' ' || r == '_' || r == '-' || r == '.' || r == '\n' }), " ")
}

// unitOf parts a header from the unit that it ends with: weight (g), weight_g.
func unitOf(header string) (words, unit string) {
	words = plainName(strings.NewReplacer("(", " ", ")", " ", "[", " ", "]", " ", "/", " ").Replace(header))
	last := lastWord(words)
	before, ok := strings.CutSuffix(words, " "+last)
	if _, known := units[last]; ok && known {
		return before, last
	}
	return words, ""
}

func lastWord(words string) string { return words[strings.LastIndexByte(words, ' ')+1:] }

func keyOf(words string) string {
	for _, h := range headers {
		if slices.Contains(h.names, words) {
			return h.key
		}
	}
	return ""
}
