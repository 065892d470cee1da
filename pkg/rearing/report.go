package rearing

import (
	"cmp"
	"math"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/figures"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Report is all that can be told of one clutch.
type Report struct {
	Clutch
	On civil.Date `json:"on"`
	// Water and Air are the temperatures that the windows go by: what the tubs
	// are set to and what was measured, each from a day until the next. The
	// profile has its own where there are none.
	Water []Warmth `json:"water"`
	Air   []Warmth `json:"air"`
	// Lacks is the first step of development ahead for which the profile has no days,
	// so that what comes behind it has no dates; empty when all have some.
	Lacks species.StepName `json:"lacks,omitempty"`
	// Siblings are the first, the half and the last of the clutch to reach those
	// of the later stages that not all have been at for long. SiblingsOf is for how
	// many that is worked out, as many as may live until then. There are none when
	// nobody knows how many.
	Siblings   []SiblingDates `json:"siblings"`
	SiblingsOf int            `json:"siblings_of"`
	// Heads is how many there will be, a week apart from the day of the report
	// on, and Uncounted why there are none, such as that nothing was counted.
	Heads     []WeekHeads `json:"heads"`
	Uncounted string      `json:"uncounted,omitempty"`
	// Due is what to do by then and in the 14 days from then on.
	Due  []Due  `json:"due"`
	Sale Leaves `json:"sale"`
	// Distribution is the chance of each day for each stage.
	Distribution []StageDays `json:"distribution,omitempty"`
}

// Warmth is a temperature from a day on, °C.
type Warmth struct {
	From civil.Date `json:"from"`
	C    float64    `json:"c"`
}

func warmth(t development.Temperatures) []Warmth {
	out := []Warmth{}
	for _, r := range t {
		out = append(out, Warmth{r.From, figures.Rounded(r.C)})
	}
	return out
}

// SiblingDates is when the first, the half and the last of a clutch reach a stage.
type SiblingDates struct {
	Stage string       `json:"stage"`
	First civil.Window `json:"first"`
	Half  civil.Window `json:"half"`
	Last  civil.Window `json:"last"`
}

// Due is something to do for a clutch.
type Due struct {
	On     civil.Date `json:"on"`
	Now    bool       `json:"now"`    // the clutch is at the stage, and needs it every day
	ByNow  bool       `json:"by_now"` // its day has passed, and the stage is still ahead
	Stage  string     `json:"stage"`
	Lead   int        `json:"lead_days"` // days before the stage; below 0 after it, 0 with it
	What   string     `json:"what"`
	Source string     `json:"source"`
}

// StageDays is the chance of each day from the first on that a stage is reached.
type StageDays struct {
	Stage   string     `json:"stage"`
	First   civil.Date `json:"first"`
	Chances []float64  `json:"chances"`
}

// dueDays is how far a report looks ahead.
const dueDays = 14

// Report gives the report of a clutch, also when it has ended. The error is
// a *[collection.UnknownError].
func (r *Rearing) Report(id string, on civil.Date) (Report, error) {
	c, err := r.find(id)
	if err != nil {
		return Report{}, err
	}
	k := r.clutch(c, on)
	out := Report{Clutch: r.Told(k)[0], On: on, Water: warmth(k.known.Water), Air: warmth(k.known.Air), Siblings: []SiblingDates{}, Due: []Due{}, Sale: r.Leaves(c, on)}
	out.Lacks = k.lacks(r.Collection.MustProfile(c.Species))
	r.heads(&out, c, k)
	if out.SiblingsOf > 0 {
		for _, s := range k.Outlook.Siblings(out.SiblingsOf) {
			if s.Last.Late >= on {
				out.Siblings = append(out.Siblings, SiblingDates{s.Stage.String(), s.First, s.Half, s.Last})
			}
		}
	}
	days := civil.Span{First: on, Last: on.Add(dueDays - 1)}
	out.Due = k.stageCares(days)
	for _, c := range k.Cares(r.Collection.Away) {
		byNow := c.LeadDays > 0 && c.On < on
		if !c.Over && (byNow || days.Contains(c.On)) {
			out.Due = append(out.Due, Due{c.On, false, byNow, c.Stage.String(), c.LeadDays, c.What, c.Source})
			if due := &out.Due[len(out.Due)-1]; c.Stage == development.OutOfWater && c.LeadDays < 0 {
				r.sizeOfPrey(due, out.Species, out.Sale.LengthMM)
			}
		}
	}
	slices.SortStableFunc(out.Due, func(a, b Due) int {
		switch {
		case a.Now:
			return -1
		case b.Now:
			return 1
		}
		return cmp.Compare(a.On, b.On)
	})
	for _, e := range k.Outlook.All() {
		if e.Dist.Known() && !e.Recorded {
			out.Distribution = append(out.Distribution, chances(k.Outlook.From, e))
		}
	}
	return out, nil
}

// steps are those that end with the events of an outlook, in its order.
var steps = [...]species.StepName{species.Egg, species.Hatchling, species.Tadpole, species.Metamorph, species.GrowOut}

// lacks gives the first step whose end has no date for want of days.
func (k Tended) lacks(p *species.Profile) species.StepName {
	for i, name := range steps {
		if step, known := p.Step(name); !k.Outlook.Events[i].Window.Known() && !(known && step.Days.Known()) {
			return name
		}
	}
	return ""
}

func (r *Rearing) find(id string) (*collection.Clutch, error) {
	c, ok := r.Collection.Clutch(id)
	if !ok {
		return nil, r.Collection.Unknown("clutch", id)
	}
	return c, nil
}

// chances writes out a distribution, to a millionth and without ends that are
// less than that.
func chances(from civil.Date, e development.Event) StageDays {
	first, last := e.Dist.Quantile(1e-6), e.Dist.Quantile(1-1e-6)
	out := StageDays{Stage: e.Stage.String(), First: from.Add(first)}
	for day := first; day <= last; day++ {
		out.Chances = append(out.Chances, math.Round(e.Dist.Mass(day)*1e6)/1e6)
	}
	return out
}
