package rearing

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// A Doubt is what is odd about a clutch, at the line of the file that says so.
type Doubt struct {
	At   strictyaml.Position
	Text string
}

// doubts puts the warnings of an outlook at their lines: of a look, of a measured
// temperature, and of anything else that of the clutch.
func (k developing) doubts(c *collection.Clutch, warnings []development.Warning) []Doubt {
	var all []Doubt
	for _, w := range warnings {
		d := Doubt{c.At, "clutch " + c.ID + ": " + w.Text}
		switch {
		case len(w.Looks) > 0:
			d.At = k.looksAt[w.Looks[0]]
			if len(w.Looks) > 1 {
				d.Text += fmt.Sprintf(" (see line %d)", k.looksAt[w.Looks[1]].Line)
			}
		case w.Reading.From.Known():
			if at, ok := k.measuredAt(w.Reading); ok {
				d.At = at
			}
		}
		all = append(all, d)
	}
	return all
}

// measuredAt gives the line of a measured temperature; ok is false for one that is
// a set-point.
func (k developing) measuredAt(r development.Reading) (_ strictyaml.Position, ok bool) {
	for _, t := range k.spelled {
		if t.On == r.From && (t.WaterC.Known && t.WaterC.Value == r.C || t.AirC.Known && t.AirC.Value == r.C) {
			return t.At, true
		}
	}
	return strictyaml.Position{}, false
}

// located gives a doubt as one line that begins with its place in the file.
func (r *Rearing) located(d Doubt) string {
	f := r.Collection.Diagnostic(strictyaml.Warning, d.At, d.Text, "")
	return fmt.Sprintf("%s:%d:%d: %s", f.File, f.Line, f.Column, f.Message)
}
