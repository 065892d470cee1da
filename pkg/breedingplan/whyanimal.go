package breedingplan

import (
	"cmp"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// AnimalVerdict is what all rules say of one animal and of each mate that it could have.
type AnimalVerdict struct {
	On       civil.Date  `json:"on"`
	ID       string      `json:"id"`
	Sex      pairing.Sex `json:"sex"`
	Findings []Finding   `json:"findings"` // about it alone
	Mates    []Mate      `json:"mates"`    // of the other sex and its species, in the room; the best first
	Warnings []string    `json:"warnings,omitempty"`
}

// Mate is an animal that another one could be paired with.
type Mate struct {
	ID          string     `json:"id"`
	Name        string     `json:"name,omitempty"`
	Allowed     bool       `json:"allowed"`
	From        civil.Date `json:"allowed_from,omitempty"` // for a refused pair: the day from which time alone allows it
	Inbreeding  float64    `json:"inbreeding"`             // of the young
	MeanKinship float64    `json:"mean_kinship"`           // of the mate with the line
	Refused     []string   `json:"refused,omitempty"`      // what refuses the pair, the rules about the animal asked for aside
	Warned      []string   `json:"warned,omitempty"`       // likewise, what to think of first
}

// WhyAnimal holds an animal, and its pair with each possible mate, against all rules: allowed
// mates first, then by the inbreeding of the young and the mean kinship of the mate. An animal
// of unknown sex has no mates. The error is that of [Stock.WhyPair].
func (s *Stock) WhyAnimal(id string, w Wish) (AnimalVerdict, error) {
	w, err := s.whole(w)
	if err != nil {
		return AnimalVerdict{}, err
	}
	i, err := s.find(id)
	if err != nil {
		return AnimalVerdict{}, err
	}
	a := s.animal(i)
	l := s.line(a.Species, w)
	out := AnimalVerdict{On: s.Terms.On, ID: a.ID, Sex: a.Sex, Findings: []Finding{}, Mates: []Mate{}, Warnings: ancestryWarnings(l)}
	for _, f := range pairing.JudgeAnimal(s.terms(w), a.Animal, a.Sex.Possible()[0]) {
		out.Findings = append(out.Findings, told(f))
	}
	switch a.Sex {
	case pairing.Male:
		l.males = []string{a.ID}
	case pairing.Female:
		l.females = []string{a.ID}
	default:
		return out, nil
	}
	if err := l.judge(); err != nil {
		return AnimalVerdict{}, err
	}
	for _, p := range l.pairs {
		other := p.Male
		if other == a.ID {
			other = p.Female
		}
		out.Mates = append(out.Mates, l.mate(a.ID, other, p.Verdict))
	}
	slices.SortStableFunc(out.Mates, func(a, b Mate) int {
		return cmp.Or(
			cmp.Compare(len(a.Refused), len(b.Refused)),
			cmp.Compare(level(a.Inbreeding), level(b.Inbreeding)),
			cmp.Compare(level(a.MeanKinship), level(b.MeanKinship)),
		)
	})
	return out, nil
}

func (l *line) mate(id, other string, v pairing.Verdict) Mate {
	i := l.stock.number(other)
	m := Mate{
		ID: other, Name: l.stock.animal(i).Name, Allowed: v.Allowed(),
		Inbreeding: v.YoungInbreeding, MeanKinship: l.set.MeanKinship(i),
	}
	if !m.Allowed {
		m.From, _ = v.AllowedFrom()
	}
	for _, f := range v.Findings {
		switch {
		case len(f.Animals) == 1 && f.Animals[0] == id:
		case f.Severity == pairing.Refuse:
			m.Refused = append(m.Refused, f.Message)
		case f.Severity == pairing.Warn && f.Rule != pairing.RuleMalesPerFemale:
			m.Warned = append(m.Warned, thought(f))
		}
	}
	return m
}
