package record

import (
	"bytes"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// addition is what an edit adds to one list.
type addition struct {
	section string
	items   []item
}

// additions gives what e adds, in the order of the file.
func (e *Edit) additions() []addition {
	var list []addition
	if len(e.Animals) > 0 {
		a := addition{section: "animals"}
		for i := range e.Animals {
			a.items = append(a.items, animalItem(&e.Animals[i]))
		}
		list = append(list, a)
	}
	if e.Clutch != nil {
		list = append(list, addition{"clutches", []item{clutchItem(e.Clutch)}})
	}
	return append(list, addition{"diary", []item{entryItem(&e.Entry)}})
}

// splice gives the changes of the text that bring the additions into it, in the
// order of the file.
func (b *Book) splice(list []addition) ([]change, error) {
	var changes, sections []change
	for _, a := range list {
		some, bad := b.insert(a)
		if bad != nil {
			return nil, b.unsafe(bad, list)
		}
		if _, there := b.outline.Section(a.section); there {
			changes = append(changes, some...)
		} else {
			sections = append(sections, some...)
		}
	}
	// Where they meet, what goes into a list comes before the key of another.
	changes = append(changes, sections...)
	slices.SortStableFunc(changes, func(x, y change) int { return x.from - y.from })
	b.endLastLine(changes)
	return changes, nil
}

// endLastLine adds the line end that is missing at the end of the file to the
// first change that comes behind it.
func (b *Book) endLastLine(changes []change) {
	last := len(b.text.starts)
	for i := range changes {
		if changes[i].from == len(b.text.data) && len(b.text.line(last)) > 0 && !b.outline.Flow {
			changes[i].text = b.text.breakOf(1) + changes[i].text
			return
		}
	}
}

// place is where something cannot be done, and why.
type place struct {
	at     strictyaml.Position
	reason string
}

// unsafe makes an error of a place, with the lines to add by hand.
func (b *Book) unsafe(p *place, list []addition) error {
	var hand strings.Builder
	for _, a := range list {
		hand.WriteString(a.section + ":\n")
		for _, it := range a.items {
			hand.WriteString(style{flow: true}.write(it, "  ", "\n"))
		}
	}
	return &UnsafeError{File: b.file, At: p.at, Reason: p.reason, Hand: hand.String()}
}

// insert gives the changes for one list.
func (b *Book) insert(a addition) ([]change, *place) {
	s, there := b.outline.Section(a.section)
	switch {
	case there && s.Form == collection.Dashed:
		return b.insertDashed(a, s)
	case there && s.Form == collection.Bracketed && len(s.Items) == 0:
		at := b.text.offset(s.Value) + 1
		return []change{{at, at, inline(a.items)}}, nil
	case there && s.Form == collection.Bracketed:
		return b.insertBracketed(a, s)
	case there && s.Form == collection.Other:
		return nil, &place{s.Value, a.section + ": has a value that says nothing, where a list would begin in a line of its own"}
	case b.outline.Flow:
		return nil, &place{b.outline.At, "the whole file stands in { }, where no list " + a.section + ": can be added"}
	case there:
		return b.insertFirst(a, s)
	}
	return b.insertSection(a), nil
}

// insertDashed adds behind the last entry of a list with dashes, written like it.
func (b *Book) insertDashed(a addition, s collection.Section) ([]change, *place) {
	end, ok := b.endOfList(s)
	line := b.text.number(max(end-1, 0))
	next := b.text.start(line + 1)
	if !ok || !onlyComment(b.text.data[end:next]) {
		return nil, &place{s.Last.At, "it is not clear where the last entry of " + a.section + ": ends"}
	}
	var lines strings.Builder
	for _, it := range a.items {
		lines.WriteString(b.styleOf(s).write(it, strings.Repeat(" ", s.Value.Column-1), b.text.breakOf(line)))
	}
	return []change{{next, next, lines.String()}}, nil
}

// onlyComment reports whether there is nothing more than a comment in the rest
// of a line.
func onlyComment(rest []byte) bool {
	trimmed := bytes.TrimSpace(rest)
	return len(trimmed) == 0 || trimmed[0] == '#' && blank(rest[0])
}

// insertFirst begins a list below a key that has nothing behind it.
func (b *Book) insertFirst(a addition, s collection.Section) ([]change, *place) {
	at := b.text.offset(s.Value)
	next := b.text.start(s.Value.Line + 1)
	if !onlyComment(b.text.data[at:next]) || b.text.data[at-1] != ':' {
		return nil, &place{s.At, "it is not clear where the list " + a.section + ": would begin"}
	}
	return []change{{next, next, b.first(a.items, s.Value.Line)}}, nil
}

// insertSection adds a list with its key at the end of the document, behind an
// empty line where the file separates its keys so.
func (b *Book) insertSection(a addition) []change {
	at := b.endOfDocument()
	end := b.text.breakOf(1)
	lead := ""
	for _, s := range b.outline.Sections {
		if s.At.Line > 1 && len(bytes.TrimSpace(b.text.line(s.At.Line-1))) == 0 {
			lead = end
		}
	}
	if last := b.text.number(max(at-1, 0)); len(bytes.TrimSpace(b.text.line(last))) == 0 {
		lead = ""
	}
	key := strings.Repeat(" ", b.outline.At.Column-1) + a.section + ":" + end
	return []change{{at, at, lead + key + b.first(a.items, 1)}}
}

// first writes the first entries of a list, indented like the other lists.
func (b *Book) first(items []item, line int) string {
	indent := b.outline.At.Column + 1
	for _, s := range b.outline.Sections {
		if s.Form == collection.Dashed {
			indent = s.Value.Column - 1
		}
	}
	var lines strings.Builder
	for _, it := range items {
		lines.WriteString(style{flow: true}.write(it, strings.Repeat(" ", indent), b.text.breakOf(line)))
	}
	return lines.String()
}

// insertBracketed adds behind the last entry of a list in brackets: in a line of
// its own where that entry has one.
func (b *Book) insertBracketed(a addition, s collection.Section) ([]change, *place) {
	end, ok := b.endOfList(s)
	if !ok {
		return nil, &place{s.Last.At, "it is not clear where the last entry of " + a.section + ": ends"}
	}
	last := s.Items[len(s.Items)-1]
	line := b.text.number(end - 1)
	lead := b.text.data[b.text.start(last.Line):b.text.offset(last)]
	rest := b.text.data[end:b.text.start(line+1)]
	behind, comma := bytes.CutPrefix(rest, []byte(","))
	if len(bytes.TrimSpace(lead)) > 0 || !onlyComment(behind) || b.text.start(line+1) == len(b.text.data) {
		return []change{{end, end, ", " + inline(a.items)}}, nil
	}
	next, eol := b.text.start(line+1), b.text.breakOf(line)
	var lines strings.Builder
	for i, it := range a.items {
		lines.WriteString(string(lead) + inline([]item{it}))
		if comma || i+1 < len(a.items) {
			lines.WriteByte(',')
		}
		lines.WriteString(eol)
	}
	changes := []change{{next, next, lines.String()}}
	if !comma {
		changes = append([]change{{end, end, ","}}, changes...)
	}
	return changes, nil
}
