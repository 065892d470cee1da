package breedingplan

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// PairVerdict is what all rules say of two animals.
type PairVerdict struct {
	On       civil.Date `json:"on"`
	Male     string     `json:"male"`
	Female   string     `json:"female"`
	Allowed  bool       `json:"allowed"`
	From     civil.Date `json:"allowed_from,omitempty"` // for a refused pair: the day from which time alone allows it
	Findings []Finding  `json:"findings"`

	Inbreeding float64 `json:"inbreeding"` // of the young
	Expected   bool    `json:"expected"`   // a mean over possible parents
	// Least and Greatest are the ends of what it can be, when it is such a mean; nil when
	// it is none, or when the ways are too many.
	Least         *float64   `json:"least,omitempty"`
	Greatest      *float64   `json:"greatest,omitempty"`
	Shared        []Ancestor `json:"shared"` // ancestors through which the young would be inbred
	MaleKinship   float64    `json:"male_mean_kinship"`
	FemaleKinship float64    `json:"female_mean_kinship"`
	// Young are held back in the change of the gene diversity from GeneDiversity
	// to WithYoung.
	Young         int      `json:"young"`
	GeneDiversity float64  `json:"gene_diversity"`
	WithYoung     float64  `json:"gene_diversity_with_young"`
	Warnings      []string `json:"warnings,omitempty"`
}

// Finding is what one rule says.
type Finding struct {
	Rule     pairing.Rule     `json:"rule"`
	Animals  []string         `json:"animals"`
	Severity pairing.Severity `json:"severity"`
	Relaxed  bool             `json:"relaxed,omitempty"` // the rule is set aside, and would weigh one step more
	Value    string           `json:"value,omitempty"`
	Limit    string           `json:"limit,omitempty"`
	Message  string           `json:"message"`
	From     civil.Date       `json:"from,omitempty"` // the day from which it weighs less
}

// WhyPair holds two animals, the male and the female in any order, against all
// rules, and tells what holding young of theirs back would do to the line. An animal
// of unknown sex stands on the side that is left. The error is a *[WishError].
func (s *Stock) WhyPair(one, other string, w Wish) (PairVerdict, error) {
	w, err := s.whole(w)
	if err != nil {
		return PairVerdict{}, err
	}
	a, err := s.find(one)
	if err != nil {
		return PairVerdict{}, err
	}
	b, err := s.find(other)
	if err != nil {
		return PairVerdict{}, err
	}
	if a == b {
		return PairVerdict{}, &WishError{"a pair is two animals"}
	}
	if s.animal(a).Sex == pairing.Female || s.animal(b).Sex == pairing.Male {
		a, b = b, a
	}
	l := s.line(s.animal(a).Species, w)
	male, female := s.animal(a).ID, s.animal(b).ID
	verdict := pairing.Judge(s.terms(w), s.breeders(male), s.breeders(female))
	effect := l.set.Effect([]int{a}, []int{b}, w.Young, pedigree.OneUnknown)
	out := PairVerdict{
		On: s.Terms.On, Male: male, Female: female, Allowed: verdict.Allowed(),
		Inbreeding: verdict.YoungInbreeding,
		Expected:   s.Terms.Pedigree.Uncertain(a) || s.Terms.Pedigree.Uncertain(b),
		Shared:     []Ancestor{}, MaleKinship: effect.SireKinship[0], FemaleKinship: effect.DamKinship[0],
		Young: w.Young, GeneDiversity: effect.GeneDiversity, WithYoung: effect.WithYoung,
		Warnings: []string{pedigree.FounderWarning},
	}
	if low, high, ok := s.Terms.Pedigree.KinshipRange(a, b); ok && out.Expected {
		out.Least, out.Greatest = &low, &high
	}
	if !out.Allowed {
		out.From, _ = verdict.AllowedFrom()
	}
	for _, x := range effect.Shared {
		a := s.animal(x.Animal)
		out.Shared = append(out.Shared, Ancestor{ID: a.ID, Name: a.Name, Share: x.Share})
	}
	for _, f := range verdict.Findings {
		out.Findings = append(out.Findings, told(f))
	}
	return out, nil
}

func told(f pairing.Finding) Finding {
	return Finding{
		Rule: f.Rule, Animals: f.Animals, Severity: f.Severity, Value: f.Value, Limit: f.Limit, Message: f.Message, From: f.From,
		Relaxed: f.Relaxed,
	}
}

// Ancestor is an ancestor of both animals, and its part of the inbreeding of
// their young.
type Ancestor struct {
	ID    string  `json:"id"`
	Name  string  `json:"name,omitempty"`
	Share float64 `json:"share"`
}
