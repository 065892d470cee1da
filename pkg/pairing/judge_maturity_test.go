package pairing

import (
	"testing"
)

// TestRulesOfMaturity is about age and size.
func TestRulesOfMaturity(t *testing.T) {
	checkRules(t, []ruleCase{
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
			"only laid: the usual days as an egg and a tadpole are taken off", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Acquired, a.Laid = 0, day("2026-01-01"), day("2027-03-01").Add(-365) }), 0, Refuse,
			"299 days", "Bram is too young: 299 days (laid 2026-03-01, and 6 days as an egg and 60 as a tadpole are usual), and a male needs 300", "2027-03-02",
		},
		{
			"only laid, and long enough ago", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Laid = 0, day("2027-03-01").Add(-366) }), 0, Fine,
			"300 days", "Bram is old enough: 300 days", "",
		},
		{
			"laid and hatched: the later day says more", RuleAge,
			male(func(a *Animal) { a.OutOfWater, a.Laid, a.Hatched = 0, day("2026-01-01"), day("2027-03-01").Add(-360) }), 0, Fine,
			"300 days", "Bram is old enough: 300 days", "",
		},
		{
			"only laid, days as an egg not known: too young for certain", RuleAge,
			func(t Terms, m, f *Animal) {
				needs(func(n *Needs) { n.EggDays = 0 })(t, m, f)
				m.OutOfWater, m.Laid = 0, day("2027-03-01").Add(-299)
			}, 0, Refuse,
			"at most 299 days", "Bram is too young: at most 299 days (laid 2026-05-06), and a male needs 300", "2027-03-02",
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
	})
}

// TestDaysOut: only what is known to the day, or but for the usual time in the water, counts.
func TestDaysOut(t *testing.T) {
	on := day("2027-03-01")
	for _, row := range []struct {
		name string
		is   Animal
		days int
		ok   bool
	}{
		{"out of the water", Animal{OutOfWater: on.Add(-10), Hatched: on.Add(-90)}, 10, true},
		{"hatched", Animal{Hatched: on.Add(-90)}, 30, true},
		{"laid", Animal{Laid: on.Add(-90)}, 24, true},
		{"still in the water", Animal{Hatched: on.Add(-50)}, -10, true},
		{"bought", Animal{Acquired: on.Add(-90)}, 30, false},
		{"nothing known", Animal{}, 0, false},
	} {
		row.is.Species = species
		days, ok := DaysOut(terms(t), row.is)
		if days != row.days || ok != row.ok {
			t.Errorf("%s: %d, %t; want %d, %t", row.name, days, ok, row.days, row.ok)
		}
	}
}
