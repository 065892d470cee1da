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

func TestRules(t *testing.T) {
	male := func(change func(*Animal)) func(Terms, *Animal, *Animal) {
		return func(_ Terms, m, _ *Animal) { change(m) }
	}
	female := func(change func(*Animal)) func(Terms, *Animal, *Animal) {
		return func(_ Terms, _, f *Animal) { change(f) }
	}
	needs := func(change func(*Needs)) func(Terms, *Animal, *Animal) {
		return func(t Terms, _, _ *Animal) {
			n := t.Needs[species]
			change(&n)
			t.Needs[species] = n
		}
	}
	for _, tc := range []struct {
		why      string
		rule     Rule
		change   func(Terms, *Animal, *Animal)
		at       int // which of the findings of the rule
		severity Severity
		value    string
		message  string
		from     string
	}{
		{
			"two species are never crossed", RuleSpecies, male(func(a *Animal) { a.Species = "hyla-cinerea" }), 0, Refuse,
			"hyla-cinerea, " + species, "Bram is of species hyla-cinerea, Greta is of species " + species + "; species are not crossed", "",
		},
		{
			"a species that is not known", RuleSpecies, male(func(a *Animal) { a.Species = "" }), 0, Unknown,
			species, "the species of Bram is not known", "",
		},
		{
			"two lines are mixed by choice only", RuleLine, female(func(a *Animal) { a.Line = "Limón 2019" }), 0, Warn,
			"Tarcoles 2021, Limón 2019", "Bram is of line Tarcoles 2021, Greta is of line Limón 2019", "",
		},
		{
			"a line that is not known", RuleLine, female(func(a *Animal) { a.Line = "" }), 0, Unknown,
			"Tarcoles 2021", "the line of Greta is not known", "",
		},
		{
			"two localities", RuleLocality, female(func(a *Animal) { a.Locality = "Limón" }), 0, Warn,
			"Tarcoles, Limón", "Bram is of locality Tarcoles, Greta is of locality Limón", "",
		},
		{
			"both localities not known", RuleLocality, func(_ Terms, m, f *Animal) { m.Locality, f.Locality = "", "" }, 0, Unknown,
			"", "the locality of Bram, Greta is not known", "",
		},
		{
			"too few males", RuleMalesPerFemale, needs(func(n *Needs) { n.MalesPerFemaleLow = 2 }), 0, Warn,
			"1 male to 1 female", "1 male to 1 female; the species spawns well with 2 to 3 males to a female", "",
		},
		{
			"too many males", RuleMalesPerFemale, needs(func(n *Needs) { n.MalesPerFemaleLow, n.MalesPerFemaleHigh = 0.5, 0.5 }), 0, Warn,
			"1 male to 1 female", "1 male to 1 female; the species spawns well with 0.5 males to a female", "",
		},
		{
			"just as many males as can be", RuleMalesPerFemale, needs(func(n *Needs) { n.MalesPerFemaleHigh = 1 }), 0, Fine,
			"1 male to 1 female", "1 male to 1 female", "",
		},
		{
			"no range in the profile", RuleMalesPerFemale, needs(func(n *Needs) { n.MalesPerFemaleHigh = 0 }), 0, Unknown,
			"1 male to 1 female", "how many males the species needs to a female is not known", "",
		},

		{
			"a male among the females", RuleSex, female(func(a *Animal) { a.Sex = Male }), 1, Refuse,
			"male", "Greta is recorded as male and stands among the females", "",
		},
		{
			"a female among the males", RuleSex, male(func(a *Animal) { a.Sex = Female }), 0, Refuse,
			"female", "Bram is recorded as female and stands among the males", "",
		},
		{
			"sex not known", RuleSex, male(func(a *Animal) { a.Sex = SexUnknown }), 0, Refuse,
			"", "the sex of Bram is not known", "",
		},
		{
			"on both sides", RuleSex, func(_ Terms, m, f *Animal) { *f = *m; f.Sex = Female }, 1, Refuse,
			"female, no sign recorded", "Bram stands in this pairing twice", "",
		},

		{
			"died that day", RuleInRoom, male(func(a *Animal) { a.Died = day("2027-03-01") }), 0, Refuse,
			"died 2027-03-01", "Bram died on 2027-03-01", "",
		},
		{
			"died later: was alive then", RuleInRoom, male(func(a *Animal) { a.Died = day("2027-03-02") }), 0, Fine,
			"in the room", "Bram is in the room", "",
		},
		{
			"left before", RuleInRoom, female(func(a *Animal) { a.Left = day("2027-02-11") }), 1, Refuse,
			"left 2027-02-11", "Greta left on 2027-02-11", "",
		},
		{
			"not yet come", RuleInRoom, female(func(a *Animal) { a.Acquired = day("2027-04-11") }), 1, Refuse,
			"comes 2027-04-11", "Greta only comes on 2027-04-11", "2027-04-11",
		},
		{
			"came that day", RuleInRoom, female(func(a *Animal) { a.Acquired = day("2027-03-01") }), 1, Fine,
			"in the room", "Greta is in the room", "",
		},
		{
			"promised", RulePromised, female(func(a *Animal) { a.Promised = "Anouk" }), 1, Refuse,
			"Anouk", "Greta is promised to Anouk", "",
		},
		{
			"in quarantine until a day", RuleQuarantine, male(func(a *Animal) {
				a.Quarantines = []Hold{{From: day("2027-02-01"), Until: day("2027-03-01"), Note: "from the fair"}}
			}), 0, Refuse,
			"until 2027-03-01", "Bram is held for quarantine until 2027-03-01: from the fair", "2027-03-02",
		},
		{
			"in quarantine until somebody lifts it, which outweighs a day", RuleQuarantine, female(func(a *Animal) {
				a.Quarantines = []Hold{{From: day("2027-02-01"), Until: day("2027-04-01")}, {}}
			}), 1, Refuse,
			"until it is lifted", "Greta is held for quarantine until that is lifted", "",
		},
		{
			"the later of two days", RuleHealth, male(func(a *Animal) {
				a.HealthHolds = []Hold{{Until: day("2027-05-01")}, {Until: day("2027-04-01")}}
			}), 0, Refuse,
			"until 2027-05-01", "Bram is held for health until 2027-05-01", "2027-05-02",
		},
		{
			"quarantine was over the day before", RuleQuarantine, male(func(a *Animal) {
				a.Acquired = day("2027-02-20")
				a.Quarantines = []Hold{{From: day("2027-02-20"), Until: day("2027-02-28")}}
			}), 0, Fine,
			"over since 2027-02-28", "the quarantine of Bram ended on 2027-02-28", "",
		},
		{
			"a hold that only begins is none yet", RuleHealth, male(func(a *Animal) {
				a.HealthHolds = []Hold{{From: day("2027-03-02")}}
			}), 0, Fine,
			"not held", "Bram is not held for its health", "",
		},
		{
			"an illness that is over", RuleHealth, male(func(a *Animal) {
				a.HealthHolds = []Hold{{Until: day("2026-03-02")}}
			}), 0, Fine,
			"over since 2026-03-02", "the last hold of Bram for its health ended on 2026-03-02", "",
		},
		{
			"came lately, and nobody recorded a quarantine", RuleQuarantine, male(func(a *Animal) { a.Acquired = day("2027-01-31") }), 0, Warn,
			"29 days", "Bram came on 2027-01-31, 29 days before, and no quarantine is recorded; 30 days apart are usual", "2027-03-02",
		},
		{
			"came just long enough before", RuleQuarantine, male(func(a *Animal) { a.Acquired = day("2027-01-30") }), 0, Fine,
			"30 days", "Bram came 30 days before", "",
		},
		{
			"born here", RuleQuarantine, male(func(a *Animal) { a.Acquired = 0 }), 0, Fine,
			"not from outside", "Bram did not come from outside, as far as is recorded", "",
		},
		{
			"no quarantine in the profile", RuleQuarantine, func(t Terms, m, f *Animal) {
				needs(func(n *Needs) { n.QuarantineDays = 0 })(t, m, f)
				m.Acquired = day("2026-03-02")
			}, 0, Unknown,
			"came 2026-03-02", "how long an animal of the species is kept apart when it comes is not known", "",
		},
		{
			"no quarantine in the profile, and here for a year", RuleQuarantine, func(t Terms, m, f *Animal) {
				needs(func(n *Needs) { n.QuarantineDays = 0 })(t, m, f)
				m.Acquired = day("2026-03-01")
			}, 0, Fine,
			"365 days", "Bram came 365 days before", "",
		},

		{
			"a day short", RuleAge, female(func(a *Animal) { a.OutOfWater = day("2027-03-01").Add(-539) }), 1, Refuse,
			"539 days", "Greta is too young: 539 days (out of the water 2025-09-08), and a female needs 540", "2027-03-02",
		},
		{
			"old enough that day", RuleAge, female(func(a *Animal) { a.OutOfWater = day("2027-03-01").Add(-540) }), 1, Fine,
			"540 days", "Greta is old enough: 540 days", "",
		},
		{
			"males need less", RuleAge, male(func(a *Animal) { a.OutOfWater = day("2027-03-01").Add(-300) }), 0, Fine,
			"300 days", "Bram is old enough: 300 days", "",
		},
		{
			"still a tadpole", RuleAge, male(func(a *Animal) { a.OutOfWater = day("2027-03-11") }), 0, Refuse,
			"not yet out of the water", "Bram is too young: not yet out of the water (out of the water 2027-03-11), and a male needs 300", "2028-01-05",
		},
		{
			"only hatched: the usual days as a tadpole are taken off", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Hatched = 0, day("2027-03-01").Add(-359) }), 0, Refuse,
			"299 days", "Bram is too young: 299 days (hatched 2026-03-07, and 60 days as a tadpole are usual), and a male needs 300", "2027-03-02",
		},
		{
			"only hatched, and long enough ago", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Hatched = 0, day("2027-03-01").Add(-360) }), 0, Fine,
			"300 days", "Bram is old enough: 300 days", "",
		},
		{
			"only hatched, days as a tadpole not known: too young for certain", RuleAge,
			func(t Terms, m, f *Animal) {
				needs(func(n *Needs) { n.TadpoleDays = 0 })(t, m, f)
				m.OutOfWater, m.Hatched = 0, day("2027-03-01").Add(-299)
			}, 0, Refuse,
			"at most 299 days", "Bram is too young: at most 299 days (hatched 2026-05-06), and a male needs 300", "2027-03-02",
		},
		{
			"only hatched, days as a tadpole not known: perhaps old enough", RuleAge,
			func(t Terms, m, f *Animal) {
				needs(func(n *Needs) { n.TadpoleDays = 0 })(t, m, f)
				m.OutOfWater, m.Hatched = 0, day("2027-03-01").Add(-320)
			}, 0, Unknown,
			"at most 320 days", "the age of Bram is not known well enough: hatched 2026-04-15", "",
		},
		{
			"bought, and here long enough whatever it came as", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Acquired = 0, day("2027-03-01").Add(-360) }), 0, Fine,
			"at least 300 days", "Bram is old enough: at least 300 days", "",
		},
		{
			"bought lately: it may be of any age", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Acquired = 0, day("2027-03-01").Add(-100) }), 0, Unknown,
			"at least 40 days", "the age of Bram is not known well enough: here since 2026-11-21", "",
		},
		{
			"bought last week", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Acquired = 0, day("2027-02-22") }), 0, Unknown,
			"", "the age of Bram is not known well enough: here since 2027-02-22", "",
		},
		{
			"no date at all", RuleAge, male(func(a *Animal) { a.OutOfWater, a.Acquired = 0, 0 }), 0, Unknown,
			"", "the age of Bram is not known", "",
		},
		{
			"no age in the profile", RuleAge, needs(func(n *Needs) { n.Male.AgeDays = 0 }), 0, Unknown,
			"730 days", "the age at which a male of the species can be bred is not known", "",
		},

		{
			"too short", RuleLength, female(func(a *Animal) { a.LengthMM = 54.9 }), 1, Warn,
			"54.9 mm", "Greta has 54.9 mm; a female is bred from 55 mm", "",
		},
		{
			"just long enough", RuleLength, female(func(a *Animal) { a.LengthMM = 55 }), 1, Fine,
			"55 mm", "Greta has 55 mm", "",
		},
		{
			"never measured", RuleLength, female(func(a *Animal) { a.LengthMM = 0 }), 1, Unknown,
			"", "the length of Greta is not known", "",
		},
		{
			"no length in the profile", RuleLength, needs(func(n *Needs) { n.Female.LengthMM = 0 }), 1, Unknown,
			"60 mm", "the length at which a female of the species can be bred is not known", "",
		},
		{
			"too light", RuleWeight, male(func(a *Animal) { a.WeightG = 3.95 }), 0, Warn,
			"3.95 g", "Bram has 3.95 g; a male is bred from 4 g", "",
		},
		{
			"never weighed", RuleWeight, male(func(a *Animal) { a.WeightG = 0 }), 0, Unknown,
			"", "the weight of Bram is not known", "",
		},
		{
			"a species without a profile", RuleWeight, male(func(a *Animal) { a.Species = "hyla-sp" }), 0, Unknown,
			"12 g", "the weight at which a male of the species can be bred is not known", "",
		},

		{
			"a founder", RuleAncestry, func(t Terms, m, _ *Animal) { *m = animal(t, "Moss", Male) }, 0, Unknown,
			"0.0 generations known", "no parent of Moss is known, so it counts as unrelated to all but its own descendants", "",
		},
		{
			"a father that is one of two", RuleAncestry, func(t Terms, _, f *Animal) { *f = animal(t, "Wren", Female) }, 1, Unknown,
			"2.0 generations known", "a parent in the ancestry of Wren is one of several, so its kinship is an average over them", "",
		},

		{
			"laid 89 days ago", RuleRest, female(func(a *Animal) { a.Clutches = []civil.Date{day("2027-03-01").Add(-89)} }), 0, Refuse,
			"89 days", "the last clutch of Greta was laid on 2026-12-02, 89 days before; she needs 90 to recover", "2027-03-02",
		},
		{
			"laid 90 days ago", RuleRest, female(func(a *Animal) { a.Clutches = []civil.Date{day("2027-03-01").Add(-90)} }), 0, Warn,
			"90 days", "the last clutch of Greta was laid on 2026-12-01, 90 days before; 180 are usual", "2027-05-30",
		},
		{
			"laid 180 days ago", RuleRest, female(func(a *Animal) { a.Clutches = []civil.Date{day("2027-03-01").Add(-180)} }), 0, Fine,
			"180 days", "the last clutch of Greta was laid on 2026-09-02, 180 days before", "",
		},
		{
			"a clutch after the pairing", RuleRest, female(func(a *Animal) { a.Clutches = []civil.Date{day("2027-03-05")} }), 0, Refuse,
			"clutch on 2027-03-05", "Greta has a clutch on 2027-03-05, after this pairing", "2027-06-03",
		},
		{"no rest in the profile", RuleRest, func(t Terms, m, f *Animal) {
			needs(func(n *Needs) { n.RestLeast, n.RestUsual = 0, 0 })(t, m, f)
			f.Clutches = []civil.Date{day("2027-02-01")}
		}, 0, Unknown, "28 days", "how long a female of the species rests between clutches is not known", ""},

		{
			"as often as is allowed: the third last has to be a year old", RuleClutches, female(func(a *Animal) {
				a.Clutches = []civil.Date{day("2025-12-01"), day("2026-03-02"), day("2026-05-01"), day("2026-07-01"), day("2026-09-01")}
			}), 0, Refuse,
			"4 clutches in 12 months", "Greta laid 4 clutches within 12 months; 3 at most are allowed", "2027-05-01",
		},
		{
			"one of them is just a year old", RuleClutches, female(func(a *Animal) {
				a.Clutches = []civil.Date{day("2026-03-01"), day("2026-05-01"), day("2026-09-01")}
			}), 0, Fine,
			"2 clutches in 12 months", "Greta laid 2 clutches within 12 months", "",
		},

		{"father and daughter", RuleInbreeding, func(t Terms, m, f *Animal) {
			*m, *f = animal(t, "Quill", Male), animal(t, "Ottilie", Female)
		}, 0, Refuse, "0.25", "the young of Quill and Ottilie would be inbred to 0.25; refused from 0.125", ""},
		{
			"half sibs are just refused", RuleInbreeding, func(t Terms, _, f *Animal) { *f = animal(t, "Tilde", Female) }, 0, Refuse,
			"0.125", "the young of Bram and Tilde would be inbred to 0.125; refused from 0.125", "",
		},
		{"a grandfather twice over, perhaps", RuleInbreeding, func(t Terms, m, f *Animal) {
			*m, *f = animal(t, "Moss", Male), animal(t, "Wren", Female) // 1/8 through Greta, and with one half another 1/8
		}, 0, Refuse, "0.1875", "the young of Moss and Wren would be inbred to 0.1875; refused from 0.125", ""},
		{"a grandfather, if it was the other father", RuleInbreeding, func(t Terms, m, f *Animal) {
			*m, *f = animal(t, "Quill", Male), animal(t, "Wren", Female) // half of 1/8
		}, 0, Warn, "0.0625", "the young of Quill and Wren would be inbred to 0.0625; warned about from 0.0625", ""},
	} {
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
