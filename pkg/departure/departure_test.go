package departure_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/departure"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/parcel"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// A room with two pairs and a clutch of each, all young ready on 2027-06-01.
const leavingRoom = `
species:
  - use: agalychnis-callidryas
    sale: {age_days: 40, length_mm: 20, source: invented}
animals:
  - {id: S1, species: agalychnis-callidryas, sex: male, acquired: 2024-01-01}
  - {id: S2, species: agalychnis-callidryas, sex: male, acquired: 2024-01-01}
  - {id: D1, species: agalychnis-callidryas, sex: female, acquired: 2024-01-01}
  - {id: D2, species: agalychnis-callidryas, sex: female, acquired: 2024-01-01}
%s
clutches:
  - {id: K1, laid: 2027-01-01, dam: D1, sire: S1, eggs: 30}
  - {id: K2, laid: 2027-01-01, dam: D2, sire: [S1, S2], eggs: 30}
diary:
  - {on: 2027-04-01, clutch: K1, saw: out-of-water, count: 8}
  - {on: 2027-04-01, clutch: K2, saw: out-of-water, count: 8}
  - {on: 2027-05-01, clutch: K1, saw: eating}
  - {on: 2027-05-01, clutch: K2, saw: eating}
  - {on: 2027-05-20, clutch: K1, length_mm: 21}
  - {on: 2027-05-20, clutch: K2, length_mm: 21}
`

// room gives the register of a collection that has to be good.
func room(t testing.TB, text string) *departure.Register {
	t.Helper()
	c, problems := collection.Read("room.yaml", []byte(text))
	require.NotNil(t, c, "%v", problems)
	a, err := kin.Of(c)
	require.NoError(t, err)
	models := make(map[string]*development.Model)
	for _, p := range c.Species {
		models[p.ID], err = rearing.ModelOf(p)
		require.NoError(t, err)
	}
	return &departure.Register{
		Collection: c, Ancestry: a, Rearing: rearing.New(c, a, models), Breeders: breeders.New(c, a, nil),
		Shipping: calendar.Shipping{Weekdays: c.Shipping.Weekdays, TransitDays: c.Shipping.TransitDays},
	}
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func leaving(t *testing.T, wish departure.Wish, animals ...string) departure.Report {
	t.Helper()
	d, err := room(t, fmt.Sprintf(leavingRoom, strings.Join(animals, "\n"))).Ready(day("2027-06-01"), wish)
	require.NoError(t, err)
	return d
}

// Kinship of two young of one pair of unrelated founders is 1/4, of two of a
// clutch with one unknown of two sires too, for they share him whoever he is; of
// young of two clutches that share one sire 1/8, half of that when he is one of
// two; of an animal with itself 1/2 (Wright 1922, American Naturalist 56:330).
func TestBuyerGroup(t *testing.T) {
	wish := departure.Wish{Group: 2}
	groups := leaving(t, wish).Groups
	require.Len(t, groups, 1)
	assert.Equal(t, []departure.Member{{ID: "K1", Count: 1}, {ID: "K2", Count: 1}}, groups[0].Members)
	assert.InDelta(t, 1.0/16, groups[0].Closest, 1e-12)
	assert.InDelta(t, (0.5+0.5+2.0/16)/4, groups[0].MeanKinship, 1e-12)
	assert.True(t, groups[0].Expected)
	assert.True(t, groups[0].Proven)

	wish.Group = 4
	four := leaving(t, wish).Groups[0]
	assert.Equal(t, []departure.Member{{ID: "K1", Count: 2}, {ID: "K2", Count: 2}}, four.Members)
	assert.InDelta(t, 0.25, four.Closest, 1e-12)
	wish.Group = 3
	assert.InDelta(t, 0.25, leaving(t, wish).Groups[0].Closest, 1e-12, "the two of one clutch, wherever they stand")
	assert.InDelta(t, (4*0.5+4*0.25+8.0/16)/16, four.MeanKinship, 1e-12)

	wish.Group = 20
	all := leaving(t, wish).Groups[0]
	assert.Equal(t, []departure.Member{{ID: "K1", Count: 8}, {ID: "K2", Count: 8}}, all.Members)
	assert.Equal(t, 4, all.Short)

	wish.Group = 2
	young := leaving(t, wish, "  - {id: Y1, clutch: K2, length_mm: 22}").Groups[0]
	assert.InDelta(t, 1.0/16, young.Closest, 1e-12, "an animal of the clutch shares its unknown sire")
	assert.Nil(t, leaving(t, departure.Wish{}).Groups, "nobody asked")
	assert.Empty(t, leaving(t, departure.Wish{Group: 2, IDs: []string{"Y1"}}, "  - {id: Y1, clutch: K1}").Groups, "it was not measured, and nobody else was named")
}

func TestReadyWishes(t *testing.T) {
	r := room(t, fmt.Sprintf(leavingRoom, ""))
	for _, row := range []struct {
		name string
		wish departure.Wish
		want any
	}{
		{"nobody", departure.Wish{IDs: []string{"K3"}}, new(*collection.UnknownError)},
		{"a species that is not here", departure.Wish{Species: "hyla-cinerea"}, new(*collection.UnknownError)},
		{"too many", departure.Wish{Group: 51}, new(*departure.WishError)},
	} {
		_, err := r.Ready(day("2027-06-01"), row.wish)
		assert.True(t, errors.As(err, row.want), row.name)
	}
	_, err := r.Card("K3", day("2027-06-01"))
	assert.True(t, errors.As(err, new(*collection.UnknownError)))
}

// TestReadyOfASpecies: the others are not told of.
func TestReadyOfASpecies(t *testing.T) {
	both := strings.NewReplacer("clutches:\n", "  - {id: H, species: hyla-cinerea}\nclutches:\n  - {id: K0, species: hyla-cinerea, laid: 2027-01-01}\n", "diary:\n", "diary:\n  - {on: 2027-04-01, clutch: K0, saw: out-of-water}\n")
	r := room(t, both.Replace(fmt.Sprintf(leavingRoom, "  - {id: Y1, clutch: K1}")))
	of := func(species string) string {
		d, err := r.Ready(day("2027-06-01"), departure.Wish{Species: species})
		require.NoError(t, err)
		var ids []string
		for _, y := range d.Young {
			ids = append(ids, y.ID)
		}
		return strings.Join(ids, " ")
	}
	assert.Equal(t, "K0", of("hyla-cinerea"))
	assert.Equal(t, "Y1 K1 K2", of("agalychnis-callidryas"))
}

// What holds an animal, and the day from which time has cured it.
func TestDeparture(t *testing.T) {
	const young = "  - {id: Y1, species: agalychnis-callidryas, out_of_water: 2027-04-01, length_mm: 22"
	fed := func(rest string) string { return young + rest + "}" }
	for _, row := range []struct {
		name, animal string
		held         []string
		from         string
		days         int
	}{
		{"not seen eating", fed(""), []string{}, "unknown", 0},
		{"a hold that ends, and eating still to be seen", fed(", holds: [{kind: health, until: 2027-06-10}]"), []string{"Y1 is held for health until 2027-06-10"}, "unknown", 0},
		{"the young of a clutch were seen eating", "  - {id: Y1, clutch: K1, length_mm: 22}", []string{}, "2027-06-01", 4},
		{"a hold that ends", "  - {id: Y1, clutch: K1, length_mm: 22, holds: [{kind: health, until: 2027-06-10}]}", []string{"Y1 is held for health until 2027-06-10"}, "2027-06-11", 4},
		{"a hold without an end", "  - {id: Y1, clutch: K1, length_mm: 22, holds: [{kind: quarantine, note: from the fair}]}", []string{"Y1 is held for quarantine until that is lifted: from the fair"}, "unknown", 0},
		{
			"one hold that ends and one without an end", "  - {id: Y1, clutch: K1, length_mm: 22, holds: [{kind: health, until: 2027-06-10}, {kind: quarantine}]}",
			[]string{"Y1 is held for quarantine until that is lifted", "Y1 is held for health until 2027-06-10"},
			"unknown", 0,
		},
		{"a hold that is over", "  - {id: Y1, clutch: K1, length_mm: 22, holds: [{kind: health, until: 2027-05-31}]}", []string{}, "2027-06-01", 4},
		{"new in the room, and no quarantine on record", "  - {id: Y1, clutch: K1, length_mm: 22, acquired: 2027-05-03}", []string{}, "unknown", 0},
		{"new in the room, a month is over", "  - {id: Y1, clutch: K1, length_mm: 22, acquired: 2027-05-02}", []string{}, "2027-06-01", 4},
		{
			"too young and held: the later of the two", "  - {id: Y1, clutch: K1, out_of_water: 2027-05-01, length_mm: 22, holds: [{kind: health, until: 2027-06-03}]}",
			[]string{"out of water for 31 days, at least 40 are wanted: from 2027-06-10", "Y1 is held for health until 2027-06-03"},
			"2027-06-10", 4,
		},
		{
			"too young and too small: time alone does not cure it", "  - {id: Y1, clutch: K1, out_of_water: 2027-05-01, length_mm: 12}",
			[]string{"out of water for 31 days, at least 40 are wanted: from 2027-06-10", "12 mm long, at least 20 are wanted: froglets of delicate species die when they are sent out too small"},
			"unknown", 0,
		},
		{"nobody leaves who is dead, whatever was not recorded", fed(", died: 2027-05-30"), []string{"it died on 2027-05-30"}, "unknown", 0},
		{"nor who has left", "  - {id: Y1, clutch: K1, length_mm: 22, left: 2027-06-01}", []string{"it left on 2027-06-01"}, "unknown", 0},
		{"nor who is still to come", "  - {id: Y1, clutch: K1, length_mm: 22, acquired: 2027-06-02}", []string{"it is not in the room yet"}, "unknown", 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			d := leaving(t, departure.Wish{IDs: []string{"Y1"}}, row.animal).Young[0]
			assert.Equal(t, row.held, d.Held)
			assert.Equal(t, row.from, d.From.String())
			assert.Equal(t, row.days == 0, d.Travel == nil)
			assert.Equal(t, row.from == "2027-06-01", d.Ready)
			if d.Travel != nil {
				assert.Len(t, d.Travel.Days, row.days)
				assert.GreaterOrEqual(t, d.Travel.Days[0].On, d.From)
			}
		})
	}
}

func TestReadyWeather(t *testing.T) {
	unknown := "the weather on the way is not known for all of these days: look at it at both ends before anything is packed"
	assert.Contains(t, leaving(t, departure.Wish{}).Warnings, unknown)
	mild := leaving(t, departure.Wish{Forecast: parcel.Always(parcel.Outside{LowC: 16, HighC: 20})})
	assert.NotContains(t, mild.Warnings, unknown)
	assert.Equal(t, parcel.NoPack, mild.Young[0].Travel.Days[0].Pack)
	assert.Equal(t, &parcel.Outside{LowC: 7, HighC: 29}, mild.Young[0].Limits)
	cold := leaving(t, departure.Wish{Forecast: parcel.Always(parcel.Outside{LowC: 5, HighC: 20})})
	assert.Empty(t, cold.Young[0].Travel.Days)
	assert.Equal(t, "5 to 20 °C on the way, and the species travels at 7 to 29 °C", cold.Young[0].Travel.None)
}

// A card tells of two generations, and of no person.
func TestCard(t *testing.T) {
	r := room(t, fmt.Sprintf(leavingRoom, `  - {id: Y1, name: Resi, clutch: K2, length_mm: 22, food: moths, promised: a person}`)+"keeper: a person\ncard: {contact: ask at the frog room}\n")
	card, err := r.Card("Y1", day("2027-06-01"))
	require.NoError(t, err)
	assert.Equal(t, []departure.Forebear{{ID: "S1", Sires: []departure.Forebear{}, Dams: []departure.Forebear{}}, {ID: "S2", Sires: []departure.Forebear{}, Dams: []departure.Forebear{}}}, card.Sires)
	assert.Equal(t, "moths", card.Food)
	assert.Equal(t, "ask at the frog room", card.Contact)
	assert.Zero(t, card.Inbreeding)
	assert.InDelta(t, 1, card.Generations, 1e-12)
	assert.NotContains(t, fmt.Sprintf("%+v", card), "a person")
	assert.Empty(t, card.Held)
	clutch, err := r.Card("K1", day("2027-06-01"))
	require.NoError(t, err)
	assert.Equal(t, "2027-04-01", clutch.OutOfWater.String())
}

// TestCardTellsHowItWasKept: the last of each temperature up to the day of the card, of
// the animal or of its place.
func TestCardTellsHowItWasKept(t *testing.T) {
	r := room(t, strings.Replace(fmt.Sprintf(leavingRoom, ""), "eggs: 30}", "eggs: 30, place: tub 1}", 1)+`  - {on: 2027-05-20, clutch: K1, air_c: 24, water_c: 23}
  - {on: 2027-05-25, place: tub 1, water_c: 22.5}
  - {on: 2027-05-25, place: tub 2, water_c: 19}
  - {on: 2027-05-30, clutch: K1, air_c: 26}
`)
	kept := func(on string) string {
		card, err := r.Card("K1", day(on))
		require.NoError(t, err)
		return strings.Join(card.Kept, "; ")
	}
	assert.Equal(t, "air at 26 °C, measured on 2027-05-30; water at 22.5 °C, measured on 2027-05-25", kept("2027-06-01"))
	assert.Equal(t, "air at 24 °C, measured on 2027-05-20; water at 22.5 °C, measured on 2027-05-25", kept("2027-05-29"))
	assert.Equal(t, "air at 24 °C, measured on 2027-05-20; water at 23 °C, measured on 2027-05-20", kept("2027-05-20"))
	assert.Empty(t, kept("2027-05-19"))
}

// TestWhoIsAskedAbout: grown animals are told of when they are promised, and nobody may
// have what is not laid yet.
func TestWhoIsAskedAbout(t *testing.T) {
	grown := "  - {id: G, species: agalychnis-callidryas, sex: male, acquired: 2024-01-01, out_of_water: 2023-01-01%s}"
	ids := func(animal string) (all []string) {
		for _, y := range leaving(t, departure.Wish{}, animal).Young {
			all = append(all, y.ID)
		}
		return all
	}
	assert.Equal(t, []string{"K1", "K2"}, ids(fmt.Sprintf(grown, "")))
	assert.Equal(t, []string{"G", "K1", "K2"}, ids(fmt.Sprintf(grown, ", promised: a friend")))
	early, err := room(t, fmt.Sprintf(leavingRoom, "")).Ready(day("2026-12-31"), departure.Wish{IDs: []string{"K1"}})
	require.NoError(t, err)
	assert.Equal(t, []string{"laid on 2027-01-01, which is still to come"}, early.Young[0].Held)
}
