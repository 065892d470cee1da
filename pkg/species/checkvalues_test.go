package species

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Values typed from the literature and from keepers' custom, not from the
// profiles. The last column is what the source must name.
func TestCheckValues(t *testing.T) {
	const (
		custom = "common practice, no source"
		memory = "from memory"
		milk   = "trachycephalus-resinifictrix"
	)
	for _, c := range []struct{ id, section, key, want, source string }{
		{milk, "adult", "basking_c", "29 to 30 °C", custom},
		{milk, "adult", "day_c", "25 to 26 °C", custom},
		{milk, "adult", "night_c", "21 to 23 °C", custom},
		{milk, "adult", "humidity_pct", "70 to 100 %", custom},
		{milk, "adult", "life_years", "8 years or more", custom},
		{milk, "adult", "tank", "at least 45 x 45 x 60 cm (the last is the height) for two or three adults", custom},
		{milk, "adult", "sexing", "females are about 25 mm longer; males are known by nuptial pads and vocal sacs", custom},
		{milk, "cycle: cooling", "days", "28 / 42 / 56 days", memory}, // 4 to 8 weeks of drier rest
		{milk, "cycle: rest", "days", "42 / 49 / 56 days", memory},    // 6 to 8 weeks
		{milk, "maturity: female", "age_days", "365 days", "Sacramento Zoo"},
		{milk, "breeding", "males_per_female", "1 to 2", memory},
		{"agalychnis-callidryas", "adult", "length_mm_male", "51 to 64 mm", "keeper article: "},
		{"agalychnis-callidryas", "adult", "length_mm_female", "64 to 76 mm", "keeper article: "},
		{"agalychnis-callidryas", "adult", "night_c", "19 to 25 °C", "keeper article: "},
		{"agalychnis-callidryas", "cycle: cooling", "humidity_pct", "50 to 60 %", memory},
		{"agalychnis-callidryas", "cycle: rain", "days", "3 / 6 / 10 nights", memory},
		{"agalychnis-callidryas", "maturity: male", "age_days", "304 days", memory},   // 10 x 30.44
		{"agalychnis-callidryas", "maturity: female", "age_days", "548 days", memory}, // 18 x 30.44
		{"ranoidea-caerulea", "cycle: cooling", "night_c", "18.3 °C", "That Pet Place"},
		{"ranoidea-caerulea", "cycle: cooling", "feeding", "none", "That Pet Place"},
		{"ranoidea-caerulea", "adult", "length_mm_male", "66 to 77 mm", "loststory.net"},
		{"ranoidea-caerulea", "maturity: female", "age_days", "731 days", "That Pet Place"}, // 24 x 30.44
		{"ranoidea-caerulea", "adult", "life_years", "16 to 21 years", "Frogforum White's"},
		{"bombina-orientalis", "cycle: cooling", "days", "42 / 56 / 70 days", memory}, // 6 to 10 weeks
		{"bombina-orientalis", "cycle: cooling", "day_c", "5 to 12 °C", memory},
		{"bombina-orientalis", "cycle: rain", "place", "own tank", memory},
		{"bombina-orientalis", "adult", "night_c", "16 to 20 °C", "marchelache.com"},
		{"ceratophrys-cranwelli", "cycle: cooling", "days", "42 / 56 / 70 days", memory}, // 6 to 10 weeks
		{"ceratophrys-cranwelli", "sale", "age_days", "28 days", custom},                 // 3 to 4 weeks
		{"ceratophrys-cranwelli", "maturity: female", "age_days", "548 days", memory},
		{"dendrobates-tinctorius", "adult", "day_c", "25 to 27 °C", "care sheet"},
		{"dendrobates-tinctorius", "adult", "humidity_pct", "80 to 100 %", "care sheet"},
		{"dendrobates-tinctorius", "sale", "age_days", "56 days", custom}, // 8 to 12 weeks
		{"dendrobates-tinctorius", "maturity: male", "age_days", "365 days", "Primorsky Aquarium"},
		{"dyscophus-guineti", "maturity: male", "age_days", "274 days", "Dyscophinae"},   // 9 x 30.44
		{"dyscophus-guineti", "maturity: female", "age_days", "426 days", "Dyscophinae"}, // 14 x 30.44
		{"dyscophus-guineti", "cycle: rain", "days", "3 / 4 / 5 nights", memory},
		{"theloderma-corticale", "cycle: cooling", "day_c", "15 to 18 °C", memory},
		{"theloderma-corticale", "development: tadpole", "at_c", "20 °C", memory},
		{"hyla-cinerea", "maturity: female", "age_days", "730 days", "AnAge"},
		{"hyla-cinerea", "cycle: cooling", "day_c", "10 to 15 °C", memory},
		{"xenopus-laevis", "adult", "day_c", "19 to 22 °C", "UNTHSC"},
		{"xenopus-laevis", "adult", "life_years", "10 to 15 years", "RSPCA 2011"},
		{"xenopus-laevis", "development: egg", "at_c", "22 to 24 °C", "Nieuwkoop & Faber"},
		{"polypedates-leucomystax", "adult", "length_mm_male", "50 to 60 mm", "Davis 1989"},
		{"polypedates-leucomystax", "development: egg", "days", "3 / 4 / 5 days", memory},
	} {
		t.Run(c.id+" "+c.section+" "+c.key, func(t *testing.T) {
			row := rowOf(t, c.id, c.section, c.key)
			assert.Equal(t, c.want, row.Value)
			assert.Contains(t, row.Source, c.source)
		})
	}
}

func rowOf(t *testing.T, id, section, key string) Row {
	t.Helper()
	p, ok := Find(id)
	require.True(t, ok, id)
	for _, row := range p.Rows() {
		if row.Section == section && row.Key == key {
			return row
		}
	}
	t.Fatalf("%s has no %s in %q", id, key, section)
	return Row{}
}

// The usual days of several steps together, against what is told of the whole.
func TestUsualDaysAddUp(t *testing.T) {
	for _, c := range []struct {
		name, id  string
		from, to  StepName
		low, high float64
	}{
		{"milk frog: 6 to 10 weeks, hatched to froglet, from memory", "trachycephalus-resinifictrix", Hatchling, Metamorph, 42, 70},
		{"red-eyed tree frog: 45 to 80 days at 24 to 27, from memory", "agalychnis-callidryas", Hatchling, Metamorph, 45, 80},
		{"White's: 4 to 6 weeks at 26 to 28, from memory", "ranoidea-caerulea", Hatchling, Metamorph, 28, 42},
		{"White's: eggs 28 to 36 hours, keeper article", "ranoidea-caerulea", Egg, Egg, 28.0 / 24, 36.0 / 24},
		{"fire-bellied toad: 5 to 8 weeks at 20 to 24, from memory", "bombina-orientalis", Hatchling, Metamorph, 35, 56},
		{"horned frog: 25 to 40 days from fertilisation at 25 to 28, from memory", "ceratophrys-cranwelli", Egg, Metamorph, 25, 40},
		{"dyeing poison frog: 10 to 12 weeks, keeper article", "dendrobates-tinctorius", Hatchling, Metamorph, 70, 84},
		{"dyeing poison frog: eggs 14 to 18 days, keeper article", "dendrobates-tinctorius", Egg, Egg, 14, 18},
		{"tomato frog: about 45 days, keeper article", "dyscophus-guineti", Hatchling, Metamorph, 42, 48},
		{"tomato frog: eggs 36 hours, keeper article", "dyscophus-guineti", Egg, Egg, 1.5, 1.5},
		{"mossy frog: about 4.5 months at 20, Hanoi and Cologne", "theloderma-corticale", Egg, Metamorph, 4.5*30.44 - 3, 4.5*30.44 + 3},
		{"green tree frog: larva 4 to 6 weeks, keeper article", "hyla-cinerea", Hatchling, Tadpole, 28, 42},
		{"foam-nest frog: 6 to 10 weeks, from memory", "polypedates-leucomystax", Hatchling, Metamorph, 42, 70},
		// Nieuwkoop & Faber 1994, at 22 to 24: stages 35/36, 45, 58 and 66.
		{"clawed frog: hatched near 50 hours", "xenopus-laevis", Egg, Egg, 50.0/24 - 0.1, 50.0/24 + 0.1},
		{"clawed frog: feeding at 98 hours", "xenopus-laevis", Egg, Hatchling, 98.0/24 - 0.1, 98.0/24 + 0.1},
		{"clawed frog: front legs on day 44", "xenopus-laevis", Egg, Tadpole, 43, 45},
		{"clawed frog: tail gone on day 58", "xenopus-laevis", Egg, Metamorph, 57, 59},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, ok := Find(c.id)
			require.True(t, ok)
			var sum float64
			counting := false
			for _, s := range p.Development {
				counting = counting || s.Name == c.from
				if counting {
					sum += s.Days.P50
				}
				if s.Name == c.to {
					break
				}
			}
			assert.GreaterOrEqual(t, sum, c.low)
			assert.LessOrEqual(t, sum, c.high)
		})
	}
}

// Downie et al. 2004: from front legs to tail gone, 2.0 to 7.3 days in 14
// species at 25.5 to 28.
func TestMetamorphosisInWarmWater(t *testing.T) {
	checked := 0
	for _, p := range Builtin() {
		s, _ := p.Step(Metamorph)
		if s.AtC.Low < 25 {
			continue
		}
		checked++
		assert.GreaterOrEqual(t, s.Days.P10, 2.0, p.ID)
		assert.LessOrEqual(t, s.Days.P90, 7.3, p.ID)
	}
	assert.GreaterOrEqual(t, checked, 5)
}

// Clutches lie within what AmphiBIO (Oliveira et al. 2017) or keepers have.
func TestClutches(t *testing.T) {
	for id, limits := range map[string][2]float64{
		"trachycephalus-resinifictrix": {192, 2400},
		"agalychnis-callidryas":        {15, 70}, // a mass, keeper article
		"ranoidea-caerulea":            {200, 4400},
		"bombina-orientalis":           {40, 100}, // a batch, keeper article
		"dendrobates-tinctorius":       {2, 16},
		"dyscophus-guineti":            {800, 1500},
		"theloderma-corticale":         {6, 30}, // keeper article
		"hyla-cinerea":                 {288, 2900},
		"xenopus-laevis":               {500, 1000}, // a spawning, keeper article
		"polypedates-leucomystax":      {100, 337},
	} {
		p, ok := Find(id)
		require.True(t, ok, id)
		assert.GreaterOrEqual(t, p.Breeding.ClutchEggs.P10, limits[0], id)
		assert.LessOrEqual(t, p.Breeding.ClutchEggs.P90, limits[1], id)
	}
}

// Tadpoles are kept 8 to 12 °C below the temperature at which they fail within
// minutes (rule from memory; temperatures from Pottier et al. 2022).
func TestSafeBelowCriticalMaximum(t *testing.T) {
	for id, ctMax := range map[string]float64{
		"trachycephalus-resinifictrix": 41.3, // T. cunauaru, larva
		"agalychnis-callidryas":        41.4, // A. spurrelli, larva
		"ranoidea-caerulea":            39.2, // adult, kept at 30
		"ceratophrys-cranwelli":        42.0, // larva
		"dendrobates-tinctorius":       37.1, // D. auratus, adult
		"polypedates-leucomystax":      39.8, // larva
	} {
		p, ok := Find(id)
		require.True(t, ok, id)
		assert.GreaterOrEqual(t, ctMax-p.Safe.High, 8.0, id)
		assert.LessOrEqual(t, ctMax-p.Safe.High, 12.5, id)
	}
}

func TestOnlyDendrobatesIsNotCooled(t *testing.T) {
	for _, p := range Builtin() {
		_, cooled := p.Phase(Cooling)
		assert.Equal(t, p.ID != "dendrobates-tinctorius", cooled, p.ID)
	}
}
