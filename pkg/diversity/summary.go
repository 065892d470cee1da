package diversity

import "github.com/spawnwright/spawnwright/pkg/pedigree"

// Summary is what a line is judged by. A pointer is nil, and null in JSON, where
// there is no such value.
type Summary struct {
	Animals int `json:"animals"` // living ones
	// Founders is the number of animals without known parents, living or not,
	// from which the living ones descend.
	Founders int `json:"founders"`

	MeanInbreeding float64 `json:"mean_inbreeding"`
	MaxInbreeding  float64 `json:"max_inbreeding"`
	MeanKinship    float64 `json:"mean_kinship"`   // each animal with itself included
	GeneDiversity  float64 `json:"gene_diversity"` // 1 - MeanKinship

	FounderEquivalents  *float64 `json:"founder_equivalents"`
	AncestorEquivalents *float64 `json:"ancestor_equivalents"`
	// FounderGenomeEquivalents is the estimator by kinship, and ...Retained that
	// by retained genes: they differ.
	FounderGenomeEquivalents         *float64 `json:"founder_genome_equivalents"`
	FounderGenomeEquivalentsRetained *float64 `json:"founder_genome_equivalents_retained"`

	CompleteGenerations float64 `json:"complete_generations"` // mean of the equivalent complete generations
	// UnknownParents is the share of the genes that comes from unknown parents
	// beside known ones.
	UnknownParents float64 `json:"unknown_parents"`
	// Uncertain is the number of living animals with a parent that is one of
	// several in their ancestry: their values are expectations.
	Uncertain int `json:"uncertain"`

	// EffectiveSize is not there when no animal is inbred: it is infinite then.
	EffectiveSize *float64 `json:"effective_size"`
	// EffectiveSizeSE is not there when EffectiveSize is not, or is taken from a
	// single animal.
	EffectiveSizeSE *float64 `json:"effective_size_se"`
	// EffectiveSizeAnimals is the number of animals that it is taken from: those
	// of more than one complete generation.
	EffectiveSizeAnimals int `json:"effective_size_animals"`

	Drops int    `json:"drops"` // of the gene drop
	Seed  uint64 `json:"seed"`
}

// Summarise computes the summary of the living animals; every number is explained
// at the function of its name. The retained founder genomes come from a gene drop
// and depend, a little, on d. With no living animals all numbers are 0 or nil.
//
// It panics as [Drop] does. Cost: that of [AncestorContributions] and of [Drop].
func Summarise(p *pedigree.Pedigree, living []int, d Drops) Summary {
	drop := Drop(p, living, d)
	s := Summary{Animals: len(living), Drops: d.Count, Seed: d.Seed}
	if len(living) == 0 {
		return s
	}
	n := float64(len(living))
	for _, i := range living {
		f := p.Inbreeding(i)
		s.MeanInbreeding += f / n
		s.MaxInbreeding = max(s.MaxInbreeding, f)
		s.CompleteGenerations += p.CompleteGenerations(i) / n
		if p.Uncertain(i) {
			s.Uncertain++
		}
	}
	s.GeneDiversity = p.GeneDiversity(living)
	s.MeanKinship = 1 - s.GeneDiversity

	founders := FounderContributions(p, living)
	s.Founders = founders.Founders()
	s.UnknownParents = founders.Unknown()
	s.FounderEquivalents = some(founders.Equivalents())
	s.AncestorEquivalents = some(AncestorEquivalents(p, living))
	s.FounderGenomeEquivalents = some(FounderGenomeEquivalents(p, living))
	s.FounderGenomeEquivalentsRetained = some(drop.FounderGenomeEquivalents())

	size, ok := RealisedSize(p, living)
	s.EffectiveSizeAnimals = size.Counted
	if ok {
		s.EffectiveSize = some(size.Size)
		if size.Counted > 1 {
			s.EffectiveSizeSE = some(size.StandardError)
		}
	}
	return s
}

func some(x float64) *float64 { return &x }
