package pairing

import (
	"testing"
)

// TestRulesOfOneAnimal is about whether each is here, is free and is of the sex that is wanted.
func TestRulesOfOneAnimal(t *testing.T) {
	checkRules(t, []ruleCase{
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
			"quarantine was over the day before", RuleQuarantine, male(func(a *Animal) {
				a.Acquired = day("2027-02-20")
				a.Quarantines = []Hold{{From: day("2027-02-20"), Until: day("2027-02-28")}}
			}), 0, Fine,
			"over since 2027-02-28", "the quarantine of Bram ended on 2027-02-28", "",
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
			"the later of two days", RuleHealth, male(func(a *Animal) {
				a.HealthHolds = []Hold{{Until: day("2027-05-01")}, {Until: day("2027-04-01")}}
			}), 0, Refuse,
			"until 2027-05-01", "Bram is held for health until 2027-05-01", "2027-05-02",
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
	})
}
