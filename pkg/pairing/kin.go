package pairing

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// judgeAncestry says when kinship rests on little. Kinship takes unknown parents
// as related to nobody, and is an average where a parent is one of several.
func judgeAncestry(t Terms, a Animal, _ Sex) Finding {
	f := Finding{Rule: RuleAncestry, Animals: []string{a.ID}}
	generations := t.Pedigree.CompleteGenerations(a.Node)
	f.Value = strconv.FormatFloat(generations, 'f', 1, 64) + " generations known"
	switch {
	case generations == 0:
		f.Severity = Unknown
		f.Message = fmt.Sprintf("no parent of %s is known, so it counts as unrelated to all but its own descendants", a.ID)
	case t.Pedigree.Uncertain(a.Node):
		f.Severity = Unknown
		f.Message = fmt.Sprintf("a parent in the ancestry of %s is one of several, so its kinship is an average over them", a.ID)
	default:
		f.Message = fmt.Sprintf("%s generations of the ancestry of %s are known", strconv.FormatFloat(generations, 'f', 1, 64), a.ID)
	}
	return f
}

// rounding is what sums of kinships may be off by.
const rounding = 1e-9

func judgeInbreeding(r Rules, male, female Animal, young float64) Finding {
	f := Finding{
		Rule:    RuleInbreeding,
		Animals: []string{male.ID, female.ID},
		Value:   coefficient(young),
		Limit:   "warned from " + coefficient(r.WarnInbreeding) + ", refused from " + coefficient(r.MaxInbreeding),
	}
	f.Message = fmt.Sprintf("the young of %s and %s would be inbred to %s", male.ID, female.ID, f.Value)
	switch {
	case young >= r.MaxInbreeding-rounding:
		f.Severity = Refuse
		f.Message += "; refused from " + coefficient(r.MaxInbreeding)
	case young >= r.WarnInbreeding-rounding:
		f.Severity = Warn
		f.Message += "; warned about from " + coefficient(r.WarnInbreeding)
	}
	return f
}

// coefficient writes an inbreeding coefficient with up to four places, the same
// for all values that only differ by rounding.
func coefficient(x float64) string {
	s := strconv.FormatFloat(math.Round(x*1e9)/1e9, 'f', 4, 64)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}
