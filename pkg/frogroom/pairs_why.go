package frogroom

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// PairVerdict is what all rules say of two animals.
type PairVerdict struct {
	On       civil.Date    `json:"on"`
	Male     string        `json:"male"`
	Female   string        `json:"female"`
	Allowed  bool          `json:"allowed"`
	From     civil.Date    `json:"allowed_from,omitempty"` // for a refused pair: the day from which time alone allows it
	Findings []PairFinding `json:"findings"`

	Inbreeding float64 `json:"inbreeding"` // of the young
	Expected   bool    `json:"expected"`   // a mean over possible parents
	// Least and Greatest are the ends of what it can be, when it is such a mean; nil when
	// it is none, or when the ways are too many.
	Least         *float64       `json:"least,omitempty"`
	Greatest      *float64       `json:"greatest,omitempty"`
	Shared        []PairAncestor `json:"shared"` // ancestors through which the young would be inbred
	MaleKinship   float64        `json:"male_mean_kinship"`
	FemaleKinship float64        `json:"female_mean_kinship"`
	// Young are held back in the change of the gene diversity from GeneDiversity
	// to WithYoung.
	Young         int      `json:"young"`
	GeneDiversity float64  `json:"gene_diversity"`
	WithYoung     float64  `json:"gene_diversity_with_young"`
	Warnings      []string `json:"warnings,omitempty"`
}

// PairFinding is what one rule says.
type PairFinding struct {
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
// of unknown sex stands on the side that is left. The error is an *[UnknownAnimalError],
// or a *[PairsWishError].
func (r *Room) WhyPair(on civil.Date, one, other string, w PairsWish) (PairVerdict, error) {
	mustKnow(on)
	w, err := r.wholeWish(w)
	if err != nil {
		return PairVerdict{}, err
	}
	a, err := r.Ancestry.number(one)
	if err != nil {
		return PairVerdict{}, err
	}
	b, err := r.Ancestry.number(other)
	if err != nil {
		return PairVerdict{}, err
	}
	if a == b {
		return PairVerdict{}, &PairsWishError{"a pair is two animals"}
	}
	if sexOf(r.Ancestry.animal(a).Sex) == pairing.Female || sexOf(r.Ancestry.animal(b).Sex) == pairing.Male {
		a, b = b, a
	}
	l := r.line(on, r.Ancestry.animal(a).Species, w)
	male, female := r.Ancestry.animal(a).ID, r.Ancestry.animal(b).ID
	verdict := pairing.Judge(r.terms(on, w.Relax), r.breeders([]string{male}, on), r.breeders([]string{female}, on))
	effect := l.set.Effect([]int{a}, []int{b}, w.Young, pedigree.OneUnknown)
	out := PairVerdict{
		On: on, Male: male, Female: female, Allowed: verdict.Allowed(),
		Inbreeding: verdict.YoungInbreeding,
		Expected:   r.Ancestry.Pedigree.Uncertain(a) || r.Ancestry.Pedigree.Uncertain(b),
		Shared:     []PairAncestor{}, MaleKinship: effect.SireKinship[0], FemaleKinship: effect.DamKinship[0],
		Young: w.Young, GeneDiversity: effect.GeneDiversity, WithYoung: effect.WithYoung,
		Warnings: []string{founderWarning},
	}
	if low, high, ok := r.Ancestry.Pedigree.KinshipRange(a, b); ok && out.Expected {
		out.Least, out.Greatest = &low, &high
	}
	if !out.Allowed {
		out.From, _ = verdict.AllowedFrom()
	}
	for _, s := range effect.Shared {
		out.Shared = append(out.Shared, PairAncestor{ID: r.Ancestry.Pedigree.ID(s.Animal), Name: r.Ancestry.animal(s.Animal).Name, Share: s.Share})
	}
	for _, f := range verdict.Findings {
		out.Findings = append(out.Findings, told(f))
	}
	return out, nil
}

func told(f pairing.Finding) PairFinding {
	return PairFinding{
		Rule: f.Rule, Animals: f.Animals, Severity: f.Severity, Value: f.Value, Limit: f.Limit, Message: f.Message, From: f.From,
		Relaxed: f.Relaxed,
	}
}

// PairAncestor is an ancestor of both animals, and its part of the inbreeding of
// their young.
type PairAncestor struct {
	ID    string  `json:"id"`
	Name  string  `json:"name,omitempty"`
	Share float64 `json:"share"`
}
