// Package diversity says how much of its founders' genes a set of living animals
// still carries, how evenly, and how fast it is losing them: what a line is
// judged by.
//
// Every function takes a [pedigree.Pedigree] and the living animals by number; an
// animal that is named twice counts twice. [Summarise] gives the usual figures at
// once. [WhatIf] tells the mean kinship and the gene diversity if some young were
// born and some animals left.
//
// # Which number is which
//
// Four numbers answer the question "as good as how many founders?". They count
// different losses:
//
//   - [FounderEquivalents]: the founders stand in the ancestry unequally;
//   - [AncestorEquivalents]: and everything came through few animals at times;
//   - [FounderGenomeEquivalents]: and genes are lost by chance at every birth,
//     taken from the kinships;
//   - [GeneDrop.FounderGenomeEquivalents]: the same idea, taken from how many of
//     the founders' genes are still there. It is another estimator with another
//     value.
//
// The third is never above the first, and never above the fourth, which is never
// above the first. The second usually lies between the first and the third; that
// is no law.
//
// # What is unknown
//
// Where only one parent is recorded, the other counts as a founder of its own,
// related to nothing ([UnknownSire], [UnknownDam]). [Contributions.Unknown] says
// how much of the genes comes from such parents. All figures are too favourable
// when it is large.
//
// Founders and unknown parents that come from a [pedigree.Source] are founders
// too. Their kinship counts in everything that rests on kinship, and in the gene
// drop; founder and ancestor equivalents take no notice of it.
//
// # Parents that are one of several
//
// Founder contributions, partial inbreeding, completeness, mean kinship, gene
// diversity, [FounderGenomeEquivalents] and [WhatIf] are linear in what is
// uncertain, or made of such numbers: they are exact expectations, or, for
// FounderGenomeEquivalents, computed from one. Everything that [Drop] gives is an
// estimate of the expectation, as the drops draw the parents too. Founder
// equivalents, ancestor equivalents, [OverstatedAncestralInbreeding] and effective
// size are computed from expected values and only approximate then; founder
// equivalents come out too large.
package diversity

import (
	"cmp"
	"fmt"
)

// Founder is a place where genes enter what is known of a pedigree.
type Founder struct {
	// Animal is the founder; for an unknown parent, the animal whose parent it is;
	// -1 for OneSource.
	Animal int
	Role   Role   // which of these
	Source string // id of the source, for OneSource only
}

func (f Founder) compare(g Founder) int {
	return cmp.Or(cmp.Compare(f.Animal, g.Animal), cmp.Compare(f.Role, g.Role), cmp.Compare(f.Source, g.Source))
}

// Role says what a [Founder] is.
type Role int

const (
	// Itself is an animal of which no parent is known, or only the source.
	Itself Role = iota
	// UnknownSire is the unknown sire of an animal whose dam is known.
	UnknownSire
	// UnknownDam is the unknown dam of an animal whose sire is known.
	UnknownDam
	// OneSource is a [pedigree.Source]: its genes were copies of one before the
	// pedigree begins. It only stands in a split of inbreeding.
	OneSource
)

// String gives "itself", "unknown sire", "unknown dam" or "one source".
func (r Role) String() string {
	switch r {
	case Itself:
		return "itself"
	case UnknownSire:
		return "unknown sire"
	case UnknownDam:
		return "unknown dam"
	case OneSource:
		return "one source"
	}
	return fmt.Sprintf("Role(%d)", int(r))
}

// Contribution is what comes from a founder: a share of all genes, of the
// inbreeding, or of whatever the function says that gives it.
type Contribution struct {
	Founder Founder
	Share   float64
}
