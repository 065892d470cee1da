package collection

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// gosnerOf gives for each word of stages the Gosner (1960) stages in which a
// keeper may say it. They are wide, for species differ: leaf frogs hatch late,
// and froglets climb out with a tail (limits of the stages from memory of the
// table; the margins are ours).
var gosnerOf = [...]struct{ low, high int }{
	{15, 30}, // hatched
	{21, 30}, // feeding
	{26, 41}, // hind-legs
	{31, 41}, // toes
	{42, 45}, // front-legs
	{42, 46}, // out-of-water
	{46, 46}, // eating
	{46, 46}, // sale-ready
}

// sight is what an entry saw: the place of the word in stages, -1 for a Gosner
// stage, and the lowest and highest Gosner stage that it can be.
type sight struct {
	entry     *Entry
	word      int
	low, high int
}

func sightOf(e *Entry) (sight, bool) {
	if e.Gosner > 0 {
		return sight{e, -1, e.Gosner, e.Gosner}, true
	}
	i := slices.Index(stages, e.Saw)
	if i < 0 {
		return sight{}, false
	}
	return sight{e, i, gosnerOf[i].low, gosnerOf[i].high}, true
}

func (s sight) String() string {
	if s.word < 0 {
		return fmt.Sprintf("Gosner %d", s.entry.Gosner)
	}
	return s.entry.Saw
}

// key gives the key that the entry saw it with.
func (s sight) key() string {
	if s.word < 0 {
		return "gosner"
	}
	return "saw"
}

// beyond reports whether s is a later stage than t for certain.
func (s sight) beyond(t sight) bool {
	if s.word >= 0 && t.word >= 0 {
		return s.word > t.word
	}
	return s.low > t.high
}

// checkStages warns about a clutch that is seen at a stage after all of it was
// seen at a later one. Which of the two is wrong is not known here. Entries of one day are not compared with each other.
func (r *reader) checkStages(s subject) {
	var words, gosner sight // the farthest of all days before the one at hand
	var today []sight
	var day civil.Date
	settle := func() {
		for _, t := range today {
			farthest := &words
			if t.word < 0 {
				farthest = &gosner
			}
			if !t.entry.Some && (farthest.entry == nil || t.beyond(*farthest)) {
				*farthest = t
			}
		}
		today = today[:0]
	}
	for _, e := range r.c.lived(r.c.Clutches[s.index].ID) {
		now, ok := sightOf(e)
		if !ok {
			continue
		}
		if e.On != day {
			settle()
			day = e.On
		}
		today = append(today, now)
		for _, then := range [...]sight{words, gosner} {
			if then.entry != nil && then.beyond(now) {
				r.warnAt(r.in(e, now.key()), fmt.Sprintf("%s is seen at %v on %s, after it was seen at %v on %s (line %s)",
					r.called(s), now, e.On, then, then.entry.On, line(then.entry.At)),
					"check the dates and the stages; some: true says that only some were that far")
				break
			}
		}
	}
}
