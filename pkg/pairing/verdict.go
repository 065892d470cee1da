package pairing

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Severity is how much a finding weighs.
type Severity int

// The severities, lightest first.
const (
	Fine    Severity = iota // looked at, nothing against it
	Unknown                 // something is not known, so it was not checked
	Warn                    // the keeper should think twice
	Refuse                  // the pairing is not to be made
)

// String gives "fine", "unknown", "warn" or "refuse".
func (s Severity) String() string {
	switch s {
	case Fine:
		return "fine"
	case Unknown:
		return "unknown"
	case Warn:
		return "warn"
	case Refuse:
		return "refuse"
	}
	return fmt.Sprintf("Severity(%d)", int(s))
}

// MarshalText gives the same as String.
func (s Severity) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Rule names what a finding is about.
type Rule string

// The rules, in the order in which [Verdict.Findings] has them.
const (
	RuleSpecies        Rule = "species"          // all of the same
	RuleLine           Rule = "line"             // all of the same
	RuleLocality       Rule = "locality"         // all of the same
	RuleMalesPerFemale Rule = "males per female" // as the species spawns well
	RuleSex            Rule = "sex"              // known, and right for the side; nobody twice
	RuleInRoom         Rule = "in the room"      // alive, come, not left
	RulePromised       Rule = "promised"         // to nobody
	RuleQuarantine     Rule = "quarantine"       // over, for animals from outside
	RuleHealth         Rule = "health"           // not held back for it
	RuleAge            Rule = "age"              // old enough
	RuleLength         Rule = "length"           // long enough
	RuleWeight         Rule = "weight"           // heavy enough
	RuleAncestry       Rule = "ancestry"         // parents known, so that kinship means something
	RuleRest           Rule = "rest"             // females: long enough since the last clutch
	RuleClutches       Rule = "clutches"         // females: not too many within 12 months
	RuleInbreeding     Rule = "inbreeding"       // of the young of each male with each female
)

// Finding is what one rule says of one animal, of one male with one female, or
// of all that go together.
type Finding struct {
	Rule     Rule
	Animals  []string // ids; males first
	Severity Severity
	Value    string     // what was found, with its unit; empty when not known
	Limit    string     // what it was held against; empty when there is no limit
	Message  string     // a sentence for the keeper, without a full stop
	From     civil.Date // first day on which it weighs less, when time cures it
	Relaxed  bool       // the keeper set the rule aside, and it would weigh one step more
}

// Verdict is what all rules say of a pairing.
type Verdict struct {
	Findings []Finding // by rule, and males before females within a rule
	// YoungInbreeding is the expected inbreeding coefficient of the young when
	// every male and every female has the same chance of being the parent.
	YoungInbreeding float64
}

// Allowed reports whether nothing refuses the pairing.
func (v Verdict) Allowed() bool { return v.Worst() < Refuse }

// Worst gives the heaviest severity among the findings.
func (v Verdict) Worst() Severity {
	worst := Fine
	for _, f := range v.Findings {
		worst = max(worst, f.Severity)
	}
	return worst
}

// AllowedFrom gives the first day on which nothing refuses the pairing any
// longer if nothing else changes, and false when time does not cure it. For a
// pairing that is allowed it is the zero date and true.
func (v Verdict) AllowedFrom() (civil.Date, bool) {
	var from civil.Date
	for _, f := range v.Findings {
		if f.Severity != Refuse {
			continue
		}
		if !f.From.Known() {
			return 0, false
		}
		from = max(from, f.From)
	}
	return from, true
}
