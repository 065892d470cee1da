package collection

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// maxGuesses is how many wrong ids are compared with all ids. A file with more
// of them has been cut or mixed up, and guessing would take long and not help.
const maxGuesses = 20

// claim takes the id of a record and enters it.
func (r *reader) claim(m *strictyaml.Mapping, s subject) (string, strictyaml.Position) {
	id, n := r.id(m)
	at := strictyaml.PositionOf(n)
	if id == "" {
		return "", at
	}
	if first, taken := r.c.subjects[id]; taken {
		r.errorAt(at, fmt.Sprintf("id %q is taken by %s in line %s", id, first.kind.name(), line(r.place(first))), "give one of them another id")
		return id, at
	}
	r.c.subjects[id] = s
	if look := lookOf(id); r.looks[look] == "" {
		r.looks[look] = id
	} else {
		r.warnAt(at, fmt.Sprintf("id %q looks like %q, and is another one", id, r.looks[look]), "give one of them another id, unless they are meant to differ so little")
	}
	return id, at
}

// lookOf gives what an id looks like at a glance: without regard to case, to the
// kind of blanks, and to joiners.
func lookOf(id string) string {
	return strings.Map(func(c rune) rune {
		switch {
		case c == '\u200c' || c == '\u200d':
			return -1
		case unicode.IsSpace(c):
			return ' '
		}
		return unicode.ToLower(c)
	}, id)
}

// place gives where the id of a record stands.
func (r *reader) place(s subject) strictyaml.Position {
	switch s.kind {
	case animalKind:
		return r.c.Animals[s.index].At
	case clutchKind:
		return r.c.Clutches[s.index].At
	}
	return r.c.Pairings[s.index].At
}

// called names a record in a message.
func (r *reader) called(s subject) string {
	switch s.kind {
	case animalKind:
		return quoted("animal", r.c.Animals[s.index].ID)
	case clutchKind:
		return quoted("clutch", r.c.Clutches[s.index].ID)
	}
	return quoted("pairing", r.c.Pairings[s.index].ID)
}

// value gives the value of a key of a record, and nil when it has none.
func (r *reader) value(s subject, key string) *yaml.Node {
	list := r.items.pairings
	switch s.kind {
	case animalKind:
		list = r.items.animals
	case clutchKind:
		list = r.items.clutches
	}
	return strictyaml.Value(r.doc.Node(list[s.index]), key)
}

// at gives where the value of a key of a record stands: of a list, where the
// given text stands in it; without the key, where the id stands.
func (r *reader) at(s subject, key, text string) strictyaml.Position {
	n := r.value(s, key)
	if n == nil {
		return r.place(s)
	}
	for _, item := range n.Content {
		if item.Value == text {
			return strictyaml.PositionOf(item)
		}
	}
	return strictyaml.PositionOf(n)
}

// subject is the opposite of [Collection.number], for animals and clutches.
func (r *reader) subject(number int) subject {
	if number < len(r.c.Animals) {
		return subject{animalKind, number}
	}
	return subject{clutchKind, number - len(r.c.Animals)}
}

// in gives where the value of a key that a diary entry has stands.
func (r *reader) in(e *Entry, key string) strictyaml.Position {
	i, _ := slices.BinarySearchFunc(r.c.Diary, e.At, func(f Entry, at strictyaml.Position) int {
		return cmp.Or(cmp.Compare(f.At.Line, at.Line), cmp.Compare(f.At.Column, at.Column))
	})
	return strictyaml.PositionOf(strictyaml.Value(r.doc.Node(r.items.diary[i]), key))
}

// find gives the record of an id, and false when it is not one of the kind
// that is wanted.
func (r *reader) find(id string, want kind) (int, bool) {
	s := r.c.subjects[id]
	return s.index, s.kind == want
}

// missing reports an id that find did not find.
func (r *reader) missing(id string, want kind, role string, at strictyaml.Position) {
	r.absent(id, want, role, at, func() []string { return r.ids(want, "") })
}

// missingParent does so for a parent of s, which s itself cannot be, nor an
// animal of the other sex.
func (r *reader) missingParent(s subject, id, role string) {
	other := Male
	if role == "sire" {
		other = Female
	}
	r.absent(id, animalKind, role, r.at(s, role, id), func() []string {
		var ids []string
		for i := range r.c.Animals {
			if a := &r.c.Animals[i]; a.Sex != other && s != (subject{animalKind, i}) {
				ids = append(ids, a.ID)
			}
		}
		return ids
	})
}

// absent reports an id; candidates are those that may have been meant.
func (r *reader) absent(id string, want kind, role string, at strictyaml.Position, candidates func() []string) {
	if s, ok := r.c.subjects[id]; ok {
		r.errorAt(at, fmt.Sprintf("%s %q is %s (line %s)", role, id, s.kind.name(), line(r.place(s))),
			r.guess(id, want, candidates, "write the id of "+want.name()))
		return
	}
	r.errorAt(at, fmt.Sprintf("%s %q is not in the file", role, id),
		r.guess(id, want, candidates, "add "+want.name()+" of that id, or check the spelling"))
}

// guess gives a cure for an id that is not one of the wanted kind, and
// otherwise when it knows none.
func (r *reader) guess(id string, want kind, candidates func() []string, otherwise string) string {
	if r.guesses == 0 {
		return otherwise
	}
	if cure := r.nearest(id, candidates); cure != "" {
		return cure
	}
	if want == animalKind {
		for _, a := range r.c.Animals {
			if a.Name == id {
				return fmt.Sprintf("that is a name; its id is %q", a.ID)
			}
		}
	}
	return otherwise
}

// nearest gives a cure that names the candidate most like id, and nothing when
// none is, or too much was guessed already.
func (r *reader) nearest(id string, candidates func() []string) string {
	if r.guesses == 0 {
		return ""
	}
	r.guesses--
	return strictyaml.DidYouMean(id, candidates())
}

// ids gives all ids of a kind in the order of the file; of animals only those
// of a sex, when one is given.
func (r *reader) ids(want kind, sex Sex) []string {
	var ids []string
	switch want {
	case animalKind:
		for i := range r.c.Animals {
			if a := &r.c.Animals[i]; sex == "" || a.Sex == sex {
				ids = append(ids, a.ID)
			}
		}
	case clutchKind:
		for i := range r.c.Clutches {
			ids = append(ids, r.c.Clutches[i].ID)
		}
	case pairingKind:
		for i := range r.c.Pairings {
			ids = append(ids, r.c.Pairings[i].ID)
		}
	}
	return ids
}

func quoted(kind, id string) string { return fmt.Sprintf("%s %q", kind, id) }

func line(at strictyaml.Position) string { return strconv.Itoa(at.Line) }

// either joins words with commas and "or".
func either(words []string) string {
	if len(words) == 1 {
		return words[0]
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}
