package pairing

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
)

func judgeSpecies(all []candidate) Finding {
	f := judgeSame(RuleSpecies, all, Refuse, func(a Animal) string { return a.Species })
	if f.Severity == Refuse {
		f.Message += "; species are not crossed"
	}
	return f
}

func judgeLine(all []candidate) Finding {
	return judgeSame(RuleLine, all, Warn, func(a Animal) string { return a.Line })
}

func judgeLocality(all []candidate) Finding {
	return judgeSame(RuleLocality, all, Warn, func(a Animal) string { return a.Locality })
}

// judgeSame gives the finding of a rule that asks for the same text of all, with
// the severity that a difference has.
func judgeSame(rule Rule, all []candidate, different Severity, text func(Animal) string) Finding {
	f := Finding{Rule: rule}
	var known, unknown, parts []string // known: distinct texts, in order
	for _, c := range all {
		f.Animals = append(f.Animals, c.ID)
		s := text(c.Animal)
		if s == "" {
			unknown = append(unknown, c.ID)
			continue
		}
		if !slices.Contains(known, s) {
			known = append(known, s)
			parts = append(parts, c.ID+" is of "+string(rule)+" "+s)
		}
	}
	f.Value = strings.Join(known, ", ")
	switch {
	case len(known) > 1:
		f.Severity, f.Message = different, strings.Join(parts, ", ")
	case len(unknown) > 0:
		f.Severity, f.Message = Unknown, fmt.Sprintf("the %s of %s is not known", rule, strings.Join(unknown, ", "))
	default:
		f.Message = fmt.Sprintf("all are of %s %s", rule, f.Value)
	}
	return f
}

// judgeMalesPerFemale goes by the needs of the species of the first female.
func judgeMalesPerFemale(t Terms, males, females []candidate) Finding {
	f := Finding{Rule: RuleMalesPerFemale}
	for _, c := range males {
		f.Animals = append(f.Animals, c.ID)
	}
	for _, c := range females {
		f.Animals = append(f.Animals, c.ID)
	}
	f.Value = counted(len(males), "male") + " to " + counted(len(females), "female")
	need := t.Needs[females[0].Species]
	if need.MalesPerFemaleHigh == 0 {
		f.Severity = Unknown
		f.Message = "how many males the species needs to a female is not known"
		return f
	}
	low, high := short(need.MalesPerFemaleLow), short(need.MalesPerFemaleHigh)
	f.Limit = low + " to " + high + " males to a female"
	if low == high {
		f.Limit = low + " males to a female"
	}
	f.Message = f.Value
	ratio := float64(len(males)) / float64(len(females))
	if ratio < need.MalesPerFemaleLow || ratio > need.MalesPerFemaleHigh {
		f.Severity = Warn
		f.Message += "; the species spawns well with " + f.Limit
	}
	return f
}

func counted(n int, what string) string {
	if n != 1 {
		what += "s"
	}
	return strconv.Itoa(n) + " " + what
}

// short writes a number without needless digits.
func short(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
