package timetable

import (
	"slices"

	"github.com/spawnwright/spawnwright/pkg/planner"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// mostDays is how far ahead pairings are moved against each other.
const mostDays = 1500

// leaveOut takes out the pairings that may be left out and cannot be as they are
// wished even when they are alone.
func (f *fitting) leaveOut() (ids []string, why []LeftOut) {
	var rest []Pairing
	stuck := f.stuck()
	for _, p := range f.inputs {
		if stuck[p.ID] && p.LeaveOut > 0 && len(p.Began) == 0 {
			ids = append(ids, p.ID)
		} else {
			rest = append(rest, p)
		}
	}
	if len(ids) > 0 {
		why = f.whyStuck(ids)
		f.inputs = rest
		f.alone = season.Plan(f.Room.Room, f.seasons(rest), f.on)
	}
	return ids, why
}

// stuck are the pairings that cannot be as they are wished when they are alone.
func (f *fitting) stuck() map[string]bool {
	stuck := make(map[string]bool)
	for _, c := range f.alone.Conflicts {
		if c.Kind == season.TooLate || c.Kind == season.Away {
			stuck[c.Pairings[0]] = true
		}
	}
	return stuck
}

// choose finds the pairings that may be moved: those whose rain has not begun,
// that are neither overdue nor far ahead, and that can be as they are wished when
// they are alone.
func (f *fitting) choose() {
	stuck := f.stuck()
	for i, p := range f.inputs {
		if stuck[p.ID] || !f.movable(i) {
			f.kept = append(f.kept, p.ID)
			continue
		}
		f.free = append(f.free, i)
	}
}

func (f *fitting) movable(i int) bool {
	c := f.alone.Cycles[i]
	from := anchor(f.inputs[i].Pairing)
	if from == planner.End || c.Span().Last.Sub(f.on) > mostDays {
		return false
	}
	begun := f.begun(i)
	for k, ph := range c.Phases {
		if k > begun && ph.Span.First < f.on || ph.Name == from && k <= begun {
			return false
		}
	}
	return true
}

// begun gives the latest phase of a pairing that is recorded, -1 for none.
func (f *fitting) begun(i int) int {
	for k, ph := range slices.Backward(f.alone.Cycles[i].Phases) {
		if ph.Recorded {
			return k
		}
	}
	return -1
}

// skipped gives how many phases of a pairing are over, and no part of its chain.
func (f *fitting) skipped(i int) int { return max(f.begun(i), 0) }

// anchor gives the phase from which the young are counted.
func anchor(p season.Pairing) string {
	for _, name := range []string{season.Rain, season.Rest} {
		if slices.ContainsFunc(p.Phases, func(ph season.Phase) bool { return ph.Name == name }) {
			return name
		}
	}
	return planner.End
}
