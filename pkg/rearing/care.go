package rearing

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/internal/figures"
)

// Care is something to do for a clutch on a day of its own, before a stage or
// after it.
type Care struct {
	development.Care
	On   civil.Date
	Over bool // the stage has come, or some are past it, or nobody is alive
}

// Cares gives what there is to do for a clutch by hand, in the order of the days.
// What is to be done once a stage has come is told with the stage; see
// [StageNote]. Work that falls on days away is done before them, or after them
// when it is for after a stage.
func (t Tended) Cares(away []civil.Span) []Care {
	ahead := make(map[string]bool)
	for _, s := range t.Stages {
		ahead[s.Stage] = s.Ahead()
	}
	now, _ := development.ParseStage(t.Now)
	var all []Care
	for _, c := range t.Outlook.Care() {
		if c.LeadDays == 0 {
			continue
		}
		over := t.Died() || c.LeadDays > 0 && (!ahead[c.Stage.String()] || c.Stage < now)
		on := max(c.On, t.Since)
		for _, days := range away { // in order, and they may touch
			if days.Contains(on) && c.LeadDays < 0 {
				on = days.Last.Add(1)
			}
		}
		for _, days := range slices.Backward(away) {
			if days.Contains(on) {
				on = max(days.First.Add(-1), t.Since)
			}
		}
		all = append(all, Care{c.Care, on, over})
	}
	return all
}

// stageCares gives what a clutch needs at the stage that it is at until the next, and
// what it needs from the stages on that may come within a span. What is for the first
// of the span stands there also when the stage is late.
func (t Tended) stageCares(days civil.Span) []Due {
	if t.Died() {
		return []Due{}
	}
	now, _ := development.ParseStage(t.Now)
	var current *Due
	ahead := []Due{}
	for _, c := range development.Cares() {
		if c.LeadDays != 0 || c.Stage <= now && now >= development.OutOfWater {
			continue // on land each care has a day of its own
		}
		due := Due{On: days.First, Stage: c.Stage.String(), What: c.What, Source: c.Source}
		if c.Stage <= now {
			due.Now, current = true, &due
			continue
		}
		e, _ := t.Outlook.Event(c.Stage)
		if w := e.Window; w.Known() && w.Early <= days.Last {
			due.ByNow, due.On = w.Early < days.First, w.Early
			ahead = append(ahead, due)
		}
	}
	if current != nil {
		return append([]Due{*current}, ahead...)
	}
	return ahead
}

// sizeOfPrey adds to a care about food how long it may be: by the length of the smallest
// froglet, in mm, or by the profile where none was measured (0).
func (r *Rearing) sizeOfPrey(due *Due, kind string, froglet float64) {
	feeder := r.Collection.MustProfile(kind).Food.Froglet.FeederMM
	switch {
	case froglet > 0:
		small, large := development.PreyLength(froglet)
		due.What += fmt.Sprintf("; prey of %.1f to %.1f mm for one of %g mm", small, large, figures.Rounded(froglet))
	case feeder.Known() && feeder.Low < feeder.High:
		due.What += fmt.Sprintf("; prey of %g to %g mm until one is measured", feeder.Low, feeder.High)
		due.Source += "; the mm " + feeder.Source
	}
}

// Title gives what is to be done in a few words, see [Care.Detail].
func (c Care) Title() string {
	title, _, _ := strings.Cut(c.What, ": ")
	return title
}

// Detail gives the rest of it with its source, a sentence.
func (c Care) Detail() string {
	_, rest, more := strings.Cut(c.What, ": ")
	if !more {
		return sentence(c.Source)
	}
	return sentence(rest + " (" + c.Source + ")")
}

// Key names a care by its stage and its distance from it. The way out of the
// water has always been called a ramp in calendars.
func (c Care) Key() string {
	switch {
	case c.Stage == development.FrontLegs:
		return "ramp"
	case c.LeadDays < 0:
		return fmt.Sprintf("care/%s/%d after", c.Stage, -c.LeadDays)
	}
	return fmt.Sprintf("care/%s/%d before", c.Stage, c.LeadDays)
}

// stageNotes say for each stage what to do once it has come, and with that of
// hatching what the eggs need until then.
var stageNotes = func() map[string]string {
	notes := map[string]string{
		development.SaleReady.String(): "The window says when most can be old enough. Only those leave that were seen eating and are large enough; very small ones die on the way (common practice, no source).",
	}
	for _, c := range development.Cares() {
		if c.LeadDays != 0 {
			continue
		}
		stage, text := c.Stage, c.What+" ("+c.Source+")"
		if stage == development.Laid {
			stage, text = development.Hatched, "until then "+text
		}
		if before := notes[stage.String()]; before != "" {
			text = before + " " + sentence(text)
		}
		notes[stage.String()] = sentence(text)
	}
	return notes
}()

// StageNote says what a stage asks of the keeper; nothing where that is told on
// a day of its own.
func StageNote(stage string) string { return stageNotes[stage] }

// sentence gives text a capital and a full stop.
func sentence(text string) string {
	return strings.ToUpper(text[:1]) + strings.TrimSuffix(text[1:], ".") + "."
}
