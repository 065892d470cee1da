package species

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestBuiltinIDs(t *testing.T) {
	want := []string{
		"agalychnis-callidryas", "bombina-orientalis", "ceratophrys-cranwelli", "dendrobates-tinctorius",
		"dyscophus-guineti", "hyla-cinerea", "polypedates-leucomystax", "ranoidea-caerulea",
		"theloderma-corticale", "trachycephalus-resinifictrix", "xenopus-laevis",
	}
	var got []string
	for _, p := range Builtin() {
		got = append(got, p.ID)
		found, ok := Find(p.ID)
		require.True(t, ok, p.ID)
		assert.Empty(t, cmp.Diff(p, found))
	}
	assert.Empty(t, cmp.Diff(want, got))
	_, ok := Find("agalychnis")
	assert.False(t, ok, "only a whole id finds a profile")
}

func TestBuiltinAreCopies(t *testing.T) {
	spoil := func(p *Profile) {
		p.Name = "spoilt"
		p.Cycle[0].Days.Min = -1
		p.Development[0].AtC.Low = -1
		p.Development[0].Law.At[0].Q10 = -1
		p.Cautions[0].Value = "spoilt"
	}
	fresh := Builtin()
	spoil(Builtin()[0])
	p, _ := Find(fresh[0].ID)
	spoil(p)
	assert.Empty(t, cmp.Diff(fresh, Builtin()), "changing a copy must not change what the next caller gets")
}

// A source says where a value is from: a marker that it is from nowhere, a
// named article or guideline, a data set, or a publication with its year.
var sourceForm = regexp.MustCompile(`^(common practice, no source|from memory|keeper article: \S|guideline: \S|AnAge |Theloderma corticale larval stages .*oalib \d+|CITES CoP\d+ Prop\. \d+, \d{4}|.*\b(19|20)\d\d\b)`)

func TestBuiltinProfilesAreCompleteAndConsistent(t *testing.T) {
	for _, p := range Builtin() {
		t.Run(p.ID, func(t *testing.T) {
			first, rest, _ := strings.Cut(p.ID, "-")
			assert.Equal(t, strings.ToUpper(first[:1])+first[1:]+" "+rest, p.Name, "the id is the name")
			assert.NotEmpty(t, p.CommonName)
			for _, row := range p.Rows() {
				assert.Regexp(t, sourceForm, row.Source, "%s %s", row.Section, row.Key)
			}
			checkCycle(t, p)
			checkBreeding(t, p)
			checkDevelopment(t, p)
			checkGrown(t, p)
			checkWords(t, p)
		})
	}
}

func checkCycle(t *testing.T, p *Profile) {
	last := -1
	for _, ph := range p.Cycle {
		rank := slices.Index(phaseNames, ph.Name)
		assert.Greater(t, rank, last, "%s is out of order", ph.Name)
		last = rank
		assert.True(t, ph.Days.Known() && ph.DayC.Known(), "%s needs days and a temperature", ph.Name)
		if ph.NightC.Known() {
			assert.LessOrEqual(t, ph.NightC.High, ph.DayC.High, "%s: nights are not warmer than days", ph.Name)
		}
	}
	for _, needed := range []PhaseName{Conditioning, Rain, Rest} {
		_, ok := p.Phase(needed)
		assert.True(t, ok, "%s is missing", needed)
	}
	cooling, cooled := p.Phase(Cooling)
	warming, warmed := p.Phase(WarmUp)
	assert.Equal(t, cooled, warmed, "what is cooled is warmed up again")
	if cooled {
		assert.Less(t, cooling.NightC.Low, warming.DayC.High, "cooling is cooler than what follows")
	}
}

func checkBreeding(t *testing.T, p *Profile) {
	b := p.Breeding
	require.True(t, b.MalesPerFemale.Known() && b.ClutchEggs.Known() && b.EggsAfterNights.Known())
	checkRising(t, "clutch_eggs", b.ClutchEggs)
	checkRising(t, "eggs_after_nights", b.EggsAfterNights)
	rain, _ := p.Phase(Rain)
	assert.LessOrEqual(t, b.EggsAfterNights.P50, float64(rain.Days.Usual), "usual nights of rain bring eggs")
	assert.LessOrEqual(t, b.EggsAfterNights.P90, float64(rain.Days.Max), "rain goes on for as long as eggs may come")
}

func checkDevelopment(t *testing.T, p *Profile) {
	require.Len(t, p.Development, len(stepNames))
	require.True(t, p.Safe.Known() && p.TadpolesPerLitre.Known())
	for i, s := range p.Development {
		name := string(s.Name)
		assert.Equal(t, stepNames[i], s.Name)
		require.True(t, s.Days.Known() && s.AtC.Known() && s.Survival.Known(), name)
		checkRising(t, name, s.Days)
		assert.Less(t, s.Days.P10, s.Days.P90, "%s: no clutch is like the other", name)
		assert.GreaterOrEqual(t, s.AtC.Low, p.Safe.Low, "%s is timed inside safe_c", name)
		assert.LessOrEqual(t, s.AtC.High, p.Safe.High, "%s is timed inside safe_c", name)
		assert.LessOrEqual(t, s.AtC.High-s.AtC.Low, 4.0, "%s: a reference temperature is narrow", name)
		assert.Equal(t, s.Name != GrowOut, s.Law.Known(), "%s: what lives in water follows its warmth, growth on land more the food", name)
		if s.Law.Known() {
			assert.LessOrEqual(t, s.CoversC.Low, s.AtC.Low, name)
			assert.GreaterOrEqual(t, s.CoversC.High, s.AtC.High, name)
			assert.GreaterOrEqual(t, s.CoversC.Low, p.Safe.Low, "%s: nothing is promised where nobody should keep them", name)
			assert.LessOrEqual(t, s.CoversC.High, p.Safe.High, name)
		}
		assert.GreaterOrEqual(t, s.Survival.Value, 0.5, name)
		assert.LessOrEqual(t, s.Survival.Value, 0.95, "%s: modest, for nobody has published it", name)
	}
	growOut, _ := p.Step(GrowOut)
	require.True(t, p.Sale.AgeDays.Known() && p.Sale.LengthMM.Known())
	assert.LessOrEqual(t, p.Sale.AgeDays.Value, growOut.Days.P10, "nobody is sale-ready before the age of sale")
	assert.GreaterOrEqual(t, p.Sale.AgeDays.Value, 28.0, "no species leaves within 4 weeks of leaving the water")
}

func checkGrown(t *testing.T, p *Profile) {
	a := p.Adult
	for _, m := range []struct {
		name     string
		maturity Maturity
		length   Range
	}{{"male", p.Maturity.Male, a.LengthMale}, {"female", p.Maturity.Female, a.LengthFemale}} {
		require.True(t, m.maturity.AgeDays.Known() && m.maturity.LengthMM.Known() && m.length.Known(), m.name)
		assert.LessOrEqual(t, m.maturity.LengthMM.Value, m.length.High, "%s: an animal can reach the length", m.name)
		assert.Greater(t, m.maturity.LengthMM.Value, p.Sale.LengthMM.Value, "%s: froglets are not bred", m.name)
		assert.Greater(t, m.maturity.AgeDays.Value, p.Sale.AgeDays.Value, "%s: froglets are not bred", m.name)
		assert.Less(t, m.maturity.AgeDays.Value, a.LifeYears.Low*365, "%s: it breeds before it dies", m.name)
	}
	assert.GreaterOrEqual(t, p.Maturity.Female.AgeDays.Value, p.Maturity.Male.AgeDays.Value, "females ripen later")
	assert.True(t, a.DayC.Known() && a.NightC.Known() && a.Tank.Known() && a.Group.Known() && a.Sexing.Known())
	assert.LessOrEqual(t, a.NightC.High, a.DayC.High)
	if p.ID != "xenopus-laevis" && p.ID != "bombina-orientalis" { // they live in water
		assert.True(t, a.HumidityPct.Known())
	}
}

func checkWords(t *testing.T, p *Profile) {
	assert.Contains(t, p.CITES.Value, "check the current list")
	var all strings.Builder
	for _, c := range p.Cautions {
		assert.LessOrEqual(t, len(c.Value), 180, "a caution is one line: %s", c.Value)
		all.WriteString(c.Value + "\n")
	}
	assert.Contains(t, all.String(), "residual-current", "pumps stand near water in every breeding set-up")
	assert.Contains(t, all.String(), "veterinarian")
	assert.Regexp(t, "local codes|permit", all.String())
}

func checkRising(t *testing.T, name string, p Percentiles) {
	assert.Positive(t, p.P10, name)
	assert.LessOrEqual(t, p.P10, p.P50, name)
	assert.LessOrEqual(t, p.P50, p.P90, name)
}

// A built-in profile is refused when one of its values has no source.
func TestBuiltinWithoutSource(t *testing.T) {
	for _, c := range []struct{ name, yaml, want string }{
		{"a value of the top", "name: X y\nsafe_c: [1, 2]\n", "x.yaml:2:9: safe_c of the profile has no source; write `source` beside it"},
		{"a value of a step", "development:\n  egg:\n    days: [1, 2, 3]\n    at_c: 20\n    sources: {at_c: from memory}\n", "x.yaml:3:11: days of the step egg has no source; write `source` beside it"},
		{"a caution", "cautions:\n  - mind the gap\n", "x.yaml:2:5: a caution has no source; write `source` beside it"},
		{"a source that is empty", "safe_c: [1, 2]\nsources: {safe_c: \"\"}\n", "x.yaml:1:9: safe_c of the profile has no source; write `source` beside it"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, problems := parseBuiltin("x.yaml", []byte(c.yaml))
			require.NotEmpty(t, problems)
			assert.Equal(t, c.want, problems[0].String())
		})
	}
}
