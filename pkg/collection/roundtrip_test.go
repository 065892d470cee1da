package collection_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// What is written down by an independent hand is read back the same.
func TestReadGivesWhatWasWritten(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := draw(t)
		text := write(t, want)
		got, problems := collection.Read("f", []byte(text))
		require.False(t, problems.HasErrors(), "%v\n%s", problems, text)
		require.NotNil(t, got)
		ignore := cmp.Options{
			compare,
			cmpopts.IgnoreFields(collection.Animal{}, "At"),
			cmpopts.IgnoreFields(collection.Clutch{}, "At"),
			cmpopts.IgnoreFields(collection.Pairing{}, "At"),
			cmpopts.IgnoreFields(collection.Entry{}, "At"),
			cmpopts.IgnoreFields(collection.Target{}, "At"),
			cmpopts.IgnoreFields(collection.Hold{}, "At"),
			cmpopts.IgnoreFields(collection.Promise{}, "At"),
			cmpopts.IgnoreFields(collection.RelaxedRule{}, "At"),
		}
		if diff := cmp.Diff(want, got, ignore); diff != "" {
			t.Fatalf("(-want +got):\n%s\n%s", diff, text)
		}
	})
}

const drawn = "hyla-cinerea" // one species, so that all may be put together

// words are texts that YAML could take for something else.
var words = rapid.SampledFrom([]string{
	"", "Bram", "007", "1e3", "no", "true", "null", "~", "0x1F", "12:30", "2027-01-01", "a: b", "a #b", "- a", "'", `"`, `\`, "{a}", "[a]",
	"&a", "*a", "!a", "%a", "@a", "`a", "ä ö", "蛙", "🐸", "a'b\"c", "ends with:", "?", "|", ">", "=", "<<",
})

// draw gives a random valid collection. Values that the reader would fill in
// are filled in here, so every animal has its own line and dates where that
// matters.
func draw(t *rapid.T) *collection.Collection {
	c := must0("animals: []\n")
	c.Keeper = words.Draw(t, "keeper")
	start := civil.Of(2000, 1, 1)
	for i := range rapid.IntRange(0, 6).Draw(t, "animals") {
		a := collection.Animal{
			ID: fmt.Sprintf("%03d", i), Name: words.Draw(t, "name"), Species: drawn,
			Sex:      rapid.SampledFrom([]collection.Sex{collection.Male, collection.Female}).Draw(t, "sex"),
			Line:     "line " + words.Draw(t, "line") + ".",
			Locality: "at " + words.Draw(t, "locality") + ".",
			WeightG:  float64(rapid.IntRange(0, 90).Draw(t, "weight")) / 8,
			LengthMM: float64(rapid.IntRange(0, 90).Draw(t, "length")),
			Place:    words.Draw(t, "place"), Promised: words.Draw(t, "promised"), Note: words.Draw(t, "note"),
			SexSign: words.Draw(t, "sign"), Food: words.Draw(t, "food"), Holds: drawHolds(t, start),
			Hatched: start.Add(1000*i + 1), OutOfWater: start.Add(1000*i + rapid.IntRange(2, 99).Draw(t, "out")),
		}
		a.Sires, a.Dams = parents(t, c, collection.Male), parents(t, c, collection.Female)
		if i > 0 && rapid.Bool().Draw(t, "has a clutch") {
			drawClutch(t, c, &a, start.Add(1000*i))
		}
		if rapid.Bool().Draw(t, "gone") {
			a.Left, a.Died = start.Add(20_000+i), start.Add(20_000+2*i)
		}
		c.Animals = append(c.Animals, a)
	}
	drawDiary(t, c, start.Add(19_000))
	drawWishes(t, c, start.Add(10_000))
	return c
}

func must0(text string) *collection.Collection {
	c, problems := collection.Read("f", []byte(text))
	if c == nil {
		panic(problems.Err())
	}
	return c
}

// parents draws some of the animals of a sex that are there already.
func parents(t *rapid.T, c *collection.Collection, sex collection.Sex) []string {
	var ids []string
	for _, a := range c.Animals {
		if a.Sex == sex && rapid.Bool().Draw(t, "parent") {
			ids = append(ids, a.ID)
		}
	}
	return ids
}

func drawClutch(t *rapid.T, c *collection.Collection, a *collection.Animal, laid civil.Date) {
	a.Clutch = "K" + a.ID
	k := collection.Clutch{
		ID: a.Clutch, Species: drawn, Laid: laid, Sires: a.Sires, Dams: a.Dams, SireMix: collection.One, DamMix: collection.One,
		Eggs: rapid.SampledFrom([]int{0, 50, 99}).Draw(t, "eggs"), // more than drawDiary sells
		Line: a.Line, Place: words.Draw(t, "place"), Note: words.Draw(t, "note"),
		Food: words.Draw(t, "food"), Promised: drawPromises(t),
	}
	if rapid.Bool().Draw(t, "not seen laid") {
		k.Laid = 0 // its animal has hatched
	}
	if len(k.Sires) > 1 && rapid.Bool().Draw(t, "several") {
		k.SireMix = collection.Several
	}
	if len(k.Sires) > 0 && len(k.Dams) > 0 {
		k.Locality = common(c, slices.Concat(k.Sires, k.Dams))
	}
	c.Clutches = append(c.Clutches, k)
}

func common(c *collection.Collection, ids []string) string {
	var at []string
	for _, a := range c.Animals {
		if slices.Contains(ids, a.ID) {
			at = append(at, a.Locality)
		}
	}
	if slices.Sort(at); at[0] == at[len(at)-1] {
		return at[0]
	}
	return ""
}

func drawDiary(t *rapid.T, c *collection.Collection, on civil.Date) {
	for i := range rapid.IntRange(0, 6).Draw(t, "entries") {
		e := collection.Entry{On: on.Add(-i), Note: "on " + words.Draw(t, "note") + "."}
		if rapid.Bool().Draw(t, "measured") {
			e.WaterC = known(float64(rapid.IntRange(-20, 100).Draw(t, "water")) / 4)
		}
		switch rapid.IntRange(0, 2).Draw(t, "subject") {
		case 0:
			if len(c.Animals) == 0 {
				continue
			}
			e.Animal = c.Animals[0].ID
			e.WeightG = float64(rapid.IntRange(0, 99).Draw(t, "weight")) / 4
			drawHeld(t, &e)
		case 1:
			if len(c.Clutches) == 0 {
				continue
			}
			e.Clutch = c.Clutches[0].ID
			e.Gosner = rapid.IntRange(0, 1).Draw(t, "gosner")
			e.Count = known(0)
			if e.Sold = rapid.IntRange(0, 3).Draw(t, "sold"); e.Sold > 0 {
				e.To = words.Draw(t, "to")
			}
			e.HeldBack = rapid.IntRange(0, 3).Draw(t, "held back")
		case 2:
			e.Place = "tub " + words.Draw(t, "tub") + "."
		}
		c.Diary = append(c.Diary, e)
	}
}

// write renders a drawn collection in one of the ways that YAML knows.
func write(t *rapid.T, c *collection.Collection) string {
	w := &writer{t: t, flow: rapid.Bool().Draw(t, "flow")}
	w.WriteString("keeper: " + w.text(c.Keeper) + "\nanimals:\n")
	for _, a := range c.Animals {
		w.add("id", w.text(a.ID))
		w.add("name", w.text(a.Name))
		w.add("sex", string(a.Sex))
		w.add("line", w.text(a.Line))
		w.add("locality", w.text(a.Locality))
		w.add("hatched", w.date(a.Hatched))
		w.add("out_of_water", w.date(a.OutOfWater))
		w.add("died", w.date(a.Died))
		w.add("left", w.date(a.Left))
		w.add("weight_g", w.number(a.WeightG))
		w.add("length_mm", w.number(a.LengthMM))
		w.add("place", w.text(a.Place))
		w.add("promised", w.text(a.Promised))
		w.add("sex_sign", w.text(a.SexSign))
		w.add("food", w.text(a.Food))
		w.add("holds", w.holds(a.Holds))
		w.add("note", w.text(a.Note))
		if a.Clutch != "" && rapid.Bool().Draw(t, "clutch only") {
			w.add("clutch", w.text(a.Clutch))
		} else {
			w.add("clutch", w.text(a.Clutch))
			w.add("species", a.Species)
			w.add("sire", w.list(a.Sires))
			w.add("dam", w.list(a.Dams))
		}
		w.end()
	}
	w.WriteString("clutches:\n")
	for _, k := range c.Clutches {
		w.add("id", w.text(k.ID))
		w.add("laid", w.date(k.Laid))
		w.add("species", k.Species)
		w.add("sire", w.list(k.Sires))
		w.add("dam", w.list(k.Dams))
		if k.SireMix == collection.Several {
			w.add("sire_mix", "several")
		}
		w.add("food", w.text(k.Food))
		w.add("promised", w.promises(k.Promised))
		w.add("eggs", w.number(float64(k.Eggs)))
		w.add("line", w.text(k.Line))
		w.add("place", w.text(k.Place))
		w.add("note", w.text(k.Note))
		w.end()
	}
	w.WriteString("diary:\n")
	for _, e := range c.Diary {
		w.add("on", w.date(e.On))
		w.add("animal", w.text(e.Animal))
		w.add("clutch", w.text(e.Clutch))
		w.add("place", w.text(e.Place))
		w.add("weight_g", w.number(e.WeightG))
		w.add("gosner", w.number(float64(e.Gosner)))
		if e.Count.Known {
			w.add("count", strconv.Itoa(e.Count.Value))
		}
		if e.WaterC.Known {
			w.add("water_c", strconv.FormatFloat(e.WaterC.Value, 'f', -1, 64))
		}
		w.add("sold", w.number(float64(e.Sold)))
		w.add("held_back", w.number(float64(e.HeldBack)))
		w.add("to", w.text(e.To))
		w.add("hold", string(e.Hold))
		w.add("until", w.date(e.Until))
		if e.Ate {
			w.add("ate", "true")
		}
		w.add("note", w.text(e.Note))
		w.end()
	}
	w.wishes(c)
	return w.String()
}

// writer writes entries in flow or in block style.
type writer struct {
	strings.Builder
	t     *rapid.T
	flow  bool
	pairs []string
}

// add adds a key with a value; an empty value is left out.
func (w *writer) add(key, value string) {
	if value != "" {
		w.pairs = append(w.pairs, key+": "+value)
	}
}

func (w *writer) end() {
	if w.flow {
		w.WriteString("  - {" + strings.Join(w.pairs, ", ") + "}\n")
	} else {
		w.WriteString("- " + strings.Join(w.pairs, "\n  ") + "\n")
	}
	w.pairs = nil
}

// text quotes with one sort of quotes or the other.
func (w *writer) text(s string) string {
	switch {
	case s == "":
		return ""
	case rapid.Bool().Draw(w.t, "single quotes"):
		return "'" + strings.ReplaceAll(s, "'", "''") + "'"
	}
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(s) + `"`
}

func (w *writer) list(ids []string) string {
	switch len(ids) {
	case 0:
		return ""
	case 1:
		return w.text(ids[0])
	}
	quoted := make([]string, len(ids))
	for i, id := range ids {
		quoted[i] = w.text(id)
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}

func (w *writer) date(d civil.Date) string {
	if !d.Known() {
		return ""
	}
	return d.String()
}

func (w *writer) number(v float64) string {
	if v == 0 {
		return ""
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}
