package rearing

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// Clutch is how far a clutch has come and when it reaches what is ahead.
type Clutch struct {
	ID      string `json:"id"`
	Species string `json:"species"`
	// Laid is not known of a clutch that was not seen being laid; LaidBetween is
	// then when that may have been.
	Laid        civil.Date   `json:"laid,omitempty"`
	LaidBetween civil.Window `json:"laid_between,omitzero"`
	Dams        []string     `json:"dams"` // the possible dams; none when she is not known
	Sires       []string     `json:"sires"`
	Place       string       `json:"place,omitempty"`
	// Now is the last stage that was seen, "laid" when none was.
	Now string `json:"now"`
	// SeenOn is the day of the last look, that of laying when there was none.
	SeenOn civil.Date `json:"seen_on"`
	// Living is the last count of the whole clutch less the losses since, and those
	// that were sold or held back; nil when it was never counted.
	Living *int    `json:"living,omitempty"`
	Stages []Stage `json:"stages"`
	// Stall is the chance, 0 to 1, that it has stopped growing, or will.
	Stall float64   `json:"stall"`
	Young kin.Young `json:"young"`
	// Warnings are doubts about the windows, each with its place in the file, and
	// what is not safe now.
	Warnings []string `json:"warnings,omitempty"`
}

// Stage is when a clutch reaches a stage.
type Stage struct {
	Stage    string       `json:"stage"`
	Window   civil.Window `json:"window"`
	Recorded bool         `json:"recorded"` // seen, not forecast
	Some     bool         `json:"some"`     // some were seen to be there; the window is that of half of them
	Passed   bool         `json:"passed"`   // not seen to begin, but over by the last look
	Overdue  bool         `json:"overdue"`  // the window is over and nothing was recorded; not of stages within a step
	RestsOn  RestsOn      `json:"rests_on"`
}

// RestsOn is what a date rests on.
type RestsOn struct {
	Looks    int     `json:"looks"`    // at the clutch itself
	Finished int     `json:"finished"` // other clutches of the room that are through the step that counts most
	Running  int     `json:"running"`  // others that were seen not to be through it yet
	Book     float64 `json:"book"`     // clutches that the profile counts as
	Words    string  `json:"words"`    // the same in words
}

// RestingOn gives what a date rests on that was worked out.
func RestingOn(b development.Basis) RestsOn {
	return RestsOn{b.Looks, b.Finished, b.Running, b.Book, b.String()}
}

// Ahead reports whether a stage is still to come.
func (s Stage) Ahead() bool { return !s.Recorded && !s.Passed }

// Clutches gives all clutches that were laid by a day and have not ended by
// then, in the order of the file. Only what the diary says up to that day counts.
//
// A date is that by which half of a clutch is there. It follows the temperature
// by day, all looks at the clutch, and what the other clutches of the species in
// this file have taught; see [development.Model.Outlook].
func (r *Rearing) Clutches(on civil.Date) []Clutch { return r.Told(r.Tended(on)...) }

// Running reports whether a clutch was laid, or seen, by a day and has not ended by then.
func (r *Rearing) Running(c *collection.Clutch, on civil.Date) bool {
	return r.begun(c, on) && !(c.Ended.Known() && c.Ended <= on)
}

// Clutch gives one clutch, also when it has ended. The error is a
// *[collection.UnknownError].
func (r *Rearing) Clutch(id string, on civil.Date) (Clutch, error) {
	c, err := r.find(id)
	if err != nil {
		return Clutch{}, err
	}
	return r.Told(r.clutch(c, on))[0], nil
}

// Died reports whether a count, or the losses since, left none alive.
func (c Clutch) Died() bool { return c.Living != nil && *c.Living == 0 }

// copied gives a copy that is a list also when there is none.
func copied(ids []string) []string { return append([]string{}, ids...) }

// Counted gives the last count of a whole clutch up to a day, less the losses and those
// that are gone since; nil when it was never counted.
func (r *Rearing) Counted(clutch string, on civil.Date) *int {
	var living *int
	for _, c := range r.Collection.Counts(clutch) {
		if c.On > on {
			continue
		}
		if c.Living.Known && !c.Some {
			n := c.Living.Value
			living = &n
		} else if living != nil {
			*living = max(*living-c.Gone(), 0)
		}
	}
	return living
}
