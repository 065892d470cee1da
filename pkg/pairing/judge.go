package pairing

// candidate is an animal with what the rules about single animals say of it.
type candidate struct {
	Animal
	findings []Finding // one for each rule, in the order of animalRules
}

// animalRules look at one animal that is to be used as the given sex.
var animalRules = []func(Terms, Animal, Sex) Finding{
	judgeSex, judgeInRoom, judgePromised, judgeQuarantine, judgeHealth, judgeAge, judgeLength, judgeWeight, judgeAncestry,
}

// Judge holds a pairing of one or more males with one or more females against
// all rules. The findings are complete: one for each rule and each animal, each
// male with each female, or all together, whatever its severity.
//
// It panics if a side is empty, if t has no pedigree or no date, or if a Node is
// not in the pedigree. Cost: that of the kinship of each male with each female.
func Judge(t Terms, males, females []Animal) Verdict {
	if len(males) == 0 || len(females) == 0 {
		panic("pairing: a pairing needs at least one male and one female")
	}
	t.mustBeWhole()
	return judge(t, t.candidates(males, Male), t.candidates(females, Female), t.Pedigree.Kinship)
}

// JudgeAnimal holds one animal that is to be used as a male or as a female against
// the rules that look at nothing but it: a finding for each. It panics as [Judge] does.
func JudgeAnimal(t Terms, a Animal, as Sex) []Finding {
	t.mustBeWhole()
	findings := t.candidates([]Animal{a}, as)[0].findings
	relax(findings, t.Rules.Relaxed)
	return findings
}

func (t Terms) mustBeWhole() {
	if t.Pedigree == nil {
		panic("pairing: Terms without a pedigree")
	}
	if !t.On.Known() {
		panic("pairing: Terms without a date")
	}
}

func (t Terms) candidates(animals []Animal, as Sex) []candidate {
	out := make([]candidate, len(animals))
	for i, a := range animals {
		out[i].Animal = a
		for _, rule := range animalRules {
			out[i].findings = append(out[i].findings, rule(t, a, as))
		}
		if as == Female {
			out[i].findings = append(out[i].findings, judgeRest(t, a), judgeClutches(t, a))
		}
	}
	return out
}

// judge puts the findings about single animals and about the whole together.
// kinship is between the nodes of a male and of a female.
func judge(t Terms, males, females []candidate, kinship func(male, female int) float64) Verdict {
	all := append(append(make([]candidate, 0, len(males)+len(females)), males...), females...)
	v := Verdict{Findings: []Finding{
		judgeSpecies(all),
		judgeLine(all),
		judgeLocality(all),
		judgeMalesPerFemale(t, males, females),
	}}
	for rule := range females[0].findings {
		for _, c := range all {
			if rule < len(c.findings) {
				v.Findings = append(v.Findings, c.findings[rule])
			}
		}
	}
	markTwice(v.Findings)
	for _, m := range males {
		for _, f := range females {
			young := kinship(m.Node, f.Node)
			v.YoungInbreeding += young
			v.Findings = append(v.Findings, judgeInbreeding(t.Rules, m.Animal, f.Animal, young))
		}
	}
	v.YoungInbreeding /= float64(len(males) * len(females))
	relax(v.Findings, t.Rules.Relaxed)
	return v
}

// markTwice refuses an animal that stands in the pairing more than once.
func markTwice(findings []Finding) {
	seen := map[string]bool{}
	for i, f := range findings {
		if f.Rule != RuleSex {
			continue
		}
		if id := f.Animals[0]; seen[id] {
			findings[i].Severity = Refuse
			findings[i].Message = id + " stands in this pairing twice"
		} else {
			seen[id] = true
		}
	}
}
