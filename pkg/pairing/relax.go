package pairing

import "slices"

// Relaxable gives the rules that a keeper may set aside, in the order of the
// rules. The others protect the animals, or say what a pair is: a species is not
// crossed, an animal that is held stays apart, the dead do not breed.
func Relaxable() []Rule {
	return []Rule{RulePromised, RuleAge, RuleLength, RuleWeight, RuleRest, RuleClutches, RuleInbreeding}
}

// relax takes a step from the findings of the rules that are set aside.
func relax(findings []Finding, rules []Rule) {
	for i, f := range findings {
		if f.Severity < Warn || !slices.Contains(rules, f.Rule) {
			continue
		}
		findings[i].Relaxed = true
		findings[i].Severity = Warn
		if f.Severity == Warn {
			findings[i].Severity = Fine
		}
	}
}
