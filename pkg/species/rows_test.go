package species

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
)

// Every kind of value with its unit, in reading order; what is not known is left out.
func TestRows(t *testing.T) {
	p := &Profile{
		ID: "x", Name: "X",
		Cycle: []Phase{
			{Name: WarmUp, Days: Days{7, 14, 21, "a"}, DayC: Range{18.3, 26.7, "b"}, HumidityPct: Range{50, 60, "c"}, LightH: Number{12.5, "d"}},
			{Name: Rain, Days: Days{3, 5, 10, "e"}, Place: Text{OwnTank, "f"}, NightC: Range{20, 20, "g"}, Note: Text{"wet", "h"}},
		},
		Breeding:         Breeding{MalesPerFemale: Range{1, 2, "i"}, ClutchEggs: Percentiles{10, 20, 30, "j"}, EggsAfterNights: Percentiles{1, 2.5, 4, "k"}},
		Development:      []Step{{Name: GrowOut, Days: Percentiles{40, 50, 60, "l"}, AtC: Range{25, 25, "m"}, Survival: Number{0.07, "n"}}},
		Safe:             Range{-1, 5, "o"},
		TadpolesPerLitre: Number{0.5, "p"},
		Sale:             Sale{AgeDays: Number{42, "r"}, LengthMM: Number{20, "s"}},
		Adult:            Adult{LifeYears: Range{8, 8, "t"}, LengthMale: Range{40, 50, "u"}},
		CITES:            Text{"none", "v"},
		Cautions:         []Text{{"mind", "w"}, {"beware", "x"}},
	}
	p.Maturity.Female.WeightG = Number{0.44, "q"}
	want := []Row{
		{"cycle: warm-up", "days", "7 / 14 / 21 days", "a"},
		{"cycle: warm-up", "day_c", "18.3 to 26.7 °C", "b"},
		{"cycle: warm-up", "humidity_pct", "50 to 60 %", "c"},
		{"cycle: warm-up", "light_h", "12.5 hours a day", "d"},
		{"cycle: rain", "days", "3 / 5 / 10 nights", "e"},
		{"cycle: rain", "place", "own tank", "f"},
		{"cycle: rain", "night_c", "20 °C", "g"},
		{"cycle: rain", "note", "wet", "h"},
		{"breeding", "males_per_female", "1 to 2", "i"},
		{"breeding", "clutch_eggs", "10 / 20 / 30 eggs", "j"},
		{"breeding", "eggs_after_nights", "1 / 2.5 / 4 nights", "k"},
		{"development: grow-out", "days", "40 / 50 / 60 days", "l"},
		{"development: grow-out", "at_c", "25 °C", "m"},
		{"development: grow-out", "survival", "7 %", "n"},
		{"", "safe_c", "-1 to 5 °C", "o"},
		{"", "tadpoles_per_litre", "0.5 per litre", "p"},
		{"maturity: female", "weight_g", "0.44 g", "q"},
		{"sale", "age_days", "42 days", "r"},
		{"sale", "length_mm", "20 mm", "s"},
		{"adult", "length_mm_male", "40 to 50 mm", "u"},
		{"adult", "life_years", "8 years or more", "t"},
		{"", "cites", "none", "v"},
		{"", "cautions", "mind", "w"},
		{"", "cautions", "beware", "x"},
	}
	assert.Empty(t, cmp.Diff(want, p.Rows()))
	assert.Empty(t, (&Profile{}).Rows())
}
