package occupancy

// deck has what a season is played with: for each clutch the odds of its courses,
// and what each course does to the loads.
type deck struct {
	odds  [][]float64 // [clutch][course]: the chance of this course or one before it
	rises [][][]rise  // [clutch][course]
}

// rise is by how much the load of a resource is higher on a day than on the day
// before.
type rise struct {
	resource, day int
	by            int32
}

func newDeck(s *Season) *deck {
	d := new(deck)
	for _, c := range s.Clutches {
		sum := 0.0
		odds := make([]float64, len(c.Courses))
		for i, course := range c.Courses {
			sum += course.Chance
			odds[i] = sum
		}
		d.odds = append(d.odds, odds)
		d.rises = append(d.rises, s.risesOf(c, 0))
	}
	return d
}

// risesOf gives what the courses of c do when it comes shift days later.
func (s *Season) risesOf(c Clutch, shift int) [][]rise {
	all := make([][]rise, len(c.Courses))
	for i, course := range c.Courses {
		for _, h := range course.Holds {
			if from, to := h.days(s, shift); from < to && h.Amount > 0 {
				all[i] = append(all[i], rise{h.Resource, from, int32(h.Amount)}, rise{h.Resource, to, -int32(h.Amount)})
			}
		}
	}
	return all
}
