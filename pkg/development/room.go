package development

import (
	"cmp"
	"math"
	"slices"
)

// What the book is worth against the keeper's own clutches, from memory: no
// study was found that compares rooms.
const (
	// bookClutches is how many clutches the length that the profile gives
	// counts as.
	bookClutches = 4

	// bookShape is half of how many clutches its spread counts as: the shape of
	// the inverse gamma distribution of the variance.
	bookShape = 6
)

// bookScale is its scale, chosen so that the prediction for a new clutch has its
// 10th and 90th percentile where the profile has them. It is a Student
// distribution with 2·bookShape degrees of freedom, and t90 its 90th percentile.
const (
	t90       = 1.3562173342
	bookScale = (z90 / t90) * (z90 / t90) * bookShape * bookClutches / (bookClutches + 1)
)

// farOutside is how many °C outside what is covered, on the mean, a step may
// have run for its length to be learned from.
const farOutside = 1

// A Room is what the keeper's own clutches of a species have taught of each
// step: how much slower or faster it goes there than the profile has it, and
// how much it differs from clutch to clutch. It never changes after it is made.
type Room struct {
	model *Model
	steps [len(links)]lesson
}

// lesson is what a room has taught of one step.
type lesson struct {
	lengths  []length // the clutches', in order
	grid     grid
	rooms    []room
	finished int // clutches that are through the step
	running  int // clutches that were seen not to be through it yet
}

// length is what a clutch tells of the length of a step: it lies between two
// standardised lengths, the upper of which may be infinite.
type length struct {
	from, to float64
	count    int // clutches that tell the same
}

// Learn gives what clutches have taught. All count, those that have finished
// and those that run: a step that was seen not to be over yet is longer than
// that, and leaving such clutches out would make the others look typical.
// Lengths are counted by the clock of the temperatures of each clutch; steps
// that ran for the most part at temperatures that nobody knows anything about
// are left out.
//
// The profile counts as 4 clutches. Each step is learned by itself, by a
// normal model of standardised ln days with a normal and inverse gamma prior,
// worked out on a grid. That a clutch that was slow in one step tends to be slow
// in others is not used for learning, only for looking ahead.
//
// The result belongs to m. Nothing is learned for other species: to have one
// species taught by another's clutches, give them here. It panics as
// [Model.Outlook] does. A thousand clutches cost about a tenth of a second.
func (m *Model) Learn(clutches []Clutch) *Room {
	r := &Room{model: m}
	for _, c := range clutches {
		for i, l := range m.lengths(c) {
			if l.count > 0 {
				r.steps[i].add(l)
			}
		}
	}
	for i := range r.steps {
		r.steps[i].settle(m.stalls[i])
	}
	return r
}

// Without gives r without what c has taught, for an outlook on c itself: it
// must not count twice. c has to be one of those that r was learned from,
// and as it was then; of another the result means nothing.
func (r *Room) Without(c Clutch) *Room {
	out := *r
	for i, l := range r.model.lengths(c) {
		if l.count > 0 {
			out.steps[i] = out.steps[i].without(l, r.model.stalls[i])
		}
	}
	return &out
}

// Clutches gives how many clutches have taught the length of the step that stage
// ends: those that are through it, and those that were seen not to be yet. They
// are 0 for Laid and for stages within a step.
func (r *Room) Clutches(stage Stage) (finished, running int) {
	stage.mustBeValid()
	i, ok := linkOf(stage)
	if !ok {
		return 0, 0
	}
	return r.steps[i].finished, r.steps[i].running
}

func (l *lesson) add(n length) {
	l.lengths = append(l.lengths, n)
	l.tell(n, 1)
}

func (l *lesson) tell(n length, by int) {
	if math.IsInf(n.to, 1) {
		l.running += by
	} else {
		l.finished += by
	}
}

// settle sorts the lengths, so that their order in the file does not matter, and
// works out what they say.
func (l *lesson) settle(stall float64) {
	slices.SortFunc(l.lengths, func(a, b length) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	together := l.lengths[:0]
	for _, n := range l.lengths {
		if k := len(together); k > 0 && together[k-1].from == n.from && together[k-1].to == n.to {
			together[k-1].count += n.count
			continue
		}
		together = append(together, n)
	}
	l.lengths = together
	if len(l.lengths) == 0 {
		l.rooms = book
		return
	}
	l.grid = newGrid(l.lengths, stall)
	l.rooms = l.grid.rooms()
}

// without takes one length out of a copy of l.
func (l lesson) without(n length, stall float64) lesson {
	l.tell(n, -1)
	if l.finished+l.running == 0 {
		l.rooms, l.lengths = book, nil
		return l
	}
	l.grid = l.grid.without(n, stall)
	l.rooms = l.grid.rooms()
	return l
}
