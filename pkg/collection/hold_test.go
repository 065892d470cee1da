package collection_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// kinds gives the holds of an animal on a day as words.
func kinds(c *collection.Collection, animal, on string) []string {
	var words []string
	var end civil.Date
	if on != "" {
		end = day(on)
	}
	for _, h := range c.HoldsAt(animal, end) {
		words = append(words, string(h.Kind)+" until "+h.Until.String())
	}
	return words
}

func TestHoldsAt(t *testing.T) {
	c := must(t, `
animals:
  - {id: A, species: hyla-cinerea, holds: [{kind: quarantine, from: 2027-01-01, until: 2027-01-30}, {kind: health}]}
  - {id: B, species: hyla-cinerea}
  - {id: C, species: hyla-cinerea, holds: [{kind: quarantine, from: 2027-01-01}]}
diary:
  - {on: 2027-01-20, animal: A, hold: lifted}
  - {on: 2027-01-25, animal: A, hold: health, until: 2027-02-05}
  - {on: 2027-02-01, animal: B, hold: quarantine, until: 2027-03-02}
  - {on: 2027-02-10, animal: B, hold: health}
  - {on: 2027-02-20, animal: B, hold: quarantine, until: 2027-03-21}
  - {on: 2027-01-05, animal: C, note: nothing about the hold}
`)
	for _, row := range []struct {
		animal, on string
		want       []string
		reason     string
	}{
		{"A", "2026-12-31", []string{"health until unknown"}, "without a first day it was always so"},
		{"A", "2027-01-01", []string{"quarantine until 2027-01-30", "health until unknown"}, "the first day counts"},
		{"A", "2027-01-19", []string{"quarantine until 2027-01-30", "health until unknown"}, "what the diary says later is not known yet"},
		{"A", "2027-01-20", nil, "lifted ends all, on its day"},
		{"A", "2027-02-05", []string{"health until 2027-02-05"}, "the last day counts"},
		{"A", "2027-02-06", nil, "and no day after"},
		{"B", "2027-01-31", nil, "before anything"},
		{"B", "2027-02-19", []string{"quarantine until 2027-03-02", "health until unknown"}, "two kinds stand beside each other"},
		{"B", "2027-02-20", []string{"health until unknown", "quarantine until 2027-03-21"}, "a later entry takes the place of its kind"},
		{"B", "2027-03-10", []string{"health until unknown", "quarantine until 2027-03-21"}, "and reaches farther"},
		{"B", "", []string{"health until unknown"}, "the end of the diary"},
		{"C", "2027-06-01", []string{"quarantine until unknown"}, "until it is lifted"},
		{"nobody", "2027-06-01", nil, "no such animal"},
	} {
		assert.Equal(t, row.want, kinds(c, row.animal, row.on), "%s on %s: %s", row.animal, row.on, row.reason)
	}
}

func TestOwed(t *testing.T) {
	c := must(t, `
clutches:
  - {id: K, species: hyla-cinerea, laid: 2025-02-01, promised: [{to: Anna, count: 3}, {to: Bernd, count: 2}, {to: Anna, count: 1}]}
diary:
  - {on: 2025-04-01, clutch: K, sold: 2, to: Anna}
  - {on: 2025-04-02, clutch: K, sold: 5}
  - {on: 2025-04-03, clutch: K, sold: 1, to: anna}
  - {on: 2025-04-04, clutch: K, sold: 9, to: Bernd}
`)
	for _, row := range []struct {
		on     string
		want   []collection.Promise
		reason string
	}{
		{"2025-03-31", []collection.Promise{{To: "Anna", Count: 3}, {To: "Bernd", Count: 2}, {To: "Anna", Count: 1}}, "nothing sold"},
		{"2025-04-02", []collection.Promise{{To: "Anna", Count: 1}, {To: "Bernd", Count: 2}, {To: "Anna", Count: 1}}, "what others bought does not count"},
		{"2025-04-03", []collection.Promise{{To: "Bernd", Count: 2}, {To: "Anna", Count: 1}}, "the first promise of a name, in any case, is fulfilled first"},
		{"2025-04-04", []collection.Promise{{To: "Anna", Count: 1}}, "more than was promised"},
	} {
		got := c.Owed("K", day(row.on))
		for i := range got {
			got[i].At = at(0, 0)
		}
		assert.Equal(t, row.want, got, row.reason)
	}
	assert.Empty(t, c.Owed("nobody", 0))
}

func TestFirstSeen(t *testing.T) {
	c := must(t, `
animals:
  - {id: A, clutch: K1, hatched: 2025-02-12}
  - {id: B, clutch: K1, hatched: 2025-02-10}
  - {id: C, clutch: K2, hatched: 2025-02-10}
clutches:
  - {id: K1, species: hyla-cinerea}
  - {id: K2, species: hyla-cinerea}
  - {id: K3, species: hyla-cinerea, laid: 2025-02-01}
  - {id: K4, species: hyla-cinerea, laid: 2025-02-01}
diary:
  - {on: 2025-02-20, clutch: K1, gosner: 26}
  - {on: 2025-02-19, clutch: K2, count: 12}
  - {on: 2025-02-10, clutch: K2, saw: hatched}
  - {on: 2025-02-11, clutch: K3, gosner: 20, some: true}
`)
	for _, row := range []struct {
		clutch string
		want   collection.Look
		since  string
		reason string
	}{
		{"K1", collection.Look{On: day("2025-02-10"), Saw: "hatched", Some: true, At: at(4, 10)}, "2025-02-10", "the first of its animals, and not necessarily all"},
		{"K2", collection.Look{On: day("2025-02-10"), Saw: "hatched", At: at(14, 5)}, "2025-02-10", "of one day the diary comes first"},
		{"K3", collection.Look{On: day("2025-02-11"), Gosner: 20, Some: true, At: at(15, 5)}, "2025-02-01", "the date of laying goes before what was seen"},
	} {
		got, ok := c.FirstSeen(row.clutch)
		assert.True(t, ok, row.clutch)
		assert.Equal(t, row.want, got, row.reason)
		assert.Equal(t, day(row.since), c.Since(row.clutch), row.reason)
	}
	_, ok := c.FirstSeen("K4")
	assert.False(t, ok, "nothing was seen")
	_, ok = c.FirstSeen("A")
	assert.False(t, ok, "an animal is no clutch")
	assert.False(t, c.Since("A").Known())
}

// Before a clutch was laid nothing of it can have been seen.
func TestEntriesBeforeLayingAreLeftOut(t *testing.T) {
	c, problems := collection.Read("f", []byte(`
animals: [{id: A, clutch: K}]
clutches: [{id: K, species: hyla-cinerea, laid: 2025-02-01}]
diary:
  - {on: 2025-01-31, clutch: K, saw: hatched, count: 3, water_c: 20}
  - {on: 2025-02-01, clutch: K, count: 2}
`))
	assert.Len(t, problems, 1)
	a, _ := c.Animal("A")
	assert.False(t, a.Hatched.Known())
	assert.Empty(t, c.Looks("K"))
	assert.Empty(t, c.Temperatures("K"))
	assert.Len(t, c.Counts("K"), 1)
}
