package frogroom_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
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

func ids(animals []frogroom.SelectedAnimal) []string {
	out := []string{}
	for _, a := range animals {
		out = append(out, a.ID)
	}
	return out
}

func TestKeep(t *testing.T) {
	r := room(t, brood)
	on := day("2027-03-01")
	s, err := r.Keep(on, 2, frogroom.PairsWish{})
	require.NoError(t, err)
	require.Len(t, s.Species, 1)
	assert.Equal(t, []string{"K1", "K3"}, ids(s.Species[0].Chosen), "one of each clutch; the promised one is not there to keep")
	assert.Equal(t, []string{"K2"}, ids(s.Species[0].Others))
	// 4 x 1/2 + 2 x 1/2 of themselves, and 2 x 2 x 2 x 1/4 with their parents, over 36.
	assert.InDelta(t, 1-5.0/36, s.Species[0].GeneDiversity, 1e-12)
	assert.True(t, s.Species[0].Proven)

	s, err = r.Keep(on, 9, frogroom.PairsWish{Without: [][2]string{{"K3", ""}}})
	require.NoError(t, err)
	assert.Equal(t, []string{"K1", "K2"}, ids(s.Species[0].Chosen))
	assert.InDelta(t, 0.25, s.Species[0].Closest, 1e-12)
}

func TestUnrelated(t *testing.T) {
	r := room(t, brood)
	s, err := r.Unrelated(day("2027-03-01"), 4, frogroom.PairsWish{})
	require.NoError(t, err)
	assert.Equal(t, []string{"A", "B", "D", "E"}, ids(s.Species[0].Chosen))
	assert.Zero(t, s.Species[0].Closest)

	var wrong *frogroom.PairsWishError
	_, err = r.Unrelated(day("2027-03-01"), 0, frogroom.PairsWish{})
	require.True(t, errors.As(err, &wrong))
	var unknown *frogroom.UnknownSpeciesError
	_, err = r.Keep(day("2027-03-01"), 1, frogroom.PairsWish{Species: "nobody"})
	require.True(t, errors.As(err, &unknown))
}

// TestExchangeAgainstTheFile holds what is reckoned for an animal against a file in
// which it came, and has young.
func TestExchangeAgainstTheFile(t *testing.T) {
	on := day("2027-03-01")
	of := func(text string) float64 { return room(t, text).Kin(on).Groups[0].GeneDiversity }
	base := basic
	e, err := room(t, base).Exchange(on, frogroom.PairsWish{})
	require.NoError(t, err)
	require.Len(t, e.Species[0].Animals, 1)
	stranger := e.Species[0].Animals[0]
	newcomer := base + "  - {id: S, species: clockwork, sex: male, acquired: 2026-01-01}\n"
	assert.InDelta(t, of(newcomer), stranger.With, 1e-12)
	young := "  - {id: Y1, species: clockwork, sire: S, dam: D, acquired: 2027-02-01}\n  - {id: Y2, species: clockwork, sire: S, dam: D, acquired: 2027-02-01}\n"
	assert.InDelta(t, of(newcomer+young), stranger.WithYoung, 1e-12)

	gone := base + "  - {id: K, species: clockwork, sire: A, dam: D, sex: male, acquired: 2024-01-01%s}\n"
	e, err = room(t, fmt.Sprintf(gone, ", left: 2026-01-01")).Exchange(on, frogroom.PairsWish{})
	require.NoError(t, err)
	require.Len(t, e.Species[0].Animals, 2)
	assert.Equal(t, "", e.Species[0].Animals[0].ID, "the unrelated one helps most")
	assert.InDelta(t, of(fmt.Sprintf(gone, "")), e.Species[0].Animals[1].With, 1e-12)
	grown := "  - {id: Y1, species: clockwork, sire: K, dam: E, acquired: 2027-02-01}\n  - {id: Y2, species: clockwork, sire: K, dam: E, acquired: 2027-02-01}\n"
	assert.InDelta(t, of(fmt.Sprintf(gone, "")+grown), e.Species[0].Animals[1].WithYoung, 1e-12)
}

// TestSelectionsOfRandomRooms: everybody who could be chosen is in one of the two lists, and an
// unrelated animal never makes a line poorer.
func TestSelectionsOfRandomRooms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFile(t)
		r, _ := frogroom.Read("room.yaml", []byte(f.text(f.diary)))
		on := civil.Date(rapid.IntRange(int(day("2023-06-01")), int(day("2028-12-31"))).Draw(t, "on"))
		count := rapid.IntRange(1, 4).Draw(t, "count")
		s, err := r.Unrelated(on, count, frogroom.PairsWish{})
		require.NoError(t, err)
		for _, one := range s.Species {
			require.Len(t, one.Chosen, min(count, len(one.Chosen)+len(one.Others)))
			require.True(t, one.Proven)
		}
		kept, err := r.Keep(on, count, frogroom.PairsWish{})
		require.NoError(t, err)
		require.LessOrEqual(t, len(kept.Species), len(s.Species))
		e, err := r.Exchange(on, frogroom.PairsWish{})
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
