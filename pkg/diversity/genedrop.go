package diversity

import (
	"runtime"

	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// Drops says how often and from which seed [Drop] plays heredity.
type Drops struct {
	Count int    // from 1 to 1,000,000,000; 1,000 to 10,000 are usual
	Seed  uint64 // the same seed gives the same result
	// Workers is how many goroutines share the work; 0 is one for each processor.
	// The result does not depend on it.
	Workers int
}

// GeneDrop is what became of the founders' genes. Shares of drops estimate
// chances: the standard error of a share x is the root of x(1 - x)/Drops.
type GeneDrop struct {
	Drops    int
	Founders []Retention    // as in [FounderContributions]
	Animals  []Autozygosity // the living animals in their order
}

// Retention is how much of a founder's genes the living animals carry.
type Retention struct {
	Founder      Founder
	Contribution float64 // expected share of the living animals' genes
	// Retained is the expected share of the founder's two genes of which there is
	// still a copy. It is at most 1/2 for an unknown parent of one animal: the
	// other gene was never passed on.
	Retained float64
	Lost     float64 // chance that there is no copy of either
}

// Autozygosity is how often the two genes of an animal were copies of one.
type Autozygosity struct {
	Animal     int
	Inbreeding float64 // chance that they are: an estimate of F
	// Ancestral is the chance that one of its genes, drawn at random, was in an
	// inbred ancestor with two copies of it (ancestral inbreeding as Ballou 1997
	// means it, without the error of his recursion).
	Ancestral float64
	// Again and New split Inbreeding: with or without a copy that had been in an
	// inbred ancestor with two copies of it (Kalinowski, Hedrick and Miller 2000,
	// Conservation Biology 14:1375, without the error of their recursion).
	Again, New float64
}

// Drop plays heredity: every founder gets two genes that are like no other, and at
// every birth each parent passes on one of its two, by a fair coin (MacCluer,
// VandeBerg, Read and Ryder 1986, Zoo Biology 5:147). The parent of young that
// name a group is drawn anew in each drop: one for all of them, or one for each,
// as the group says. The result is the same for any number of workers.
//
// It panics when d.Count is below 1 or above 1,000,000,000, or d.Workers below 0. Time grows with the
// number of ancestors times d.Count, memory with the number of ancestors times
// the number of workers.
func Drop(p *pedigree.Pedigree, living []int, d Drops) *GeneDrop {
	if d.Count < 1 || d.Count > mostDrops || d.Workers < 0 {
		panic("diversity: gene drop with no drops, more than 1,000,000,000, or less than no workers")
	}
	t := newTree(p, living)
	contributions := t.collect(t.weights(living))
	workers := d.Workers
	if workers == 0 {
		workers = runtime.GOMAXPROCS(0)
	}
	tally := newLottery(t, living, contributions).run(d, min(workers, d.Count))

	drop := &GeneDrop{Drops: d.Count}
	share := func(count int) float64 { return float64(count) / float64(d.Count) }
	for f, c := range contributions {
		drop.Founders = append(drop.Founders, Retention{
			Founder: c.Founder, Contribution: c.Share,
			Retained: share(tally.genes[f]) / 2, Lost: share(tally.lost[f]),
		})
	}
	for n, i := range living {
		a := tally.animals[n]
		drop.Animals = append(drop.Animals, Autozygosity{
			Animal: i, Inbreeding: share(int(a.autozygous)), Ancestral: share(int(a.ancestral)) / 2,
			Again: share(int(a.again)), New: share(int(a.autozygous - a.again)),
		})
	}
	return drop
}

// mostDrops keeps counts within 32 bits.
const mostDrops = 1_000_000_000

// FounderGenomeEquivalents gives fg by retention: 1 over the sum of p²/r, where p
// is what a founder contributes and r how much of its genes is retained (Lacy
// 1989, Zoo Biology 8:111). It is not the estimator by kinship,
// [FounderGenomeEquivalents], and as a rule larger. Founders of which no drop
// kept a gene are left out. No living animals give 0.
func (d *GeneDrop) FounderGenomeEquivalents() float64 {
	sum := 0.0
	for _, f := range d.Founders {
		if f.Retained > 0 {
			sum += f.Contribution * f.Contribution / f.Retained
		}
	}
	return over(sum)
}
