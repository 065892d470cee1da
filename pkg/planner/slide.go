package planner

// slide is the least value in a window of days of which both ends only move on:
// the days that can still become the least, with rising values.
type slide struct {
	day   []int
	value []int64
	head  int
}

func (s *slide) clear() { s.day, s.value, s.head = s.day[:0], s.value[:0], 0 }

// add lets the window go on by a day.
func (s *slide) add(day int, value int64) {
	n := len(s.day)
	for n > s.head && s.value[n-1] >= value {
		n--
	}
	s.day, s.value = append(s.day[:n], day), append(s.value[:n], value)
}

// least gives the least value from a day on, never when there is none.
func (s *slide) least(from int) int64 {
	for s.head < len(s.day) && s.day[s.head] < from {
		s.head++
	}
	if s.head == len(s.day) {
		return never
	}
	return s.value[s.head]
}
