package pedigree

import (
	"math/rand/v2"
	"strconv"
)

// population is the shape of a simulated population: founders that become the
// parents of the first cohort, and cohorts whose parents are drawn from the
// cohort before.
type population struct {
	name    string
	cohorts int
	sires   int // of each cohort
	dams    int // of each cohort, each with one sire
	young   int // of each dam
}

var (
	clutchShaped = population{"clutch-shaped", 20, 200, 1000, 50}
	smallFamily  = population{"small-family", 20, 500, 25000, 2}
)

// tenth is the population with a tenth of the parents.
func (p population) tenth() population {
	p.sires, p.dams = p.sires/10, p.dams/10
	return p
}

func (p population) size() int { return p.sires + p.dams + p.cohorts*p.dams*p.young }

// records draws the population. Half of each cohort, at random, is female.
func (p population) records(seed uint64) []Record {
	random := rand.New(rand.NewPCG(seed, 1))
	records := make([]Record, 0, p.size())
	add := func(sire, dam string) {
		records = append(records, Record{ID: "f" + strconv.Itoa(len(records)), Sire: sire, Dam: dam})
	}
	for range p.sires + p.dams {
		add("", "")
	}
	males, females := records[:p.sires], records[p.sires:]
	for range p.cohorts {
		first := len(records)
		for i, dam := range females[:p.dams] {
			for range p.young {
				add(males[i%p.sires].ID, dam.ID)
			}
		}
		shuffled := make([]Record, 0, len(records)-first)
		for _, i := range random.Perm(len(records) - first) {
			shuffled = append(shuffled, records[first+i])
		}
		males, females = shuffled[:len(shuffled)/2], shuffled[len(shuffled)/2:]
	}
	return records
}
