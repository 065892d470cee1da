package occupancy

// Pace is one way in which a clutch may go through its stages: what it holds
// from when to when, whatever its size.
type Pace struct {
	Chance float64
	Stays  []Hold // their Amount is not looked at
}

// Size is one number of young that a clutch may have, as the places that it needs
// in each stay of a pace: ten young to a tub, 43 young, five tubs.
type Size struct {
	Chance float64
	Places []int // as many as a pace has stays
}

// Courses gives the courses of a clutch whose pace says nothing about its size:
// each pace with each size. The chance that there are any young is comes; the
// chances of the paces are relative to each other, and so are those of the sizes.
//
// Good paces are percentiles of the days on which stages begin: for u = 5 %, 15 %
// … 95 % the day of hatching and the day out of water that are reached with
// chance u, each pace with a chance of 1. A clutch that is slow is then slow
// throughout. This does not touch the loads of single days, for which only the
// distribution of each day counts as long as stages come in order, but those of
// the season.
//
// It panics when comes is no chance, a chance is negative or none is positive, or
// a size has not as many places as a pace has stays.
func Courses(comes float64, paces []Pace, sizes []Size) []Course {
	mustShare(comes)
	paceSum, sizeSum := 0.0, 0.0
	for _, p := range paces {
		mustWeigh(p.Chance)
		paceSum += p.Chance
	}
	for _, z := range sizes {
		mustWeigh(z.Chance)
		sizeSum += z.Chance
	}
	if paceSum <= 0 || sizeSum <= 0 {
		panic("occupancy: a clutch without a pace or a size that has a chance")
	}
	courses := make([]Course, 0, len(paces)*len(sizes))
	for _, p := range paces {
		for _, z := range sizes {
			chance := comes * (p.Chance / paceSum) * (z.Chance / sizeSum)
			courses = append(courses, Course{Chance: chance, Holds: p.sized(z)})
		}
	}
	return courses
}

func mustWeigh(chance float64) {
	if !(chance >= 0) {
		panic("occupancy: a chance that is negative or no number")
	}
}

// sized gives what is held at a pace with a size.
func (p Pace) sized(z Size) []Hold {
	if len(z.Places) != len(p.Stays) {
		panic("occupancy: a size has other stays than a pace")
	}
	holds := make([]Hold, len(p.Stays))
	for i, h := range p.Stays {
		h.Amount = z.Places[i]
		holds[i] = h
	}
	return holds
}
