package kin

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"github.com/spawnwright/spawnwright/pkg/parentage"
)

// suggestions is for how many unknown ids of a list a near one is looked for: each
// costs a look at all ids.
const suggestions = 3

// ReadLiving reads a list of animals, an id a line, and gives their numbers in the
// order of the list, each once. Blank lines do not count, nor blanks around an id;
// the text is UTF-8, with line ends of any system. An id that stands twice is a
// warning. The error is a *[parentage.Error] when an id is not known, with all of
// these, or when there is none at all; or that of r.
func (a *Ancestry) ReadLiving(r io.Reader) (living []int, warnings []parentage.Problem, err error) {
	text, err := io.ReadAll(r)
	if err != nil {
		return nil, nil, err
	}
	lines := strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(strings.TrimPrefix(string(text), "\uFEFF"))
	var bad parentage.Error
	listed := make(map[int]int) // line by number
	line := 0
	for text := range strings.SplitSeq(lines, "\n") {
		line++
		id := strings.TrimSpace(text)
		if id == "" {
			continue
		}
		at := parentage.Problem{Line: line, Column: 1}
		i, ok := a.Pedigree.Index(id)
		switch first := listed[i]; {
		case !ok:
			a.unlisted(&bad, at, id)
		case first > 0:
			at.Message, at.Cure = fmt.Sprintf("%q stands on line %d already and counts once", id, first), "remove one of them"
			warnings = append(warnings, at)
		default:
			listed[i] = line
			living = append(living, i)
		}
	}
	if len(bad.Problems) == 0 && len(living) == 0 {
		bad.Problems = []parentage.Problem{{Line: 1, Column: 1, Message: "the list is empty", Cure: "write the id of a living animal on each line"}}
	}
	if len(bad.Problems) > 0 {
		return nil, nil, &bad
	}
	return living, warnings[:min(len(warnings), parentage.Most)], nil
}

// unlisted notes an id of a list that no animal has.
func (a *Ancestry) unlisted(bad *parentage.Error, at parentage.Problem, id string) {
	if len(bad.Problems) == parentage.Most {
		bad.More++
		return
	}
	if len(id) > 60 || !utf8.ValidString(id) {
		id = strings.ToValidUTF8(id[:min(len(id), 60)], "?") + "..."
	}
	at.Message, at.Cure = fmt.Sprintf("there is no animal %q", id), "write one id of the table a line"
	if len(bad.Problems) < suggestions {
		if near := a.unknown(id).Nearest; near != "" {
			at.Cure = fmt.Sprintf("did you mean %q?", near)
		}
	}
	bad.Problems = append(bad.Problems, at)
}
