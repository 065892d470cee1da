package frogroom_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// brood has two grown couples, related to nobody, and young of theirs.
const brood = basic + `
  - {id: K1, clutch: C-26-01, out_of_water: 2026-09-01}
  - {id: K2, clutch: C-26-01, out_of_water: 2026-09-01}
  - {id: K3, clutch: C-26-02, out_of_water: 2026-09-01}
  - {id: K4, clutch: C-26-02, out_of_water: 2026-09-01, promised: a friend}
  - {id: K5, clutch: C-26-02, out_of_water: 2026-09-01, left: 2026-12-01}
clutches:
  - {id: C-26-01, laid: 2026-07-01, dam: D, sire: A}
  - {id: C-26-02, laid: 2026-07-02, dam: E, sire: B}
`

func ids(animals []breedingplan.Selected) []string {
	out := []string{}
	for _, a := range animals {
		out = append(out, a.ID)
	}
	return out
}

func TestKeep(t *testing.T) {
	r := room(t, brood)
	on := day("2027-03-01")
	s, err := r.Keep(on, 2, breedingplan.Wish{})
	require.NoError(t, err)
	require.Len(t, s.Species, 1)
	assert.Equal(t, []string{"K1", "K3"}, ids(s.Species[0].Chosen), "one of each clutch; the promised one is not there to keep")
	assert.Equal(t, []string{"K2"}, ids(s.Species[0].Others))
	// 4 x 1/2 + 2 x 1/2 of themselves, and 2 x 2 x 2 x 1/4 with their parents, over 36.
	assert.InDelta(t, 1-5.0/36, s.Species[0].GeneDiversity, 1e-12)
	assert.True(t, s.Species[0].Proven)

	s, err = r.Keep(on, 9, breedingplan.Wish{Without: [][2]string{{"K3", ""}}})
	require.NoError(t, err)
	assert.Equal(t, []string{"K1", "K2"}, ids(s.Species[0].Chosen))
	assert.InDelta(t, 0.25, s.Species[0].Closest, 1e-12)
}

func TestUnrelated(t *testing.T) {
	r := room(t, brood)
	s, err := r.Unrelated(day("2027-03-01"), 4, breedingplan.Wish{})
	require.NoError(t, err)
	assert.Equal(t, []string{"A", "B", "D", "E"}, ids(s.Species[0].Chosen))
	assert.Zero(t, s.Species[0].Closest)

	var wrong *breedingplan.WishError
	_, err = r.Unrelated(day("2027-03-01"), 0, breedingplan.Wish{})
	require.True(t, errors.As(err, &wrong))
	var unknown *collection.UnknownError
	_, err = r.Keep(day("2027-03-01"), 1, breedingplan.Wish{Species: "nobody"})
	require.True(t, errors.As(err, &unknown))
}

// TestUnrelatedSparesTheRare: of groups that are as little related those animals go of which the
// line has more. U and V have no kin here, and are as little related to C as to each other.
func TestUnrelatedSparesTheRare(t *testing.T) {
	r := room(t, `
species: [{use: hyla-cinerea}]
animals:
  - {id: U, species: hyla-cinerea, sex: male, acquired: 2022-05-01}
  - {id: V, species: hyla-cinerea, sex: female, acquired: 2022-05-01}
  - {id: A, species: hyla-cinerea, sex: male, acquired: 2022-05-01}
  - {id: B, species: hyla-cinerea, sex: female, acquired: 2022-05-01}
  - {id: C, species: hyla-cinerea, sex: male, acquired: 2023-05-01, sire: A, dam: B}
  - {id: D, species: hyla-cinerea, sex: female, acquired: 2023-05-01, sire: A, dam: B}
`)
	s, err := r.Unrelated(day("2027-03-01"), 2, breedingplan.Wish{})
	require.NoError(t, err)
	assert.Equal(t, []string{"U", "C"}, ids(s.Species[0].Chosen))
	assert.Zero(t, s.Species[0].Closest)
}

// TestExchangeAgainstTheFile holds what is reckoned for an animal against a file in
// which it came, and has young.
func TestExchangeAgainstTheFile(t *testing.T) {
	on := day("2027-03-01")
	of := func(text string) float64 { return room(t, text).Kin(on).Groups[0].GeneDiversity }
	base := basic
	e, err := room(t, base).Exchange(on, breedingplan.Wish{})
	require.NoError(t, err)
	require.Len(t, e.Species[0].Animals, 1)
	stranger := e.Species[0].Animals[0]
	newcomer := base + "  - {id: S, species: clockwork, sex: male, acquired: 2026-01-01}\n"
	assert.InDelta(t, of(newcomer), stranger.With, 1e-12)
	young := "  - {id: Y1, species: clockwork, sire: S, dam: D, acquired: 2027-02-01}\n  - {id: Y2, species: clockwork, sire: S, dam: D, acquired: 2027-02-01}\n"
	assert.InDelta(t, of(newcomer+young), stranger.WithYoung, 1e-12)

	gone := base + "  - {id: K, species: clockwork, sire: A, dam: D, sex: male, acquired: 2024-01-01%s}\n"
	e, err = room(t, fmt.Sprintf(gone, ", left: 2026-01-01")).Exchange(on, breedingplan.Wish{})
	require.NoError(t, err)
	require.Len(t, e.Species[0].Animals, 2)
	assert.Equal(t, "", e.Species[0].Animals[0].ID, "the unrelated one helps most")
	assert.InDelta(t, of(fmt.Sprintf(gone, "")), e.Species[0].Animals[1].With, 1e-12)
	grown := "  - {id: Y1, species: clockwork, sire: K, dam: E, acquired: 2027-02-01}\n  - {id: Y2, species: clockwork, sire: K, dam: E, acquired: 2027-02-01}\n"
	assert.InDelta(t, of(fmt.Sprintf(gone, "")+grown), e.Species[0].Animals[1].WithYoung, 1e-12)
}

// TestOutsiderAgainstTheFile holds what is reckoned for an animal that is described against a
// file in which it stands.
func TestOutsiderAgainstTheFile(t *testing.T) {
	on := day("2027-03-01")
	base := basic + "  - {id: G, species: clockwork, sire: A, dam: D, sex: male, acquired: 2024-01-01}\n"
	of := func(text string) float64 { return room(t, text).Kin(on).Groups[0].GeneDiversity }
	for _, row := range []struct {
		why      string
		is       breedingplan.Outsider
		parents  string
		mates    []string // that it may have
		refusing string   // a limit on inbreeding
	}{
		{"unrelated", breedingplan.Outsider{Sex: pairing.Male}, "", []string{"D", "E"}, ""},
		{"one parent from here", breedingplan.Outsider{Sex: pairing.Female, Sire: "A"}, "sire: A, ", []string{"A", "B", "G"}, "rules: {max_inbreeding: 1}\n"},
		{"a daughter is not paired with her sire, nor with a half brother", breedingplan.Outsider{Sex: pairing.Female, Sire: "A"}, "sire: A, ", []string{"B"}, ""},
		{"inbred by both parents", breedingplan.Outsider{Sire: "G", Dam: "D"}, "sire: G, dam: D, ", []string{"B", "E"}, ""},
	} {
		t.Run(row.why, func(t *testing.T) {
			row.is.Name, row.is.Species = "Nuria", "clockwork"
			e, err := room(t, base+row.refusing).Exchange(on, breedingplan.Wish{}, row.is)
			require.NoError(t, err)
			var got breedingplan.Exchange
			for _, x := range e.Species[0].Animals {
				if x.Name == "Nuria" {
					got = x
				}
			}
			sex := row.is.Sex
			joined := base + fmt.Sprintf("  - {id: N, species: clockwork, %ssex: %s, acquired: 2026-01-01}\n", row.parents, sex)
			assert.InDelta(t, of(joined), got.With, 1e-12)
			best, mate := 0.0, ""
			for _, m := range row.mates {
				young := ""
				for _, id := range []string{"Y1", "Y2"} {
					a, _ := room(t, base).Collection.Animal(m)
					sire, dam := m, "N"
					if a.Sex == collection.Female {
						sire, dam = "N", m
					}
					young += fmt.Sprintf("  - {id: %s, species: clockwork, sire: %s, dam: %s, acquired: 2027-02-01}\n", id, sire, dam)
				}
				text := joined + young
				if sex == pairing.SexUnknown {
					text = strings.Replace(text, "sex: unknown", "sex: "+map[bool]string{true: "female", false: "male"}[m == "B"], 1)
				}
				if gd := of(text); gd > best+1e-12 {
					best, mate = gd, m
				}
			}
			assert.InDelta(t, best, got.WithYoung, 1e-12)
			assert.Equal(t, mate, got.Mate)
		})
	}
}

// TestInbredOutsider: an unrelated animal that is inbred by F has F/2 more kinship with itself.
func TestInbredOutsider(t *testing.T) {
	e, err := room(t, basic).Exchange(day("2027-03-01"), breedingplan.Wish{}, breedingplan.Outsider{Species: "clockwork", Inbreeding: 0.25})
	require.NoError(t, err)
	line := e.Species[0]
	require.Len(t, line.Animals, 2)
	n := 4.0 // A, B, D and E
	assert.InDelta(t, line.Animals[0].With-0.125/((n+1)*(n+1)), line.Animals[1].With, 1e-12)
}

// TestSelectionsOfRandomRooms: everybody who could be chosen is in one of the two lists, and an
// unrelated animal never makes a line poorer.
func TestSelectionsOfRandomRooms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFile(t)
		r, _ := frogroom.Read("room.yaml", []byte(f.text(f.diary)))
		on := civil.Date(rapid.IntRange(int(day("2023-06-01")), int(day("2028-12-31"))).Draw(t, "on"))
		count := rapid.IntRange(1, 4).Draw(t, "count")
		s, err := r.Unrelated(on, count, breedingplan.Wish{})
		require.NoError(t, err)
		for _, one := range s.Species {
			require.Len(t, one.Chosen, min(count, len(one.Chosen)+len(one.Others)))
			require.True(t, one.Proven)
			told := map[string]bool{}
			for _, x := range slices.Concat(one.Chosen, one.Others) {
				told[x.ID] = true
				a, _ := r.Collection.Animal(x.ID)
				require.Empty(t, a.Promised, "a promised animal is not offered")
				require.Empty(t, r.Collection.HoldsAt(x.ID, on), "nor one that is held")
			}
			for _, x := range one.NotReady {
				require.False(t, told[x.ID], x.ID)
				require.NotEmpty(t, x.Why)
				require.True(t, !x.From.Known() || x.From > on)
				told[x.ID] = true
			}
			here := 0
			for _, a := range r.Kin(on).Animals {
				if a.Species == one.Species && a.Status == "here" {
					here++
				}
			}
			require.Equal(t, here, len(told)+one.Promised)
		}
		kept, err := r.Keep(on, count, breedingplan.Wish{})
		require.NoError(t, err)
		require.LessOrEqual(t, len(kept.Species), len(s.Species))
		e, err := r.Exchange(on, breedingplan.Wish{})
		require.NoError(t, err)
		for _, one := range e.Species {
			require.NotEmpty(t, one.Animals)
			for _, a := range one.Animals {
				if a.ID == "" {
					require.GreaterOrEqual(t, a.With, one.GeneDiversity-1e-9)
				}
			}
		}
	})
}
