package development

import (
	"fmt"
	"math"
	"slices"

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
	known    [len(links)]bool // the profile says how long the step takes
	survival [len(links)]species.Number
	deaths   [len(links)]deaths
	shapes   [len(links)]twoPiece // standardised, of the known steps
	warmths  [len(links)]warmth
	stalls   [len(links)]float64
	courses  [len(midways)]course
	siblings float64
	safe     species.Range
	litres   species.Number // tadpoles in a litre
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
	m := &Model{siblings: usualSiblings, safe: p.Safe, litres: p.TadpolesPerLitre}
	var err error
	if m.courses, err = coursesOf(p); err != nil {
		return nil, err
	}
	for i, l := range links {
		m.deaths[i] = newDeaths(species.Number{})
		step, ok := p.Step(l.step)
		if !ok {
			continue
		}
		m.survival[i], m.deaths[i] = step.Survival, newDeaths(step.Survival)
		m.warmths[i] = newWarmth(step)
		m.stalls[i] = usualStall(l.step)
		if step.Stall.Known() {
			m.stalls[i] = step.Stall.Value
		}
		if l.step == species.Tadpole && step.Siblings.Known() {
			m.siblings = step.Siblings.Value
		}
		if !step.Days.Known() {
			continue
		}
		if _, err := FromPercentiles(step.Days.P10, step.Days.P50, step.Days.P90); err != nil {
			return nil, &StepError{p.ID, l.step, err}
		}
		m.known[i] = true
		m.shapes[i] = newTwoPiece(step.Days.P10, step.Days.P50, step.Days.P90).standardised()
	}
	return m, nil
}

// usualStall is the chance that a clutch never gets through a step, where the
// profile does not say. Tadpoles stop for want of food or warmth: Limnodynastes
// peronii that were fed irregularly did not reach metamorphosis while a trial
// ran (PMC4778449). That it is 2 clutches of 100 is from memory.
func usualStall(name species.StepName) float64 {
	if name == species.Tadpole {
		return 0.02
	}
	return 0
}

// Stall gives the chance that a clutch which comes to one of these steps stops for good
// in one of them: of all steps, when none is named.
func (m *Model) Stall(steps ...species.StepName) float64 {
	goes := 1.0
	for i, l := range links {
		if len(steps) == 0 || slices.Contains(steps, l.step) {
			goes *= 1 - m.stalls[i]
		}
	}
	return 1 - goes
}

// SiblingSpread gives how far the siblings of a clutch spread about the half of them: a
// standard deviation, as a share of the days since laying. See [Outlook.Siblings].
func (m *Model) SiblingSpread() float64 { return m.siblings }

// usualSiblings is the spread of siblings where the profile does not say: a
// standard deviation of 8 % of the time since laying. Polypedates otilophus
// left the water on days 74 to 84 (Tapley & Girgin 2015, Herpetological Bulletin
// 132:5-8), which is 3 %; Ceratophrys stolzmanni on days 20 to 32 (Ortiz et al.
// 2013, International Zoo Yearbook 47:151-162), which is 10 %; one clutch of
// Agalychnis callidryas in a zoo over a time that is twice as long at the end as
// at the begin (keeper article: Detroit Zoo), which is 19 %. The choice is from
// memory.
const usualSiblings = 0.08

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

// Froglets gives how many sale-ready froglets a middle clutch of so many eggs usually
// brings, in whole ones; 0 when the eggs or a share are not known.
func (m *Model) Froglets(eggs species.Percentiles) int {
	share, ok := m.Survival(Laid, SaleReady)
	if !ok || !eggs.Known() {
		return 0
	}
	return int(math.Floor(eggs.P50*share + 1e-9)) // 30 of 40 stay 30 after rounding
}
