package record

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Sight is what was seen of a clutch.
type Sight struct {
	Stage  string // a word of docs/file.md, or a Gosner stage in digits; may be empty when something was counted
	Some   bool   // only some of them were that far
	Count  collection.Given[int]
	Losses int
}

var digits = regexp.MustCompile(`^[0-9]{1,2}$`)

// Seen is a look at a clutch: the stage, a head-count, losses. An empty id is
// the only clutch that is running.
func (b *Book) Seen(on civil.Date, clutch string, s Sight) (Edit, error) {
	k, err := b.clutch(clutch, on)
	if err != nil {
		return Edit{}, err
	}
	e := Edit{Entry: Entry{Entry: collection.Entry{On: on, Clutch: k.ID, Some: s.Some, Count: s.Count, Losses: s.Losses}}}
	switch {
	case digits.MatchString(s.Stage):
		e.Entry.Gosner, _ = strconv.Atoi(s.Stage)
		if e.Entry.Gosner < 1 || e.Entry.Gosner > 46 {
			return Edit{}, refuse("Gosner stages go from 1 to 46", "there is no stage %s", s.Stage)
		}
	case s.Stage != "" && !slices.Contains(collection.Stages(), s.Stage):
		cure := strictyaml.DidYouMean(s.Stage, collection.Stages())
		return Edit{}, refuse(cmp.Or(cure, "write one of "+strings.Join(collection.Stages(), ", ")+", or a Gosner stage"), "there is no stage %q", s.Stage)
	case s.Stage != "":
		e.Entry.Saw = s.Stage
	case s.Some:
		return Edit{}, refuse("name the stage", "some of %s were that far, but how far is not said", k.ID)
	case !s.Count.Known && s.Losses == 0:
		return Edit{}, refuse("name the stage, or say how many were counted", "it is not said what was seen of %s", k.ID)
	}
	return e, nil
}

// IsStage reports whether a text is a word for a stage, or a Gosner stage in
// digits.
func IsStage(text string) bool {
	return digits.MatchString(text) || slices.Contains(collection.Stages(), text)
}
