package record_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/record"
	"github.com/spawnwright/spawnwright/pkg/species"
)

const small = `animals:
  - {id: AC-01, name: Otto, species: agalychnis-callidryas, sex: male, place: tank-1}
  - {id: AC-02, name: Wilma, species: agalychnis-callidryas, sex: female, place: tank-1}
  - {id: HC-7, species: hyla-cinerea}
clutches:
  - {id: C-26-09, laid: 2026-05-01, dam: AC-02, sire: AC-01, eggs: 40, ended: 2026-09-01}
  - {id: C-27-02, laid: 2027-01-30, dam: AC-02, sire: AC-01, eggs: 40, place: tub-2}
pairings:
  - {id: P-27-01, dam: AC-02, sire: AC-01, start: 2027-02-01}
diary: []
`

// TestForms has what each form writes, and says.
func TestForms(t *testing.T) {
	type edit = func(b *record.Book) (record.Edit, error)
	count := func(n int) collection.Given[int] { return collection.Given[int]{Value: n, Known: true} }
	for _, row := range []struct {
		name, writes, says string
		form               edit
	}{
		{"seen", "clutch: C-27-02, saw: hatched, count: 0", "clutch C-27-02: seen hatched, 0 counted", func(b *record.Book) (record.Edit, error) {
			return b.Seen(today, "", record.Sight{Stage: "hatched", Count: count(0)})
		}},
		{"gosner", "clutch: C-27-02, gosner: 42, some: true", "clutch C-27-02: some seen at Gosner stage 42", func(b *record.Book) (record.Edit, error) {
			return b.Seen(today, "C-27-02", record.Sight{Stage: "42", Some: true})
		}},
		{"losses alone", "clutch: C-27-02, losses: 2", "clutch C-27-02: 2 found dead", func(b *record.Book) (record.Edit, error) {
			return b.Seen(today, "C-27-02", record.Sight{Losses: 2})
		}},
		{"grams", "animal: AC-02, weight_g: 12.4", "animal AC-02: weighs 12.4 g", func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "12.4g") }},
		{"ounces", "animal: AC-02, weight: 0.44 oz", "animal AC-02: weighs 0.44 oz", func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "0.44oz") }},
		{"smallest of a clutch", "clutch: C-27-02, weight: 900 mg", "clutch C-27-02: weighs 900 mg", func(b *record.Book) (record.Edit, error) { return b.Weight(today, "C-27-02", "900 mg") }},
		{"length", "animal: AC-02, length_mm: 69", "animal AC-02: is 69 mm long", func(b *record.Book) (record.Edit, error) { return b.Length(today, "AC-02", "69mm") }},
		{"inches", "animal: AC-02, length: 2.7 in", "animal AC-02: is 2.7 in long", func(b *record.Book) (record.Edit, error) { return b.Length(today, "AC-02", "2.7in") }},
		{"moved", `animal: AC-02, moved_to: "tank #2"`, "animal AC-02: moved to tank #2", func(b *record.Book) (record.Edit, error) { return b.Moved(today, "AC-02", "tank #2") }},
		{"died", "animal: AC-02, status: died", "animal AC-02: died", func(b *record.Book) (record.Edit, error) { return b.Died(today, "AC-02", 0) }},
		{"some died", "clutch: C-27-02, losses: 3", "clutch C-27-02: 3 found dead", func(b *record.Book) (record.Edit, error) { return b.Died(today, "C-27-02", 3) }},
		{"sold", "animal: AC-01, status: left, to: Keeper Q", "animal AC-01: left to Keeper Q", func(b *record.Book) (record.Edit, error) { return b.Sold(today, "AC-01", 0, "Keeper Q") }},
		{"some sold", "clutch: C-27-02, sold: 4", "clutch C-27-02: 4 sold", func(b *record.Book) (record.Edit, error) { return b.Sold(today, "C-27-02", 4, "") }},
		{"ate", "animal: HC-7, ate: true", "animal HC-7: seen eating", func(b *record.Book) (record.Edit, error) { return b.Ate(today, "HC-7") }},
		{"clutch ate", "clutch: C-27-02, saw: eating", "clutch C-27-02: seen eating", func(b *record.Book) (record.Edit, error) { return b.Ate(today, "C-27-02") }},
		{"hold", "animal: HC-7, hold: quarantine, until: 2027-03-05", "animal HC-7: quarantine hold begins, until 2027-03-05", func(b *record.Book) (record.Edit, error) {
			return b.Hold(today, "HC-7", collection.Quarantine, civil.Of(2027, 3, 5))
		}},
		{"lifted", "animal: HC-7, hold: lifted", "animal HC-7: holds lifted", func(b *record.Book) (record.Edit, error) { return b.Hold(today, "HC-7", collection.Lifted, 0) }},
		{"water", "place: tub-2, water_c: 23.5", "tub-2: water 23.5 °C", func(b *record.Book) (record.Edit, error) {
			return b.Temperature(today, "tub-2", "23.5C", false, false)
		}},
		{"freezing air", "place: balcony, air_c: -2", "balcony: air -2 °C", func(b *record.Book) (record.Edit, error) {
			return b.Temperature(today, "balcony", "-2°C", true, true)
		}},
		{"fahrenheit", "clutch: C-27-02, water: 74 F", "clutch C-27-02: water 74 F", func(b *record.Book) (record.Edit, error) {
			return b.Temperature(today, "C-27-02", "74F", false, false)
		}},
		{"note", `pairing: P-27-01, note: "calls: all night\nand the next"`, `pairing P-27-01: "calls: all night\nand the next"`, func(b *record.Book) (record.Edit, error) {
			return b.Note(today, "P-27-01", "calls: all night\nand the next", false)
		}},
		{"began", "pairing: P-27-01, began: rain", "pairing P-27-01: rain began", func(b *record.Book) (record.Edit, error) { return b.Began(today, "P-27-01", species.Rain) }},
		{"laid", "clutch: C-27-03, note: laid", "clutch C-27-03: laid", func(b *record.Book) (record.Edit, error) { return b.Laid(today, record.Laying{Pairing: "P-27-01"}) }},
		{"held back", `clutch: C-27-02, held_back: 2, note: "as AC-03, AC-04"`, "clutch C-27-02: 2 held back as AC-03, AC-04", func(b *record.Book) (record.Edit, error) { return b.HeldBack(today, record.Holding{Count: 2}) }},
		{"held back by name", `clutch: C-27-02, held_back: 1, note: as X; the blue one`, "clutch C-27-02: 1 held back as X; the blue one", func(b *record.Book) (record.Edit, error) {
			e, err := b.HeldBack(today, record.Holding{IDs: []string{"X"}})
			e.Remark("the blue one")
			return e, err
		}},
	} {
		t.Run(row.name, func(t *testing.T) {
			b := open(t, small)
			e, err := row.form(b)
			require.NoError(t, err)
			assert.Equal(t, "2027-02-03, "+row.says, e.String())
			p, err := b.Plan(e)
			require.NoError(t, err)
			assert.Contains(t, string(p.Text), "\ndiary: [{on: 2027-02-03, "+row.writes+"}]\n")

			undone, err := open(t, string(p.Text)).Undo()
			require.NoError(t, err)
			assert.Equal(t, small, string(undone.Text), "taken back")
			assert.Len(t, undone.Lines, len(p.Lines))
		})
	}
}

// TestFormsRefuse has what is not taken, and the cure.
func TestFormsRefuse(t *testing.T) {
	for _, row := range []struct {
		name, says string
		form       func(b *record.Book) (record.Edit, error)
	}{
		{"slip in an id", `there is no animal or clutch "AC-o2" in the file; did you mean "AC-02"?`, func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-o2", "1g") }},
		{"a name", `"Wilma" is the name of an animal; write its id, AC-02`, func(b *record.Book) (record.Edit, error) { return b.Weight(today, "Wilma", "1g") }},
		{"no unit", "the weight 12.4 has no unit; write its unit: 12.4g", func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "12.4") }},
		{"comma", `the weight is "12,4g"; write a point: 12.4g`, func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "12,4g") }},
		{"a temperature without a unit", "the temperature 50 has no unit; write its unit: 50C or 50F", func(b *record.Book) (record.Edit, error) { return b.Temperature(today, "tub-2", "50", false, false) }},
		{"comma and no unit", "the weight 12,4 has no unit; write its unit: 12.4g", func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "12,4") }},
		{"unknown unit", `the weight has the unknown unit "lb"; units known here: g, kg, mg, oz`, func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "1lb") }},
		{"no number", `the weight is "heavy"; write a number and its unit, such as 12.4g`, func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "heavy") }},
		{"nothing", "AC-02 weighs nothing; measure again", func(b *record.Book) (record.Edit, error) { return b.Weight(today, "AC-02", "0g") }},
		{"no length", "AC-02 has no length; measure again", func(b *record.Book) (record.Edit, error) { return b.Length(today, "AC-02", "0mm") }},
		{"how many died", "C-27-02 is a clutch; say how many were found dead, with --count", func(b *record.Book) (record.Edit, error) { return b.Died(today, "C-27-02", 0) }},
		{"one animal", "AC-02 is one animal; record each by its own id", func(b *record.Book) (record.Edit, error) { return b.Died(today, "AC-02", 2) }},
		{"how many sold", "C-27-02 is a clutch; say how many left, with --count", func(b *record.Book) (record.Edit, error) { return b.Sold(today, "C-27-02", 0, "") }},
		{"one animal sold", "AC-02 is one animal; record each by its own id", func(b *record.Book) (record.Edit, error) { return b.Sold(today, "AC-02", 2, "") }},
		{"new place", `there is no animal, clutch, pairing or place "tub-1" in the file; did you mean "tub-2"? --new says that the place is a new one`, func(b *record.Book) (record.Edit, error) { return b.Temperature(today, "tub-1", "2C", false, false) }},
		{"another new place", `there is no animal, clutch, pairing or place "balcony" in the file; say that the place is a new one with --new`, func(b *record.Book) (record.Edit, error) { return b.Note(today, "balcony", "x", false) }},
		{"pairing has no temperature", "P-27-01 is a pairing, which has no temperature; name a place, a clutch or an animal", func(b *record.Book) (record.Edit, error) { return b.Temperature(today, "P-27-01", "2C", false, false) }},
		{"empty note", "the note is empty; write what is to be remembered", func(b *record.Book) (record.Edit, error) { return b.Note(today, "AC-02", "", false) }},
		{"stage", `there is no stage "frontlegs"; did you mean "front-legs"?`, func(b *record.Book) (record.Edit, error) {
			return b.Seen(today, "", record.Sight{Stage: "frontlegs"})
		}},
		{"Gosner stage", "there is no stage 47; Gosner stages go from 1 to 46", func(b *record.Book) (record.Edit, error) { return b.Seen(today, "", record.Sight{Stage: "47"}) }},
		{"some of what", "some of C-27-02 were that far, but how far is not said; name the stage", func(b *record.Book) (record.Edit, error) { return b.Seen(today, "", record.Sight{Some: true}) }},
		{"seen what", "it is not said what was seen of C-27-02; name the stage, or say how many were counted", func(b *record.Book) (record.Edit, error) { return b.Seen(today, "", record.Sight{}) }},
		{"none is running", "no clutch is running on 2026-12-01; name one", func(b *record.Book) (record.Edit, error) {
			return b.Seen(civil.Of(2026, 12, 1), "", record.Sight{Stage: "hatched"})
		}},
		{"phase", `there is no phase "rian"; did you mean "rain"?`, func(b *record.Book) (record.Edit, error) { return b.Began(today, "P-27-01", "rian") }},
		{"pairing", `there is no pairing "P-27-02" in the file; did you mean "P-27-01"?`, func(b *record.Book) (record.Edit, error) { return b.Began(today, "P-27-02", "rain") }},
		{"whose eggs", "it is not said whose eggs these are; name the dam, the pairing or the species", func(b *record.Book) (record.Edit, error) { return b.Laid(today, record.Laying{Eggs: 3}) }},
		{"id that is taken", `id "AC-01" is taken; take another id`, func(b *record.Book) (record.Edit, error) {
			return b.Laid(today, record.Laying{Dams: []string{"AC-02"}, ID: "AC-01"})
		}},
		{"how many held back", "it is not clear how many of C-27-02 are held back; say how many, from 1 to 1000", func(b *record.Book) (record.Edit, error) { return b.HeldBack(today, record.Holding{}) }},
		{"two numbers", "3 are held back, but 1 ids are given; correct the one or the other", func(b *record.Book) (record.Edit, error) {
			return b.HeldBack(today, record.Holding{Count: 3, IDs: []string{"X"}})
		}},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := row.form(open(t, small))
			var refusal *record.Refusal
			require.ErrorAs(t, err, &refusal)
			assert.Equal(t, row.says, err.Error())
		})
	}
}

// TestNextIDs follows the pattern of the file.
func TestNextIDs(t *testing.T) {
	for _, row := range []struct{ name, reason, clutches, want string }{
		{"none", "the pattern of the examples", "", "C-27-01"},
		{"this year", "the next number", "C-26-01 2026, C-27-02 2027, C-27-04 2027", "C-27-05"},
		{"out of order", "the highest number counts", "C-27-04 2027, C-27-02 2027", "C-27-05"},
		{"new year", "the year moves on and the number begins again", "C-26-11 2026", "C-27-01"},
		{"new year, begun", "a number that is used in it counts", "C-27-03 2027, C-26-11 2026", "C-27-04"},
		{"long year", "likewise", "2026/7 2026", "2027/1"},
		{"not a year", "a number that happens to stand there stays", "C-12-07 2026", "C-12-08"},
		{"plain numbers", "the width is kept", "007 2026, 008 2026", "009"},
		{"over the width", "it grows", "K9 2027", "K10"},
		{"no number", "a word is no pattern", "Spring 2026", "C-27-01"},
		{"other species last", "each species may have its own pattern", "AC-C-3 2027, hyla:HC-C-9 2027", "AC-C-4"},
	} {
		t.Run(row.name, func(t *testing.T) {
			var text strings.Builder
			text.WriteString(frogs + "clutches:\n")
			for word := range strings.SplitSeq(row.clutches, ", ") {
				id, year, given := strings.Cut(word, " ")
				if !given {
					continue
				}
				rest, hyla := strings.CutPrefix(id, "hyla:")
				kind := "agalychnis-callidryas"
				if hyla {
					kind = "hyla-cinerea"
				}
				text.WriteString("  - {id: \"" + rest + "\", species: " + kind + ", laid: " + year + "-01-01}\n")
			}
			e, err := open(t, text.String()).Laid(today, record.Laying{Species: "agalychnis-callidryas"})
			require.NoError(t, err)
			assert.Equal(t, row.want, e.Clutch.ID, row.reason)
		})
	}
}

func TestRunning(t *testing.T) {
	b := open(t, small)
	assert.Equal(t, []string{"C-27-02"}, b.Running(today))
	assert.Equal(t, []string{"C-26-09"}, b.Running(civil.Of(2026, 8, 31)))
	assert.Empty(t, b.Running(civil.Of(2026, 9, 1)), "it ended that day")
}
