package collection

import (
	"cmp"
	"slices"
)

// diary finds the entries of a subject in order of date.
type diary struct {
	entries []*Entry       // grouped by subject, then by date
	first   []int          // of each subject, where its group begins; one more at the end
	places  map[string]int // place to subject
}

// DiaryOf gives the entries about an animal, a clutch or a pairing, by date;
// entries of one day keep the order of the file. The slice is shared.
func (c *Collection) DiaryOf(id string) []*Entry {
	s, ok := c.subjects[id]
	if !ok {
		return nil
	}
	return c.diary.of(c.number(s))
}

// DiaryAt gives the entries about a place, by date; entries of one day keep
// the order of the file. The slice is shared.
func (c *Collection) DiaryAt(place string) []*Entry {
	n, ok := c.diary.places[place]
	if !ok {
		return nil
	}
	return c.diary.of(n)
}

func (d *diary) of(n int) []*Entry {
	from, to := d.first[n], d.first[n+1]
	return d.entries[from:to:to]
}

// number counts all animals, clutches and pairings through.
func (c *Collection) number(s subject) int {
	switch s.kind {
	case clutchKind:
		return len(c.Animals) + s.index
	case pairingKind:
		return len(c.Animals) + len(c.Clutches) + s.index
	}
	return s.index
}

// sortDiary groups the entries by subject, each group by date, in time
// proportional to their number once they are in order of date. Entries whose
// subject is unknown are left out.
func (c *Collection) sortDiary() {
	byDate := make([]*Entry, len(c.Diary))
	for i := range c.Diary {
		byDate[i] = &c.Diary[i]
	}
	slices.SortStableFunc(byDate, func(a, b *Entry) int { return cmp.Compare(a.On, b.On) })

	d := &c.diary
	d.places = make(map[string]int)
	subjects := make([]int, len(byDate)) // of each entry, -1 for unknown
	count := len(c.Animals) + len(c.Clutches) + len(c.Pairings)
	for i, e := range byDate {
		subjects[i] = c.subjectOf(e, &count)
	}
	d.first = make([]int, count+1)
	known := 0
	for _, s := range subjects {
		if s >= 0 {
			d.first[s+1]++
			known++
		}
	}
	for s := range count {
		d.first[s+1] += d.first[s]
	}
	d.entries = make([]*Entry, known)
	next := slices.Clone(d.first)
	for i, s := range subjects {
		if s >= 0 {
			d.entries[next[s]] = byDate[i]
			next[s]++
		}
	}
}

// subjectOf numbers the subject of e; a new place takes the number *count and
// raises it.
func (c *Collection) subjectOf(e *Entry, count *int) int {
	if e.Place == "" {
		s, ok := c.subjects[e.Subject()]
		if !ok {
			return -1
		}
		return c.number(s)
	}
	n, ok := c.diary.places[e.Place]
	if !ok {
		n = *count
		c.diary.places[e.Place] = n
		*count++
	}
	return n
}
