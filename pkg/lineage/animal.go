package lineage

// Sex is what an animal is recorded as.
type Sex int

// The sexes. The zero value is not known.
const (
	SexUnknown Sex = iota
	Male
	Female
)

// String gives "male", "female" or "sex unknown".
func (s Sex) String() string {
	switch s {
	case Male:
		return "male"
	case Female:
		return "female"
	}
	return "sex unknown"
}

// Animal is what is shown of an animal beside its id, which comes from the
// pedigree. All texts may be anything; empty ones are left out.
type Animal struct {
	Name   string
	Sex    Sex
	Clutch string // id of the clutch that it came from
	Line   string
	Gone   bool // died or left
	// Expected is what a pair would have: its id says so, and it has no sex.
	Expected bool
}

func (a Animal) sexOrNone() string {
	if a.Expected {
		return ""
	}
	return a.Sex.String()
}
