package pairing

import (
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func day(s string) civil.Date {
	d, err := civil.Parse(s)
	if err != nil {
		panic(err)
	}
	return d
}

const species = "agalychnis-callidryas"

// room is a small colony: two unrelated couples, two young of each, and a young
// of which the father is one of two.
func room(t testing.TB) *pedigree.Pedigree {
	t.Helper()
	p, err := pedigree.New([]pedigree.Record{
		{ID: "Quill"},
		{ID: "Sedge"},
		{ID: "Moss"},
		{ID: "Fenna"},
		{ID: "Bram", Sire: "Quill", Dam: "Sedge"},
		{ID: "Ottilie", Sire: "Quill", Dam: "Sedge"},
		{ID: "Piet", Sire: "Moss", Dam: "Fenna"},
		{ID: "Greta", Sire: "Moss", Dam: "Fenna"},
		{ID: "Wren", Sire: "fathers", Dam: "Greta"},
		{ID: "Tilde", Sire: "Quill", Dam: "Greta"},
	}, pedigree.Group{ID: "fathers", Candidates: []pedigree.Candidate{{ID: "Bram"}, {ID: "Piet"}}})
	require.NoError(t, err)
	return p
}

func terms(t testing.TB) Terms {
	return Terms{
		Pedigree: room(t),
		Needs: map[string]Needs{species: {
			Male:               Maturity{AgeDays: 300, LengthMM: 38, WeightG: 4},
			Female:             Maturity{AgeDays: 540, LengthMM: 55, WeightG: 9.5},
			EggDays:            6,
			TadpoleDays:        60,
			RestLeast:          90,
			RestUsual:          180,
			MalesPerFemaleLow:  1,
			MalesPerFemaleHigh: 3,
			QuarantineDays:     30,
		}},
		Rules: Rules{WarnInbreeding: 0.0625, MaxInbreeding: 0.125, ClutchesASeason: 3},
		On:    day("2027-03-01"),
	}
}

// animal gives one that nothing is wrong with.
func animal(t Terms, id string, sex Sex) Animal {
	node, ok := t.Pedigree.Index(id)
	if !ok {
		panic("no " + id)
	}
	return Animal{
		ID: id, Node: node, Species: species, Line: "Tarcoles 2021", Locality: "Tarcoles", Sex: sex,
		OutOfWater: day("2025-03-01"), Acquired: day("2025-03-01"),
		LengthMM: 60, WeightG: 12,
	}
}

// called gives the animal with a sign of its sex.
func called(a Animal) Animal {
	a.SexSign = "called"
	return a
}

// only gives the findings of one rule.
func only(v Verdict, rule Rule) []Finding {
	var out []Finding
	for _, f := range v.Findings {
		if f.Rule == rule {
			out = append(out, f)
		}
	}
	return out
}

func TestAllRulesAreThereWhenAllIsWell(t *testing.T) {
	terms := terms(t)
	v := Judge(terms, []Animal{called(animal(terms, "Bram", Male))}, []Animal{animal(terms, "Greta", Female)})
	want := []Finding{
		{RuleSpecies, []string{"Bram", "Greta"}, Fine, species, "", "all are of species " + species, 0, false},
		{RuleLine, []string{"Bram", "Greta"}, Fine, "Tarcoles 2021", "", "all are of line Tarcoles 2021", 0, false},
		{RuleLocality, []string{"Bram", "Greta"}, Fine, "Tarcoles", "", "all are of locality Tarcoles", 0, false},
		{RuleMalesPerFemale, []string{"Bram", "Greta"}, Fine, "1 male to 1 female", "1 to 3 males to a female", "1 male to 1 female", 0, false},
		{RuleSex, []string{"Bram"}, Fine, "male, called", "male", "Bram is male: called", 0, false},
		{RuleSex, []string{"Greta"}, Fine, "female, no sign recorded", "female", "Greta is female: no sign recorded", 0, false},
		{RuleInRoom, []string{"Bram"}, Fine, "in the room", "", "Bram is in the room", 0, false},
		{RuleInRoom, []string{"Greta"}, Fine, "in the room", "", "Greta is in the room", 0, false},
		{RulePromised, []string{"Bram"}, Fine, "nobody", "", "Bram is promised to nobody", 0, false},
		{RulePromised, []string{"Greta"}, Fine, "nobody", "", "Greta is promised to nobody", 0, false},
		{RuleQuarantine, []string{"Bram"}, Fine, "730 days", "30 days after it came", "Bram came 730 days before", 0, false},
		{RuleQuarantine, []string{"Greta"}, Fine, "730 days", "30 days after it came", "Greta came 730 days before", 0, false},
		{RuleHealth, []string{"Bram"}, Fine, "not held", "", "Bram is not held for its health", 0, false},
		{RuleHealth, []string{"Greta"}, Fine, "not held", "", "Greta is not held for its health", 0, false},
		{RuleAge, []string{"Bram"}, Fine, "730 days", "300 days out of the water", "Bram is old enough: 730 days", 0, false},
		{RuleAge, []string{"Greta"}, Fine, "730 days", "540 days out of the water", "Greta is old enough: 730 days", 0, false},
		{RuleLength, []string{"Bram"}, Fine, "60 mm", "38 mm", "Bram has 60 mm", 0, false},
		{RuleLength, []string{"Greta"}, Fine, "60 mm", "55 mm", "Greta has 60 mm", 0, false},
		{RuleWeight, []string{"Bram"}, Fine, "12 g", "4 g", "Bram has 12 g", 0, false},
		{RuleWeight, []string{"Greta"}, Fine, "12 g", "9.5 g", "Greta has 12 g", 0, false},
		{RuleAncestry, []string{"Bram"}, Fine, "1.0 generations known", "", "1.0 generations of the ancestry of Bram are known", 0, false},
		{RuleAncestry, []string{"Greta"}, Fine, "1.0 generations known", "", "1.0 generations of the ancestry of Greta are known", 0, false},
		{RuleRest, []string{"Greta"}, Fine, "no clutch on record", "180 days, at least 90", "no clutch of Greta is on record", 0, false},
		{RuleClutches, []string{"Greta"}, Fine, "0 clutches in 12 months", "3 in 12 months", "Greta laid 0 clutches within 12 months", 0, false},
		{RuleInbreeding, []string{"Bram", "Greta"}, Fine, "0", "warned from 0.0625, refused from 0.125", "the young of Bram and Greta would be inbred to 0", 0, false},
	}
	if diff := cmp.Diff(want, v.Findings); diff != "" {
		t.Errorf("findings (-want +got):\n%s", diff)
	}
	assert.Equal(t, Fine, v.Worst())
	assert.True(t, v.Allowed())
}

// ruleCase changes a pairing of which all is well, of Bram with Greta, and says what one
// rule finds then.
type ruleCase struct {
	why      string
	rule     Rule
	change   func(Terms, *Animal, *Animal)
	at       int // which of the findings of the rule
	severity Severity
	value    string
	message  string
	from     string
}

func male(change func(*Animal)) func(Terms, *Animal, *Animal) {
	return func(_ Terms, m, _ *Animal) { change(m) }
}

func female(change func(*Animal)) func(Terms, *Animal, *Animal) {
	return func(_ Terms, _, f *Animal) { change(f) }
}

func needs(change func(*Needs)) func(Terms, *Animal, *Animal) {
	return func(t Terms, _, _ *Animal) {
		n := t.Needs[species]
		change(&n)
		t.Needs[species] = n
	}
}

func checkRules(t *testing.T, cases []ruleCase) {
	t.Helper()
	for _, tc := range cases {
		t.Run(string(tc.rule)+": "+tc.why, func(t *testing.T) {
			terms := terms(t)
			m, f := animal(terms, "Bram", Male), animal(terms, "Greta", Female)
			tc.change(terms, &m, &f)
			got := only(Judge(terms, []Animal{m}, []Animal{f}), tc.rule)
			require.Greater(t, len(got), tc.at)
			from := ""
			if got[tc.at].From.Known() {
				from = got[tc.at].From.String()
			}
			assert.Equal(t, tc.severity.String(), got[tc.at].Severity.String())
			assert.Equal(t, tc.value, got[tc.at].Value)
			assert.Equal(t, tc.message, got[tc.at].Message)
			assert.Equal(t, tc.from, from)
		})
	}
}

func TestRulesOfInbreeding(t *testing.T) {
	terms := terms(t)
	m, f := animal(terms, "Bram", Male), animal(terms, "Greta", Female)
	terms.Rules = Rules{WarnInbreeding: 0, MaxInbreeding: 0}
	assert.False(t, Judge(terms, []Animal{m}, []Animal{f}).Allowed(), "a limit of 0 refuses even unrelated animals, as it says")
	terms.Rules = Rules{WarnInbreeding: 0, MaxInbreeding: 1}
	assert.Equal(t, Warn, Judge(terms, []Animal{m}, []Animal{f}).Worst())
}

func TestGroupInOneChamber(t *testing.T) {
	terms := terms(t)
	males := []Animal{animal(terms, "Quill", Male), animal(terms, "Moss", Male), animal(terms, "Piet", Male)}
	females := []Animal{animal(terms, "Ottilie", Female), animal(terms, "Fenna", Female)}
	v := Judge(terms, males, females)

	// Quill is Ottilie's father, Piet is Fenna's son; the others are unrelated.
	assert.Equal(t, (0.25+0.25)/6, v.YoungInbreeding)
	var pairs [][]string
	for _, f := range only(v, RuleInbreeding) {
		pairs = append(pairs, append(f.Animals, f.Severity.String()))
	}
	assert.Equal(t, [][]string{
		{"Quill", "Ottilie", "refuse"},
		{"Quill", "Fenna", "fine"},
		{"Moss", "Ottilie", "fine"},
		{"Moss", "Fenna", "fine"},
		{"Piet", "Ottilie", "fine"},
		{"Piet", "Fenna", "refuse"},
	}, pairs, "an average below the limit does not hide a pair above it")
	assert.False(t, v.Allowed())

	assert.Equal(t, "3 males to 2 females", only(v, RuleMalesPerFemale)[0].Value)
	for _, rule := range []Rule{RuleSex, RuleInRoom, RulePromised, RuleQuarantine, RuleHealth, RuleAge, RuleLength, RuleWeight, RuleAncestry} {
		var about []string
		for _, f := range only(v, rule) {
			about = append(about, f.Animals...)
		}
		assert.Equal(t, []string{"Quill", "Moss", "Piet", "Ottilie", "Fenna"}, about, rule)
	}
	assert.Len(t, only(v, RuleRest), 2)
	assert.Len(t, only(v, RuleClutches), 2)
	assert.Equal(t, []string{"Quill", "Moss", "Piet", "Ottilie", "Fenna"}, only(v, RuleSpecies)[0].Animals)
}

func TestAllowedFrom(t *testing.T) {
	young := func(a *Animal) { a.OutOfWater = day("2026-03-01") }
	for _, tc := range []struct {
		why    string
		change func(m, f *Animal)
		from   civil.Date
		ok     bool
	}{
		{"nothing refuses", func(_, f *Animal) { f.LengthMM = 20 }, 0, true},
		{"a hold that ends", func(m, _ *Animal) { m.HealthHolds = []Hold{{Until: day("2027-03-20")}} }, day("2027-03-21"), true},
		{"a hold without an end", func(m, f *Animal) { young(f); m.HealthHolds = []Hold{{}} }, 0, false},
		{"clutches that get old", func(_, f *Animal) {
			f.Clutches = []civil.Date{day("2026-03-05"), day("2026-03-15"), day("2026-03-25")}
		}, day("2027-03-05"), true},
		{"the last of two days counts", func(m, f *Animal) { young(f); m.Acquired = day("2027-03-10") }, day("2026-03-01").Add(540), true},
		{"also when it is found first", func(m, f *Animal) { young(f); m.Acquired = day("2028-02-10") }, day("2028-02-10"), true},
		{"a warning that time cures does not delay", func(_, f *Animal) { f.Clutches = []civil.Date{day("2026-11-01")} }, 0, true},
		{"time does not cure all", func(m, f *Animal) { young(f); m.Died = day("2026-12-24") }, 0, false},
	} {
		t.Run(tc.why, func(t *testing.T) {
			terms := terms(t)
			m, f := animal(terms, "Bram", Male), animal(terms, "Greta", Female)
			tc.change(&m, &f)
			v := Judge(terms, []Animal{m}, []Animal{f})
			from, ok := v.AllowedFrom()
			assert.Equal(t, tc.from, from)
			assert.Equal(t, tc.ok, ok)
			if ok && from.Known() {
				terms.On = from
				assert.True(t, Judge(terms, []Animal{m}, []Animal{f}).Allowed(), "on that day it is")
				terms.On = from.Add(-1)
				assert.False(t, Judge(terms, []Animal{m}, []Animal{f}).Allowed(), "the day before it is not")
			}
		})
	}
}

func TestNames(t *testing.T) {
	assert.Equal(t, []string{"unknown", "male", "female"}, []string{SexUnknown.String(), Male.String(), Female.String()})
	text, err := Refuse.MarshalText()
	require.NoError(t, err)
	assert.Equal(t, "refuse", string(text))
	assert.Equal(t, "Severity(9)", Severity(9).String())
	assert.True(t, slices.IsSorted([]Severity{Fine, Unknown, Warn, Refuse}))
}

func TestMisuse(t *testing.T) {
	good := terms(t)
	m, f := []Animal{animal(good, "Bram", Male)}, []Animal{animal(good, "Greta", Female)}
	assert.PanicsWithValue(t, "pairing: a pairing needs at least one male and one female", func() { Judge(good, nil, f) })
	assert.PanicsWithValue(t, "pairing: a pairing needs at least one male and one female", func() { Judge(good, m, nil) })
	assert.PanicsWithValue(t, "pairing: Terms without a pedigree", func() { Judge(Terms{On: good.On}, m, f) })
	assert.PanicsWithValue(t, "pairing: Terms without a date", func() { Judge(Terms{Pedigree: good.Pedigree}, m, f) })
	assert.PanicsWithValue(t, "pairing: the breeding set is of another pedigree", func() {
		Rank(good, NewBreedingSet(room(t), nil), m, f)
	})
	set := NewBreedingSet(good.Pedigree, nil)
	assert.PanicsWithValue(t, "pairing: a pairing needs at least one male and one female", func() {
		set.Effect([]int{1}, nil, 1, pedigree.OneUnknown)
	})
	assert.PanicsWithValue(t, "pairing: a negative number of young", func() {
		set.Effect([]int{1}, []int{2}, -1, pedigree.OneUnknown)
	})
	assert.PanicsWithValue(t, "pairing: the pedigree has no animal 10", func() { NewBreedingSet(good.Pedigree, []int{10}) })
	assert.PanicsWithValue(t, "pairing: Moss stands in the breeding set twice", func() { NewBreedingSet(good.Pedigree, []int{2, 1, 2}) })
}

func TestRelaxed(t *testing.T) {
	terms := terms(t)
	m, f := animal(terms, "Bram", Male), animal(terms, "Greta", Female)
	m.Promised, m.Died = "Anouk", day("2026-12-24")
	f.LengthMM, f.WeightG, f.Clutches = 20, 2, []civil.Date{day("2027-02-20")}
	terms.Rules.Relaxed = []Rule{RulePromised, RuleLength, RuleRest, RuleInRoom}
	v := Judge(terms, []Animal{m}, []Animal{f})

	type said struct {
		severity Severity
		relaxed  bool
	}
	of := func(rule Rule, at int) said { f := only(v, rule)[at]; return said{f.Severity, f.Relaxed} }
	assert.Equal(t, said{Warn, true}, of(RulePromised, 0), "what would refuse is still told")
	assert.Equal(t, said{Fine, true}, of(RuleLength, 1), "what would warn is not")
	assert.Equal(t, said{Warn, true}, of(RuleRest, 0))
	assert.Equal(t, said{Fine, false}, of(RulePromised, 1), "nothing against her, and so nothing is set aside")
	assert.Equal(t, said{Warn, false}, of(RuleWeight, 1), "this one is not set aside")
	assert.Equal(t, said{Warn, true}, of(RuleInRoom, 0), "what may be set aside is for the caller to say")
}
