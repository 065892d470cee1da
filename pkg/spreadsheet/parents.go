package spreadsheet

import (
	"fmt"
	"regexp"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

var between = regexp.MustCompile(` or |[/;,|]`)

// wild are what keepers write for parents that nobody has seen.
var wild = map[string]bool{"0": true, "wild": true, "wc": true, "wild caught": true, "wild-caught": true}

// link finds the parents of all animals, by id or by a name that only one has.
func (c *converter) link() {
	l := linker{converter: c, byID: make(map[string]*animal), byName: make(map[string][]*animal)}
	for _, a := range c.animals {
		l.byID[a.id] = a
		l.ids = append(l.ids, a.id)
		if a.name != "" {
			l.byName[strings.ToLower(a.name)] = append(l.byName[strings.ToLower(a.name)], a)
		}
	}
	for _, a := range c.animals {
		l.parents(a, "sire", a.sire, "female")
		l.parents(a, "dam", a.dam, "male")
	}
}

type linker struct {
	*converter
	byID   map[string]*animal
	byName map[string][]*animal
	ids    []string
	missed int
}

// parents enters the parents that a cell names. One name that is not understood
// leaves out all: the others alone would say too much.
func (l *linker) parents(a *animal, key string, at cell, wrong string) {
	if at.text == "" || l.byID[at.text] == nil && wild[strings.ToLower(at.text)] {
		return
	}
	words := []string{at.text}
	if l.find(at.text) == nil {
		words = between.Split(at.text, -1)
	}
	var ids []string
	taken := make(map[string]bool)
	gone := "it is left out"
	if len(words) > 1 {
		gone = "all in this cell are left out"
	}
	for _, word := range words {
		p := l.find(strings.TrimSpace(word))
		switch {
		case p == nil:
			l.warn(at, fmt.Sprintf("%s %q of %q is not in the table: %s", key, shown(strings.TrimSpace(word)), a.id, gone), l.cure(strings.TrimSpace(word)))
			return
		case p == a:
			l.warn(at, fmt.Sprintf("%q is named as its own %s: %s", a.id, key, gone), "correct it")
			return
		case p.sex == wrong:
			l.warn(at, fmt.Sprintf("%s %q of %q is recorded as %s (line %d): %s", key, p.id, a.id, p.sex, p.row.line, gone), "correct the one or the other")
			return
		case !taken[p.id]:
			taken[p.id] = true
			ids = append(ids, quoted(p.id))
		}
	}
	if len(ids) == 1 {
		a.values[key] = ids[0]
		return
	}
	a.values[key] = "[" + strings.Join(ids, ", ") + "]"
}

func (l *linker) find(word string) *animal {
	if a := l.byID[word]; a != nil {
		return a
	}
	if named := l.byName[strings.ToLower(word)]; len(named) == 1 {
		return named[0]
	}
	return nil
}

// cure says what may have been meant. Only the first misses are compared with
// all ids: many of them mean that half of the table is missing.
func (l *linker) cure(word string) string {
	const most = 20
	if named := l.byName[strings.ToLower(word)]; len(named) > 1 {
		return fmt.Sprintf("%d animals have that name; write the id", len(named))
	}
	if l.missed++; l.missed <= most {
		if cure := strictyaml.DidYouMean(word, l.ids); cure != "" {
			return cure
		}
	}
	return "add a row for it, or leave the cell empty"
}
