package pedigree

// order gives the new places with parents before children: as near to the order of
// the records as that allows, each group before the first of its young.
//
// It is a depth-first search upwards. The stack is a slice, so that a pedigree
// of many thousand generations is no danger, and holds the way from an animal
// up to its ancestors: meeting a place that is on it closes a loop.
func (l *links) order() ([]int, error) {
	type step struct {
		place int
		next  int // which of the places above comes next
	}
	const (
		untouched = iota
		open
		done
	)
	order := make([]int, 0, len(l.ids))
	state := make([]uint8, len(l.ids))
	var way []step
	for start := range l.ids {
		if state[start] != untouched {
			continue
		}
		state[start] = open
		way = append(way, step{place: start})
		for len(way) > 0 {
			top := &way[len(way)-1]
			above := l.above(top.place)
			if top.next == len(above) {
				state[top.place] = done
				order = append(order, top.place)
				way = way[:len(way)-1]
				continue
			}
			parent := above[top.next]
			top.next++
			if parent < 0 || state[parent] == done { // unknown, or there already
				continue
			}
			if state[parent] == open {
				var loop []int
				for i := len(way) - 1; i >= 0; i-- {
					loop = append(loop, way[i].place)
					if way[i].place == parent {
						break
					}
				}
				return nil, l.loopError(loop)
			}
			state[parent] = open
			way = append(way, step{place: parent})
		}
	}
	return order, nil
}

// loopError names a loop given as places from the last step up to the first.
func (l *links) loopError(loop []int) *LoopError {
	first := 0
	for i, place := range loop {
		if place < loop[first] {
			first = i
		}
	}
	e := &LoopError{}
	for i := range loop {
		place := loop[(first-i+len(loop))%len(loop)]
		e.Members = append(e.Members, l.ids[place])
	}
	return e
}
