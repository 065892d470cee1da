package development

import (
	"reflect"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Ends are those of the whole outlook to the last bit, warnings too, whatever was seen.
func TestEndsAreThoseOfTheOutlook(t *testing.T) {
	m := builtin(t, "ceratophrys-cranwelli")
	rapid.Check(t, func(t *rapid.T) {
		c := anyClutch(t)
		var r *Room
		if rapid.Bool().Draw(t, "room") {
			r = m.Learn([]Clutch{anyClutch(t)})
		}
		whole := m.Outlook(c, r)
		for i := range whole.Within {
			if e := &whole.Within[i]; !e.Recorded {
				*e = Event{Stage: e.Stage}
			}
		}
		ends := m.Ends(c, r)
		whole.model, ends.model = nil, nil
		all := cmp.Exporter(func(reflect.Type) bool { return true })
		if diff := cmp.Diff(whole, ends, all); diff != "" {
			t.Fatal(diff)
		}
	})
}
