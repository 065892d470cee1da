package species

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// apply changes a fresh red-eyed tree frog and gives it with the problems.
func apply(t *testing.T, yaml string) (changed *Profile, problems strictyaml.Diagnostics) {
	t.Helper()
	p, ok := Find("agalychnis-callidryas")
	require.True(t, ok)
	doc := strictyaml.Parse("c.yaml", []byte(yaml))
	require.NotNil(t, doc.Root, "%v", doc.Problems())
	p.Apply(doc.Mapping(doc.Root, "a species"))
	return p, doc.Problems()
}

// An override changes what it names, with the right source, and nothing else.
func TestApplyChangesOnlyWhatIsGiven(t *testing.T) {
	tadpole := func(p *Profile) *Step { return &p.Development[2] }
	for _, c := range []struct {
		name, yaml string
		change     func(p *Profile)
	}{
		{
			"nothing given, nothing changed", "{}", func(*Profile) {},
		},
		{
			"a key with nothing behind it counts as left out", "safe_c:\ncycle:\ndevelopment: {egg: }\n", func(*Profile) {},
		},
		{
			"no source beside it: the keeper's file", "development: {tadpole: {days: [48, 60, 80], at_c: 25}}",
			func(p *Profile) {
				tadpole(p).Days = Percentiles{48, 60, 80, "the keeper's file"}
				tadpole(p).AtC = Range{25, 25, "the keeper's file"}
			},
		},
		{
			"the source of the mapping", "development: {tadpole: {at_c: [24, 27], survival: 0.5, source: own notes}}",
			func(p *Profile) {
				tadpole(p).AtC = Range{24, 27, "own notes"}
				tadpole(p).Survival = Number{0.5, "own notes"}
			},
		},
		{
			"the source of the mapping around", "source: own notes\ndevelopment: {tadpole: {survival: 0}}",
			func(p *Profile) { tadpole(p).Survival = Number{0, "own notes"} },
		},
		{
			"the nearest source counts", "source: far\ndevelopment: {source: near, tadpole: {survival: 1, at_c: 25, sources: {at_c: nearest}}}",
			func(p *Profile) {
				tadpole(p).Survival = Number{1, "near"}
				tadpole(p).AtC = Range{25, 25, "nearest"}
			},
		},
		{
			"sources may name a mapping", "sale: {length_mm: 30}\nsources: {sale: measured}",
			func(p *Profile) { p.Sale.LengthMM = Number{30, "measured"} },
		},
		{
			"sources keeps to its key", "sale: {length_mm: 30, age_days: 50, sources: {length_mm: measured}}",
			func(p *Profile) {
				p.Sale.LengthMM = Number{30, "measured"}
				p.Sale.AgeDays = Number{50, "the keeper's file"}
			},
		},
		{
			"a law of degrees", "development: {tadpole: {law: {kind: thermal_sum, threshold_c: 9.5}, covers_c: [18, 27], sources: {law: measured}}}",
			func(p *Profile) {
				tadpole(p).Law = Law{Kind: ThermalSum, ThresholdC: 9.5, Source: "measured"}
				tadpole(p).CoversC = Range{18, 27, "the keeper's file"}
			},
		},
		{
			"a law of factors with a source of its own", "development: {tadpole: {law: {kind: q10, at: [[15, 3], [25, 2]], source: a paper}}}",
			func(p *Profile) {
				tadpole(p).Law = Law{Kind: FallingQ10, At: []Factor{{15, 3}, {25, 2}}, Source: "a paper"}
			},
		},
		{
			"a law is taken out", "development: {tadpole: {law: none}}",
			func(p *Profile) { tadpole(p).Law = Law{} },
		},
		{
			"when legs come", "development: {tadpole: {hind_legs_pct: [5, 10, 20], toes_pct: [50, 60, 70]}}",
			func(p *Profile) {
				tadpole(p).HindLegsPct = Percentiles{5, 10, 20, "the keeper's file"}
				tadpole(p).ToesPct = Percentiles{50, 60, 70, "the keeper's file"}
			},
		},
		{
			"when they eat", "development: {grow_out: {eating_days: [2, 4, 9]}}",
			func(p *Profile) {
				p.Development[len(p.Development)-1].EatingDays = Percentiles{2, 4, 9, "the keeper's file"}
			},
		},
		{
			"a phase is changed in place", "cycle: {rain: {days: [2, 2, 4], place: own tank}}",
			func(p *Profile) {
				p.Cycle[3].Days = Days{2, 2, 4, "the keeper's file"}
				p.Cycle[3].Place = Text{"own tank", "the keeper's file"}
			},
		},
		{
			"a phase is taken out", "cycle: {cooling: none}",
			func(p *Profile) { p.Cycle = append(p.Cycle[:1:1], p.Cycle[2:]...) },
		},
		{
			"taking out what is not there does nothing", "cycle: {cooling: none, warm_up: none}",
			func(p *Profile) { p.Cycle = append(p.Cycle[:1:1], p.Cycle[3:]...) },
		},
		{
			"names have no source", "name: Agalychnis sp.\ncommon_name: a frog",
			func(p *Profile) { p.Name, p.CommonName = "Agalychnis sp.", "a frog" },
		},
		{
			"texts become one line", "adult:\n  tank: >-\n    wide\n    and  high\n",
			func(p *Profile) { p.Adult.Tank = Text{"wide and high", "the keeper's file"} },
		},
		{
			"cautions are added, none is lost, none stands twice",
			"cautions:\n- no draughts\n- {text: no noise, source: own notes}\n- no draughts\nsources: {cautions: a friend}",
			func(p *Profile) {
				p.Cautions = append(p.Cautions, Text{"no draughts", "a friend"}, Text{"no noise", "own notes"})
			},
		},
		{
			"maturity, breeding, adult and the rest",
			"maturity: {male: {weight_g: 6.5}}\nbreeding: {males_per_female: 2, clutch_eggs: [1, 1, 1]}\nadult: {life_years: 9, basking_c: [28, 30]}\nsafe_c: [19, 31]\ntadpoles_per_litre: 0.5\ncites: Appendix I",
			func(p *Profile) {
				const source = "the keeper's file"
				p.Maturity.Male.WeightG = Number{6.5, source}
				p.Breeding.MalesPerFemale = Range{2, 2, source}
				p.Breeding.ClutchEggs = Percentiles{1, 1, 1, source}
				p.Adult.LifeYears = Range{9, 9, source}
				p.Adult.BaskingC = Range{28, 30, source}
				p.Safe = Range{19, 31, source}
				p.TadpolesPerLitre = Number{0.5, source}
				p.CITES = Text{"Appendix I", source}
			},
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			want, _ := Find("agalychnis-callidryas")
			c.change(want)
			got, problems := apply(t, c.yaml)
			assert.Empty(t, problems)
			assert.Empty(t, cmp.Diff(want, got))
		})
	}
}

// What is wrong is reported where it stands with its cure, and leaves the
// built-in value as it was.
func TestApplyRefuses(t *testing.T) {
	for _, c := range []struct{ name, yaml, want string }{
		{"a range that falls", "safe_c: [31, 19]", "c.yaml:1:9: safe_c must not fall: lower end, upper end; if the numbers are right, write [19, 31]"},
		{"a range of three", "safe_c: [1, 2, 3]", "c.yaml:1:9: safe_c is not a list of 2 numbers; write the lower and the upper end, such as safe_c: [24, 29], or one number"},
		{"a range that is a mapping", "safe_c: {low: 1}", "c.yaml:1:9: safe_c is not a list of 2 numbers; write the lower and the upper end, such as safe_c: [24, 29], or one number"},
		{"boiling tadpoles", "safe_c: [20, 82]", "c.yaml:1:14: safe_c is 82; write a number from -5 to 50"},
		{"a comma in a number", "safe_c: [20, '28,5']", `c.yaml:1:14: safe_c is "28,5", not a number; write a point: 28.5`},
		{"days that fall", "cycle: {rain: {days: [3, 2, 10]}}", "c.yaml:1:22: days must not fall: at least, usually, at most; if the numbers are right, write [2, 3, 10]"},
		{"days of a part", "cycle: {rain: {days: [3, 3.5, 10]}}", `c.yaml:1:26: days is "3.5", not a whole number; write a whole number, such as 1`},
		{"no days", "cycle: {rain: {days: [0, 1, 2]}}", "c.yaml:1:23: days is 0; write a number from 1 to 730"},
		{"one number for days", "cycle: {rain: {days: 5}}", "c.yaml:1:22: days is not a list of 3 numbers; write whole days at least, usually, at most, such as days: [28, 42, 56]"},
		{"percentiles that fall", "development: {egg: {days: [5, 4, 6]}}", "c.yaml:1:27: days must not fall: 10th, 50th, 90th percentile; if the numbers are right, write [4, 5, 6]"},
		{"a percentile of nothing", "breeding: {clutch_eggs: [0, 4, 6]}", "c.yaml:1:26: clutch_eggs is 0; write a number from 1 to 100000"},
		{"survival in percent", "development: {egg: {survival: 80}}", "c.yaml:1:31: survival is 80; write a number from 0 to 1"},
		{"humidity above all", "adult: {humidity_pct: [50, 101]}", "c.yaml:1:28: humidity_pct is 101; write a number from 0 to 100"},
		{"a day of 25 hours", "cycle: {rain: {light_h: 25}}", "c.yaml:1:25: light_h is 25; write a number from 0 to 24"},
		{"a place that is none", "cycle: {rain: {place: own tnak}}", `c.yaml:1:23: place cannot be "own tnak"; did you mean "own tank"?`},
		{"a place that is like none", "cycle: {rain: {place: bathtub}}", `c.yaml:1:23: place cannot be "bathtub"; write one of own tank, rain chamber, cooling place`},
		{"an empty text", "cites: ' '", "c.yaml:1:8: cites is empty; write a text or remove the line"},
		{"a text that is a list", "cites: [II]", "c.yaml:1:8: cites is one value, not a list; write one value"},
		{"an unknown key at the top", "safec: [19, 31]", `c.yaml:1:1: unknown key "safec" in a species; did you mean "safe_c"?`},
		{"an unknown phase", "cycle: {warm-up: {}}", `c.yaml:1:9: unknown key "warm-up" in the cycle; did you mean "warm_up"?`},
		{"an unknown step", "development: {tadpol: {}}", `c.yaml:1:15: unknown key "tadpol" in the development; did you mean "tadpole"?`},
		{"an unknown key of a step", "development: {egg: {day: [1, 2, 3]}}", `c.yaml:1:21: unknown key "day" in the step egg; did you mean "days"?`},
		{"a sex that is neither", "maturity: {femle: {}}", `c.yaml:1:12: unknown key "femle" in maturity; did you mean "female"?`},
		{"maturity of sale", "sale: {males: 1}", `c.yaml:1:8: unknown key "males" in sale; known here: source, sources, age_days, length_mm, weight_g, seen_eating, note`},
		{"a law that is a word", "development: {egg: {law: warm}}", `c.yaml:1:26: the law is a set of keys and values, not "warm"; write it as {key: value, …} or as indented lines`},
		{"a law of no kind", "development: {egg: {law: {at: [[20, 2]]}}}", `c.yaml:1:26: this is no law of temperature; write {kind: q10, at: [[20, 2.5]]}, {kind: thermal_sum, threshold_c: 10}, or none`},
		{"a law of another kind", "development: {egg: {law: {kind: q11}}}", `c.yaml:1:33: kind cannot be "q11"; did you mean "q10"?`},
		{"a thermal sum above nothing", "development: {egg: {law: {kind: thermal_sum}}}", `c.yaml:1:26: this is no law of temperature; write {kind: thermal_sum, threshold_c: 10} and nothing else`},
		{"a factor at no temperature", "development: {egg: {law: {kind: q10, at: 2.5}}}", `c.yaml:1:42: at is not a list of pairs; write pairs of a temperature in °C and the factor for ten degrees there, such as at: [[15, 3], [20, 2.5]]`},
		{"a factor alone", "development: {egg: {law: {kind: q10, at: [2.5]}}}", `c.yaml:1:43: at is not a list of pairs; write pairs of a temperature in °C and the factor for ten degrees there, such as at: [[15, 3], [20, 2.5]]`},
		{"a factor that slows", "development: {egg: {law: {kind: q10, at: [[20, 0.5]]}}}", `c.yaml:1:48: at is 0.5; write a number from 1 to 20`},
		{"factors from the warm end", "development: {egg: {law: {kind: q10, at: [[20, 2], [15, 3]]}}}", `c.yaml:1:52: the temperatures of at must rise; write the coldest first, and each temperature once`},
		{"a threshold where the eggs are", "development: {egg: {law: {kind: thermal_sum, threshold_c: 26}}}", `c.yaml:1:20: by its law the step egg never ends at 22 °C; write a threshold_c below 22 °C`},
		{"a source for what is not there", "sale: {sources: {lenght_mm: measured}}", `c.yaml:1:18: sources has "lenght_mm", which is not a key of sale; name a key that stands beside it`},
		{"a phase that is a number", "cycle: {rain: 5}", `c.yaml:1:15: the phase rain is a set of keys and values, not "5"; write it as {key: value, …} or as indented lines`},
		{"cautions that are a text", "cautions: none", `c.yaml:1:11: cautions is a list, not "none"; write - before each entry, or put the entries in [ ]`},
		{"a caution without text", "cautions: [{source: me}]", "c.yaml:1:12: a caution has no text; write {text: …, source: …}"},
		{"the id", "id: agalychnis-moreletii", `c.yaml:1:1: unknown key "id" in a species; known here: source, sources, name, common_name, safe_c, transport_c, tadpoles_per_litre, cycle, breeding, development, maturity, sale, adult, food, quarantine_days, cites, cautions`},
		{"days without their temperature", "development: {tadpole: {days: [48, 60, 80]}}", "c.yaml:1:25: warning: days of the step tadpole are counted as if they were at 24 to 27 °C; add at_c: the temperature of these days"},
		{"legs of an egg", "development: {egg: {toes_pct: [50, 60, 70]}}", `c.yaml:1:21: unknown key "toes_pct" in the step egg; known here: source, sources, days, at_c, law, covers_c, minutes_a_day, survival, stall, note, hatch_gosner`},
		{"all of a step", "development: {tadpole: {toes_pct: [50, 60, 100]}}", `c.yaml:1:44: toes_pct is 100; write a number from 0.1 to 99.9`},
		{"toes without legs", "development: {tadpole: {hind_legs_pct: [10, 80, 90], toes_pct: [50, 60, 70]}}", `c.yaml:1:24: warning: the toes are free before there are hind legs; check hind_legs_pct and toes_pct`},
		{"a step timed too cold", "development: {tadpole: {at_c: 17}}", "c.yaml:1:31: warning: at_c of the step tadpole is outside safe_c, 20 to 30 °C; check both"},
		{"a step timed too warm", "development: {tadpole: {at_c: 33}}", "c.yaml:1:31: warning: at_c of the step tadpole is outside safe_c, 20 to 30 °C; check both"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, problems := apply(t, c.yaml)
			require.Len(t, problems, 1)
			assert.Equal(t, c.want, problems[0].String())
			if problems.HasErrors() {
				want, _ := Find("agalychnis-callidryas")
				assert.Empty(t, cmp.Diff(want, got), "the built-in values stay")
			}
		})
	}
}

// Narrowing safe_c is reported once for each step that it leaves out, at safe_c.
func TestApplyNarrowsSafe(t *testing.T) {
	_, problems := apply(t, "safe_c: [20, 26]")
	require.Len(t, problems, 4)
	for _, d := range problems {
		assert.Equal(t, strictyaml.Warning, d.Severity)
		assert.Equal(t, [2]int{1, 9}, [2]int{d.Line, d.Column})
	}
}

// One run finds every problem.
func TestApplyCollectsAllProblems(t *testing.T) {
	_, problems := apply(t, `
safe_c: [31, 19]
cycle:
  cooling: {days: [9, 8, 7], light_h: 99}
development:
  egg: {survival: 7, at_c: hot}
adult: {colour: green}
`)
	var lines []int
	for _, d := range problems {
		lines = append(lines, d.Line)
	}
	assert.Equal(t, []int{2, 4, 4, 6, 6, 7}, lines)
}

func TestWhereAPhaseIs(t *testing.T) {
	for _, c := range []struct {
		name  string
		phase Phase
		want  string
	}{
		{"rain takes a chamber", Phase{Name: Rain}, RainChamber},
		{"cooling takes a cooling place", Phase{Name: Cooling}, CoolingPlace},
		{"rest is at home", Phase{Name: Rest}, OwnTank},
		{"what is said counts", Phase{Name: Rain, Place: Text{OwnTank, "from memory"}}, OwnTank},
	} {
		assert.Equal(t, c.want, c.phase.Where(), c.name)
	}
}
