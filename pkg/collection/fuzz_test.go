package collection_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// FuzzRead asks for a collection or an error, the same each time, whatever the
// file; and walks through all that a collection offers.
func FuzzRead(f *testing.F) {
	data, err := os.ReadFile(filepath.Join("testdata", "full.yaml"))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(string(data))
	for _, seed := range []string{
		"", "keeper: x\n", "animals: [{id: A, species: hyla-cinerea, sire: A}]", "animals: [~, 1, [], {}]\ndiary: [{on: 2027-01-01}]",
		"clutches: [{id: K, laid: 2027-01-01, pairing: P}]\npairings: [{id: P, dam: A, sire: A, target: t}]\nanimals: [{id: A, clutch: K}]",
		"away: [2027-01-01..2027-02-01, 2027-01-05]\nshipping: {weekdays: []}\nspecies: [{use: hyla-cinerea}]",
		"diary: [{on: 2027-01-01, clutch: K, gosner: 46, saw: toes}]\nclutches: [{id: K, laid: 2027-01-01, sire: [x, x]}]",
		"animals: [{id: A, species: hyla-cinerea, sex: male, sex_sign: called, holds: [{kind: health, until: 2027-01-01}, ~]}]\n" +
			"diary: [{on: 2026-01-01, animal: A, hold: lifted}, {on: 2026-01-02, animal: A, hold: quarantine, until: 2026-02-01, ate: true}]",
		"clutches: [{id: K, species: hyla-cinerea, eggs: 3, promised: [{to: x, count: 2}]}]\n" +
			"diary: [{on: 2026-01-01, clutch: K, saw: hatched}, {on: 2026-01-02, clutch: K, sold: 2, to: x, held_back: 1}, {on: 2027-09-09, clutch: K, gosner: 20, water_c: 78}]",
		"rules: {relax: [rest], space_pct: [10, 90]}\nequipment: {retry_after_days: 3}\ncard: {contact: me}\nshipping: {carrier_closed: [2027-12-24]}",
	} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, problems := collection.Read("f", []byte(text))
		if (c == nil) != problems.HasErrors() {
			t.Fatalf("collection: %v, problems: %v", c != nil, problems)
		}
		_, again := collection.Read("f", []byte(text))
		if len(again) != len(problems) {
			t.Fatalf("%d problems, then %d", len(problems), len(again))
		}
		for i, p := range problems {
			if p != again[i] {
				t.Fatalf("%v, then %v", p, again[i])
			}
			if p.Message == "" || p.Line < 0 || p.Severity == strictyaml.Error && p.Cure == "" || strings.HasSuffix(p.Message, ".") {
				t.Fatalf("%#v", p)
			}
		}
		if c != nil {
			walk(t, c)
		}
	})
}

func walk(t *testing.T, c *collection.Collection) {
	for i := range c.Animals {
		a := &c.Animals[i]
		if found, ok := c.Animal(a.ID); !ok || found != a {
			t.Fatalf("animal %q is not found", a.ID)
		}
		if _, ok := c.Profile(a.Species); !ok {
			t.Fatalf("animal %q has no profile", a.ID)
		}
		c.Weight(a.ID, 0)
		c.PlaceOf(a.ID, 0)
		c.HoldsAt(a.ID, 0)
	}
	for i := range c.Clutches {
		k := &c.Clutches[i]
		if _, ok := c.Profile(k.Species); !ok || !c.Since(k.ID).Known() {
			t.Fatalf("clutch %q has no profile or date", k.ID)
		}
		c.Looks(k.ID)
		c.Counts(k.ID)
		c.Owed(k.ID, 0)
		c.Temperatures(k.ID)
	}
	for i := range c.Pairings {
		p := &c.Pairings[i]
		if len(p.Dams) == 0 || len(p.Sires) == 0 || p.Start.Known() == p.ReadyBy.Known() {
			t.Fatalf("pairing %#v", p)
		}
		c.Began(p.ID)
	}
	for i := range c.Diary {
		if !c.Diary[i].On.Known() || c.Diary[i].Subject() == "" {
			t.Fatalf("entry %#v", c.Diary[i])
		}
	}
}
