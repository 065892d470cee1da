package pairing

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// maturity gives what an animal of the species and sex needs.
func (t Terms) maturity(species string, sex Sex) Maturity {
	if sex == Male {
		return t.Needs[species].Male
	}
	return t.Needs[species].Female
}

// age is what is known of the days since an animal left the water.
type age struct {
	days  int    // meaningless if basis is notKnown
	basis basis  // what days is
	since string // how it was found, for the keeper
}

type basis int

const (
	notKnown basis = iota
	exact          // to the day, or as good as the usual time to leave the water
	atLeast
	atMost
)

// ageOf goes by the day on which a left the water; without it by its hatching, and
// without that by its laying; without all by the day on which it came, which only says how
// old it is at least.
func ageOf(a Animal, n Needs, on civil.Date) age {
	tadpoleDays := n.TadpoleDays
	switch {
	case a.OutOfWater.Known():
		return age{on.Sub(a.OutOfWater), exact, "out of the water " + a.OutOfWater.String()}
	case a.Hatched.Known() && tadpoleDays > 0:
		since := fmt.Sprintf("hatched %s, and %d days as a tadpole are usual", a.Hatched, tadpoleDays)
		return age{on.Sub(a.Hatched) - tadpoleDays, exact, since}
	case a.Hatched.Known():
		return age{on.Sub(a.Hatched), atMost, "hatched " + a.Hatched.String()}
	case a.Laid.Known() && n.EggDays > 0 && tadpoleDays > 0:
		since := fmt.Sprintf("laid %s, and %d days as an egg and %d as a tadpole are usual", a.Laid, n.EggDays, tadpoleDays)
		return age{on.Sub(a.Laid) - n.EggDays - tadpoleDays, exact, since}
	case a.Laid.Known():
		return age{on.Sub(a.Laid), atMost, "laid " + a.Laid.String()}
	case a.Acquired.Known():
		// It may have come as a tadpole.
		return age{on.Sub(a.Acquired) - tadpoleDays, atLeast, "here since " + a.Acquired.String()}
	}
	return age{}
}

func (a age) String() string {
	switch {
	case a.basis == notKnown:
		return ""
	case a.days < 0 && a.basis == atLeast:
		return ""
	case a.days < 0:
		return "not yet out of the water"
	case a.basis == atLeast:
		return fmt.Sprintf("at least %d days", a.days)
	case a.basis == atMost:
		return fmt.Sprintf("at most %d days", a.days)
	}
	return fmt.Sprintf("%d days", a.days)
}

// DaysOut gives for how many days an animal has been out of the water on the day of the
// terms, below 0 before it is; false when that is not known, or not but for the usual
// time as an egg and a tadpole. It panics as [Judge] does.
func DaysOut(t Terms, a Animal) (days int, known bool) {
	t.mustBeWhole()
	is := ageOf(a, t.Needs[a.Species], t.On)
	return is.days, is.basis == exact
}

// TooYoung reports whether an animal is known to be too young to be bred; one of unknown
// sex, whichever sex it has. It panics as [Judge] does.
func TooYoung(t Terms, a Animal) bool {
	t.mustBeWhole()
	return slices.ContainsFunc(a.Sex.Possible(), func(as Sex) bool { return judgeAge(t, a, as).Severity == Refuse })
}

// judgeAge refuses an animal that is too young: its own growth is not done. An
// animal of unknown age is not refused, or no animal that was bought grown
// could ever be bred.
func judgeAge(t Terms, a Animal, as Sex) Finding {
	f := Finding{Rule: RuleAge, Animals: []string{a.ID}}
	need := t.maturity(a.Species, as).AgeDays
	is := ageOf(a, t.Needs[a.Species], t.On)
	f.Value = is.String()
	if need == 0 {
		f.Severity = Unknown
		f.Message = fmt.Sprintf("the age at which a %s of the species can be bred is not known", as)
		return f
	}
	f.Limit = fmt.Sprintf("%d days out of the water", need)
	switch {
	case is.days < need && (is.basis == exact || is.basis == atMost):
		f.Severity = Refuse
		f.From = t.On.Add(need - is.days)
		f.Message = fmt.Sprintf("%s is too young: %s (%s), and a %s needs %d", a.ID, f.Value, is.since, as, need)
	case is.days >= need && (is.basis == exact || is.basis == atLeast):
		f.Message = fmt.Sprintf("%s is old enough: %s", a.ID, f.Value)
	case is.basis == notKnown:
		f.Severity = Unknown
		f.Message = fmt.Sprintf("the age of %s is not known", a.ID)
	default:
		f.Severity = Unknown
		f.Message = fmt.Sprintf("the age of %s is not known well enough: %s", a.ID, is.since)
	}
	return f
}

func judgeLength(t Terms, a Animal, as Sex) Finding {
	return judgeSize(RuleLength, a, as, a.LengthMM, t.maturity(a.Species, as).LengthMM, "mm")
}

func judgeWeight(t Terms, a Animal, as Sex) Finding {
	return judgeSize(RuleWeight, a, as, a.WeightG, t.maturity(a.Species, as).WeightG, "g")
}

// judgeSize warns about an animal that is too small. It does not refuse: the
// last measurement may be old, and lines differ.
func judgeSize(rule Rule, a Animal, as Sex, is, need float64, unit string) Finding {
	f := Finding{Rule: rule, Animals: []string{a.ID}}
	if is > 0 {
		f.Value = short(is) + " " + unit
	}
	if need > 0 {
		f.Limit = short(need) + " " + unit
	}
	switch {
	case need <= 0:
		f.Severity = Unknown
		f.Message = fmt.Sprintf("the %s at which a %s of the species can be bred is not known", rule, as)
	case is <= 0:
		f.Severity = Unknown
		f.Message = fmt.Sprintf("the %s of %s is not known", rule, a.ID)
	case is < need:
		f.Severity = Warn
		f.Message = fmt.Sprintf("%s has %s; a %s is bred from %s", a.ID, f.Value, as, f.Limit)
	default:
		f.Message = fmt.Sprintf("%s has %s", a.ID, f.Value)
	}
	return f
}
