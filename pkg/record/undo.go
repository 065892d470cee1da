package record

import (
	"bytes"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Undo plans to take away the last entry of the diary, in the order of the file,
// with the clutch or the animals that came with it: those that the note of
// [Book.Laid] or [Book.HeldBack] names, when they are the last of their list.
// It gives a *[Refusal] when there is doubt about what came with the entry, or
// when a comment of the keeper's would go as well, and an *[InvalidError] when
// something else in the file rests on what would go.
func (b *Book) Undo() (*Plan, error) {
	c := b.Collection
	if len(c.Diary) == 0 {
		return nil, refuse("", "the diary is empty")
	}
	last := c.Diary[len(c.Diary)-1]
	e := Edit{Entry: Entry{Entry: last}}
	taken := map[string]int{"diary": 1}
	switch {
	case last.Clutch != "" && marked(last.Note, laidNote):
		k := c.Clutches[len(c.Clutches)-1]
		if k.ID != last.Clutch || k.Laid != last.On {
			return nil, refuse("take the entry away by hand", "clutch %s, which came with the last entry, is not the last of its list, or was laid on another day", last.Clutch)
		}
		e.Clutch, taken["clutches"] = &k, 1
	case last.HeldBack > 0:
		e.Animals = b.held(last)
		if e.Animals == nil {
			return nil, refuse("take it away by hand", "the last entry holds young of %s back, but it is not clear which animals came with it", last.Clutch)
		}
		taken["animals"] = len(e.Animals)
	}
	p := &Plan{Edit: e, Undone: true}
	var changes []change
	for _, s := range b.outline.Sections {
		if taken[s.Key] == 0 {
			continue
		}
		gone, lines, err := b.remove(s, taken[s.Key])
		if err != nil {
			return nil, err
		}
		changes, p.Lines = append(changes, gone), append(p.Lines, lines...)
	}
	p.Text = apply(b.text.data, changes)
	r := b.readBack(e, changes, taken)
	if r.new == nil {
		return nil, &InvalidError{fresh(r.after, r.before), p.Lines}
	}
	if reason := same(r.new, r.old, e); reason != "" {
		return nil, refuse("take the entry away by hand", "read back, the file would say something else: %s", reason)
	}
	p.Warnings = fresh(r.after, r.before)
	return p, nil
}

// marked reports whether a note is the mark, alone or with a remark behind it.
func marked(note, mark string) bool {
	rest, ok := strings.CutPrefix(note, mark)
	return ok && (rest == "" || strings.HasPrefix(rest, "; "))
}

// held gives the animals at the end of their list that came with an entry, and
// nothing when the entry does not name them.
func (b *Book) held(e collection.Entry) []collection.Animal {
	all := b.Collection.Animals
	if e.HeldBack > len(all) {
		return nil
	}
	animals := all[len(all)-e.HeldBack:]
	ids := make([]string, len(animals))
	for i, a := range animals {
		ids[i] = a.ID
		if a.Clutch != e.Clutch {
			return nil
		}
	}
	if !marked(e.Note, heldNote(ids)) {
		return nil
	}
	return animals
}

// remove takes the last entries of a list away, and gives their lines.
func (b *Book) remove(s collection.Section, count int) (change, []Line, error) {
	end, ok := b.endOfList(s)
	first := len(s.Items) - count
	from := b.text.offset(s.Items[first])
	var gone change
	switch {
	case !ok:
		return change{}, nil, refuse("take it away by hand", "it is not clear where the last entry of %s: ends", s.Key)
	case s.Form == collection.Dashed:
		line := b.text.number(end - 1)
		gone = change{from: b.text.start(b.dash(s, first)), to: b.text.start(line + 1)}
	default:
		before := bytes.TrimRight(b.text.data[:from], " \t\r\n")
		if first > 0 {
			line := b.text.start(b.text.number(len(before) - 1))
			if !bytes.HasSuffix(before, []byte(",")) || comments(string(before[line:])) {
				return change{}, nil, refuse("take it away by hand", "there is a comment before the last entry of %s:", s.Key)
			}
			from = len(before) - 1
		}
		gone = change{from: from, to: end}
	}
	if comments(string(b.text.data[gone.from:gone.to])) {
		return change{}, nil, refuse("take it away by hand", "there is a comment beside the last entry of %s:", s.Key)
	}
	var lines []Line
	for l := b.text.number(b.text.offset(s.Items[first])); l <= b.text.number(end-1); l++ {
		lines = append(lines, Line{l, string(b.text.line(l))})
	}
	return gone, lines, nil
}

// comments reports whether a part of a file may have a comment in it: a # behind
// a blank or at the beginning of a line, outside of quotes that begin a value.
func comments(part string) bool {
	var quote, before byte = 0, '\n'
	for i := range len(part) {
		c := part[i]
		switch {
		case quote != 0:
			if c == quote {
				quote = 0
			}
		case c == '#' && blank(before):
			return true
		case (c == '"' || c == '\'') && (blank(before) || strings.IndexByte("[{,", before) >= 0):
			quote = c
		}
		before = c
	}
	return false
}
