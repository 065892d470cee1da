// Package occupancy says how likely a room is to run out of tubs, bins or other
// places, when it is not certain when each clutch needs them, nor how many.
//
// A [Season] has places and clutches. Of each clutch it has the ways in which it
// may go, its courses, each with a chance: at this pace, with so many young, it
// holds four tubs from this day to that one. One course has the beginning and
// the end of a stay together, so a slow clutch that hatches late also leaves
// late. Clutches know nothing of each other: one that is early says nothing
// about the next. A warm spring that hurries all of them is not in this model.
//
// # By day
//
// For clutch i, resource r and day d let q(i,r,d,n) be the sum of the chances of
// the courses that hold n of r on d; a chance that is missing to 1 holds nothing.
// Clutches are independent, so what all need together on that day has the
// convolution of these as its distribution:
//
//	Q(0)(0) = 1;  Q(i)(n) = sum over k of Q(i−1)(n−k) q(i,r,d,k)
//
// [Loads] does this for every day. It is exact but for rounding: no normal
// approximation and no random numbers.
//
// # By season
//
// The days of one season hang together: who is late today is late tomorrow. The
// chance that a resource runs out on any day therefore lies somewhere between the
// worst single day and the sum of all days, which is too wide to be of use.
// [Assess] plays many seasons, draws a course for every clutch and looks for the
// highest need of each. With k of n seasons short the chance is k/n, with the
// standard error of a share, √(p(1−p)/n).
//
// Season number s has random numbers of its own, from the seed and s, one for
// each clutch in order. So the result is the same for any number of workers, and
// what one more tub or a moved clutch would change is seen on the same seasons
// (common random numbers): the difference is far better known than the two
// chances are. How many more places would do is read from the highest needs that
// were kept, [Shortage.With] and [Shortage.More]; moved clutches are played by
// [TryMoves].
package occupancy

import "github.com/spawnwright/spawnwright/pkg/civil"

// Season is what a room has and what may come.
type Season struct {
	First     civil.Date // the first day that is looked at
	Days      int        // how many days; what is held on others does not count
	Resources []Resource
	Clutches  []Clutch
}

// Resource is something of which there are only so many: tubs, bins.
type Resource struct {
	Name  string
	Count int
}

// Clutch is a clutch that is there or may come.
type Clutch struct {
	ID string
	// Courses are the ways in which it may go. Their chances add up to at most
	// 1; for what is missing nothing is held: no eggs, or none that live.
	// [Courses] makes them of a clutch's pace and its size.
	Courses []Course
}

// Course is one way in which a clutch may go.
type Course struct {
	Chance float64
	Holds  []Hold
}

// Hold is places that are needed day after day. Holds of one course that overlap
// add up.
type Hold struct {
	Resource int        // place in Season.Resources
	First    civil.Date // the first day
	Last     civil.Date // the last day
	// Until keeps the places at least until this day, such as that of a show. It
	// stays where it is when the clutch is moved. 0 is no such day.
	Until  civil.Date
	Amount int // how many places
}

// days gives the days of h, counted from the first day of the season, when its
// clutch comes shift days later: from and, without, to. They lie within the season.
func (h Hold) days(s *Season, shift int) (from, to int) {
	last := max(h.Last.Add(shift), h.Until)
	from = max(h.First.Add(shift).Sub(s.First), 0)
	to = min(last.Sub(s.First)+1, s.Days)
	return from, max(from, to)
}
