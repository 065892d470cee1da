package record

import (
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Plan finds where the lines of an edit go, and reads the new text back. The
// error is an *[InvalidError] when the file would have errors with them or when a
// part of them cannot be meant, an
// *[UnsafeError] when it cannot be made sure of, and a *[Refusal] for a text
// that no file can hold, and for an entry about a clutch that was not laid yet. Of a large file only what the edit has to do with is
// read back: the animals, clutches and entries around it, with all of the file
// that is no list.
func (b *Book) Plan(e Edit) (*Plan, error) {
	list := e.additions()
	for _, a := range list {
		for _, it := range a.items {
			for _, p := range it {
				if strings.ToValidUTF8(p.value, "") != p.value {
					return nil, refuse("type it again", "%s is not valid UTF-8 text", p.key)
				}
			}
		}
	}
	if k, ok := b.Collection.Clutch(e.Entry.Clutch); ok && e.Entry.On < k.Laid {
		return nil, refuse("check the day of both", "%s was laid on %s, and this is %s", k.ID, k.Laid, e.Entry.On)
	}
	changes, err := b.splice(list)
	if err != nil {
		return nil, err
	}
	p := &Plan{Edit: e, Text: apply(b.text.data, changes)}
	p.Lines = linesOf(p.Text, changes)
	r := b.readBack(e, changes, nil)
	if r.new == nil {
		return nil, &InvalidError{fresh(r.after, r.before), p.Lines}
	}
	if reason := same(r.old, r.new, e); reason != "" {
		if left := p.about(fresh(r.after, r.before)); len(left) > 0 {
			return nil, &InvalidError{left, p.Lines}
		}
		return nil, b.unsafe(&place{b.outline.At, "read back, the file would say something else: " + reason}, list)
	}
	p.Warnings = append(fresh(r.after, r.before), b.doubts(e, r.new)...)
	return p, nil
}

// about gives the problems that are in the lines of a plan: a part of them that the
// reader leaves out, such as a temperature that cannot be meant.
func (p *Plan) about(problems strictyaml.Diagnostics) (list strictyaml.Diagnostics) {
	for _, d := range problems {
		if slices.ContainsFunc(p.Lines, func(l Line) bool { return l.Number == d.Line }) {
			list = append(list, d)
		}
	}
	return list
}

// linesOf gives the lines of the new text that changes bring, or bring more into.
func linesOf(data []byte, changes []change) []Line {
	t := newText(data)
	var lines []Line
	more := 0
	for _, c := range changes {
		at := c.from + more
		more += len(c.text) - (c.to - c.from)
		body := strings.Trim(c.text, "\r\n")
		if body == "," {
			continue // the comma of the entry before
		}
		first := at + strings.Index(c.text, body)
		for l := t.number(first); l <= t.number(first+len(body)-1); l++ {
			lines = append(lines, Line{l, string(t.line(l))})
		}
	}
	return lines
}

// fresh gives the problems of after that are not in before, wherever the lines
// that they name now stand.
func fresh(after, before strictyaml.Diagnostics) strictyaml.Diagnostics {
	known := make(map[string]int)
	for _, d := range before {
		known[withoutLines(d)]++
	}
	var list strictyaml.Diagnostics
	for _, d := range after {
		if key := withoutLines(d); known[key] > 0 {
			known[key]--
		} else {
			list = append(list, d)
		}
	}
	return list
}

// withoutLines gives what a problem says without the numbers of lines in it.
func withoutLines(d strictyaml.Diagnostic) string {
	parts := strings.Split(d.Severity.String()+": "+d.Message, "line ")
	for i := 1; i < len(parts); i++ {
		parts[i] = strings.TrimLeft(parts[i], "0123456789")
	}
	return strings.Join(parts, "line ")
}
