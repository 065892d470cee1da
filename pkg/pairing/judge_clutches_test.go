package pairing

import (
	"testing"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// TestRulesOfClutches is about the group in the chamber and what its females have laid.
func TestRulesOfClutches(t *testing.T) {
	checkRules(t, []ruleCase{
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
	})
}
