package development

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// link is a step of the chain: the event that ends it and the name that a
// profile has for it. It begins with the end of the one before, the first with
// Laid.
type link struct {
	end  Stage
	step species.StepName
}

var links = [...]link{
	{Hatched, species.Egg},
	{Feeding, species.Hatchling},
	{FrontLegs, species.Tadpole},
	{OutOfWater, species.Metamorph},
	{SaleReady, species.GrowOut},
}

// Model is the chain of development steps of one species. It never changes
// after it is made.
type Model struct {
	steps    [len(links)]Distribution // unknown where the profile says nothing
	until    [len(links)]Distribution // from laid to the end of each step
	survival [len(links)]species.Number
}

// StepError says which step of a profile makes no distribution. It is what
// [NewModel] returns.
type StepError struct {
	Species string // id of the profile
	Step    species.StepName
	Err     error // a *PercentilesError
}

func (e *StepError) Error() string {
	return fmt.Sprintf("%s: step %s: %v", e.Species, e.Step, e.Err)
}

func (e *StepError) Unwrap() error { return e.Err }

// NewModel makes the model of a profile. A step that the profile does not know
// leaves the events after it without a forecast, until one of them is recorded.
// Errors are *[StepError]. It panics when p is nil.
func NewModel(p *species.Profile) (*Model, error) {
	m := new(Model)
	for i, l := range links {
		step, ok := p.Step(l.step)
		if !ok {
			continue
		}
		m.survival[i] = step.Survival
		if !step.Days.Known() {
			continue
		}
		d, err := FromPercentiles(step.Days.P10, step.Days.P50, step.Days.P90)
		if err != nil {
			return nil, &StepError{p.ID, l.step, err}
		}
		m.steps[i] = d
	}
	m.chain()
	return m, nil
}

// chain fills in until.
func (m *Model) chain() {
	sum := Point(0)
	for i, step := range m.steps {
		if !step.Known() {
			return
		}
		sum = sum.Plus(step)
		m.until[i] = sum
	}
}

// linkOf gives the place of the step that s ends; ok is false for Laid, and
// for stages within a step.
func linkOf(s Stage) (_ int, ok bool) {
	for i, l := range links {
		if l.end == s {
			return i, true
		}
	}
	return 0, false
}

// Until gives the days from laid to s before anything was seen. It is unknown
// when the profile lacks a step on the way, and for the stages within a step
// (HindLegs, Toes, Eating), which no profile has lengths for.
// It panics when s is none of the stages.
func (m *Model) Until(s Stage) Distribution {
	s.mustBeValid()
	if s == Laid {
		return Point(0)
	}
	if i, ok := linkOf(s); ok {
		return m.until[i]
	}
	return Distribution{}
}

// Survival gives the usual share, 0 to 1, of those alive at from that live to
// reach to: the product of the shares of the steps between. ok is false when
// one of them is not known, when from or to lies within a step, and when from
// comes after to. It panics when one is none of the stages.
func (m *Model) Survival(from, to Stage) (share float64, ok bool) {
	from.mustBeValid()
	to.mustBeValid()
	first, known := linkOf(from)
	first++
	if from == Laid {
		first, known = 0, true
	}
	last, known2 := linkOf(to)
	if to == Laid {
		last, known2 = -1, true
	}
	if !known || !known2 || first > last+1 {
		return 0, false
	}
	share = 1
	for _, s := range m.survival[first : last+1] {
		if !s.Known() {
			return 0, false
		}
		share *= s.Value
	}
	return share, true
}
