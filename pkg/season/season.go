// Package season says when each breeding cycle of a season runs, and where the
// cycles get in each other's way.
//
// A pairing goes through a chain of phases, such as conditioning, cooling,
// warm-up, rain and rest. Each has a least, a usual and a greatest length in
// days, and may hold a place while it lasts: a cooling place, a rain chamber.
// [Plan] takes the pairings, the room and today, and gives the dates of every
// phase:
//
//   - forward from the day on which the first phase begins, or
//   - backward from the day by which young must be sale-ready, with the rain as
//     late as that allows, and
//   - onward from what is recorded, which is never argued with.
//
// Hands-on work (moving animals from one phase into the next) is kept off the
// days on which nobody is in the room; phases run through them. Lengths depart
// from the usual ones as little as that needs, see [Plan].
//
// What does not work out is a [Conflict] with a reason and, where there is a
// sure one, a cure. There are dates even then, so that nothing is blank. What
// was not looked at stands in Season.Unchecked.
package season

import "github.com/spawnwright/spawnwright/pkg/civil"

// Names of the phases that matter to a plan; all other names are free.
const (
	// Rain is the phase from whose first day stages and ReadyAfter are counted.
	Rain = "rain"
	// Rest is the phase after the adults are taken out. In a chain without rain
	// the counting begins on its first day instead, and without either on the
	// day after the chain.
	Rest = "rest"
)

// Phase is one part of a breeding cycle.
type Phase struct {
	Name  string // unique in its chain, as in the diary: "conditioning", "cooling", "warm-up", "rain", "rest"
	Min   int    // least days, 0 or more; a phase of 0 days is passed over
	Usual int    // usual days, from Min to Max
	Max   int    // most days
	Place string // what it holds while it lasts, in the singular: "rain chamber"; empty when nothing that can run short
}

// Began is a fact from the diary: the phase began on that day.
type Began struct {
	Phase string
	On    civil.Date
}

// StageOffset is when young reach a stage, in days after the rain starts: 10th,
// 50th and 90th percentile.
type StageOffset struct {
	Stage               string
	Early, Likely, Late int
}

// Pairing is one cycle to be planned. Exactly one of Start and ReadyBy is known.
type Pairing struct {
	ID      string
	Animals []string // all that go in together; they are held from the first phase to the last
	Phases  []Phase  // in order

	Start      civil.Date // first day of the first phase
	ReadyBy    civil.Date // day by which young must be sale-ready
	Target     string     // what ReadyBy is for, such as "autumn show"; for messages, may be empty
	ReadyAfter int        // days from the start of the rain to sale-ready at the wished certainty
	// MayBeLate: where young cannot be ready in time the plan has them ready as
	// early as they can be, with a warning in place of a conflict.
	MayBeLate bool
	// NotBefore is the first day on which the first phase may begin; unknown:
	// today.
	NotBefore civil.Date

	Stages []StageOffset
	Began  []Began // in any order

	// Days are the first day of each phase and the day after the last, when
	// somebody else has planned the pairing. They are then the plan, whatever
	// the wishes and the records; places and animals are counted as ever.
	Days []civil.Date
}

// Capacity is how many of a place the room has.
type Capacity struct {
	Place string // as in Phase.Place
	Count int
	Known bool // false: not given, and so not checked
}

// Room is what all pairings share.
type Room struct {
	Capacity []Capacity   // a place that is not listed counts as not given
	Away     []civil.Span // nobody in the room; in any order, may overlap
}

// Season is the plan of all pairings.
type Season struct {
	Cycles    []Cycle    // one for each pairing, in the order given
	Conflicts []Conflict // by their first day, then by kind, then by pairing
	Unchecked []string   // what was not looked at, in words
}

// Cycle is the plan of one pairing.
type Cycle struct {
	Pairing   string
	Phases    []Dated
	RainStart civil.Date // day from which the stages are counted
	Stages    []StageWindow
	Warnings  []string // doubts about what is recorded
}

// Span gives the days from the first day of the first phase to the last day of
// the last: those on which the animals of the pairing are held.
func (c Cycle) Span() civil.Span {
	if len(c.Phases) == 0 {
		return civil.Span{}
	}
	return civil.Span{First: c.Phases[0].Span.First, Last: c.Phases[len(c.Phases)-1].Span.Last}
}

// Dated is a phase with its dates.
type Dated struct {
	Name  string
	Place string
	// Span has the days of the phase. A phase of 0 days has a Span that ends on
	// the day before it begins.
	Span civil.Span
	// LatestStart is the last day on which the phase can begin for the young to
	// be ready in time: with the shortest phases from there on, and hands-on
	// work off the days away. It is unknown for a forward plan, for phases
	// after the start of the rain, and for those that have begun.
	LatestStart civil.Date
	Recorded    bool // Span.First is from the diary
}

// StageWindow is when young of the pairing are expected to reach a stage.
type StageWindow struct {
	Stage  string
	Window civil.Window
}

// Kind says what a conflict is about.
type Kind string

// The kinds of conflict.
const (
	// TooLate: young cannot be ready by the wished day. Once the rain has begun,
	// that is a warning of the cycle.
	TooLate Kind = "too late"
	// Away: no lengths of the phases keep hands-on work off the days away.
	Away Kind = "days away"
	// PlaceFull: more pairings need a place than there are.
	PlaceFull Kind = "place full"
	// AnimalTwice: an animal is in two cycles at once.
	AnimalTwice Kind = "animal twice"
)

// Conflict is a reason why the plan does not work as it stands.
type Conflict struct {
	Kind     Kind
	Pairings []string // in the order given to Plan
	Phase    string   // Away: the phase that begins, or ends the chain, on a day away
	Place    string   // PlaceFull
	Animals  []string // AnimalTwice: those in both pairings
	// Days are those on which the conflict stands. Away: the days away that are
	// in the way. TooLate: the days that are missing, from the last day on
	// which the first phase could have begun to the day before it may; once a
	// phase has begun, from the day after the last one on which the rain could
	// have begun to the day on which it can.
	Days civil.Span
	// Capacity and Needed are for PlaceFull: how many there are, and how many
	// are needed on each of the days.
	Capacity, Needed int
	// Earliest is for TooLate and for Away in a backward plan: the earliest day
	// by which young can be ready at the wished certainty, with the shortest
	// phases. It is unknown with Away when there is no plan at all; a TooLate
	// beside that leaves the days away aside.
	Earliest civil.Date
	Message  string // one line, with the cure where a sure one was found
}

// Plan gives the dates of every pairing and what stands in their way. from is
// today.
//
// The lengths of the phases are those within their limits with the least total
// departure from the usual ones, in days, that keep hands-on work off the days
// away. Hands-on is the start of every phase after the first; also the start of
// the first one, and the end of the last one, if that is the rain or holds a
// place. Of plans with the same total, the later phases are nearest to their
// usual length, the last one first (so the earliest phase bears most), and of
// two lengths equally near the longer is taken.
//
// A backward plan has the rain on the last day that any lengths allow, and only
// then is the departure made least. It does not begin before from or NotBefore;
// a warning says so where that makes the phases shorter. A backward plan that has begun
// goes on with the least departure that is in time. Once its rain has begun nothing
// can be done about the day any more, and one that is missed is a warning.
//
// Where there is no such plan, a conflict says why, and the dates are those
// nearest to the usual lengths that ignore what is in the way.
//
// Phases that are recorded begin on their day, whatever the limits; earlier ones
// then count as over, with dates of the usual length where they are not
// recorded. A phase whose planned day has gone by without a record keeps that
// day, with a warning.
//
// Places and animals are counted from from on: what is over is no conflict. A
// place is free for the next pairing on the day on which the last one leaves it.
//
// Plan panics when from is unknown, and on pairings or capacities that no file
// reader should let through: an id that is empty or stands twice; Days that are
// not one for each phase and one more, in order; limits of a phase that are
// negative or out of order; a phase twice in a chain; both or none of Start and
// ReadyBy; a Start before NotBefore; negative or disordered offsets; a record without a
// date; a negative capacity, or one given twice. Dates are held to the range of
// civil.Date.
//
// The cost for each pairing grows with the number of spans away and with the
// square of the departure from the usual lengths, in days; not with the
// horizon. Places and animals cost a sort, plus the size of the conflicts, which
// in the worst case is the square of the number of pairings. It is meant for up
// to 1,000 pairings.
func Plan(room Room, pairings []Pairing, from civil.Date) Season {
	validate(room, pairings, from)
	return newYard(room, pairings, from).season()
}
