package parentage

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// The three columns, and the order of what belongs to them everywhere here.
const (
	id = iota
	sire
	dam
)

var columnWords = [3]string{"id", "sire", "dam"}

// usualNames are what the columns are called unless [Columns] says otherwise.
var usualNames = [3][]string{
	{"id", "individual", "animal"},
	{"sire", "father"},
	{"dam", "mother"},
}

// mostColumns is the largest number of columns.
const mostColumns = 4096

// names gives the names that each column may have.
func (c Columns) names() [3][]string {
	names := usualNames
	for i, own := range [3]string{c.ID, c.Sire, c.Dam} {
		if own = strings.TrimSpace(own); own != "" {
			names[i] = []string{own}
		}
	}
	return names
}

// header reads the first line, and reports whether the three columns are in it.
func (r *reader) header() bool {
	start, line := r.beginning()
	if start == len(r.scan.text) {
		r.errs.add(0, "begin with a line that names the columns, such as id,sire,dam", "the table is empty")
		return false
	}
	var best heading
	for _, comma := range []byte(",;\t") {
		h := r.heading(comma, start, line)
		if best.scan == nil || h.found() > best.found() || h.found() == best.found() && h.scan.count > best.scan.count {
			best = h
		}
	}
	return r.use(best)
}

// beginning gives where the first line that is not blank begins.
func (r *reader) beginning() (start, line int) {
	text := r.scan.text
	start = len(text) - len(bytes.TrimLeft(text, " ,;\t\r\n"))
	if start == len(text) {
		return start, 1
	}
	line = 1 + lineEnds(text[:start])
	return bytes.LastIndexAny(text[:start], "\r\n") + 1, line
}

// heading is the first line, read with one of the possible commas.
type heading struct {
	scan    *scanner
	values  []string
	columns [3][]int // the fields that each column may be
}

func (h heading) found() (n int) {
	for _, at := range h.columns {
		n += min(len(at), 1)
	}
	return n
}

func (r *reader) heading(comma byte, start, line int) heading {
	h := heading{scan: newScanner(r.scan.text, comma, mostColumns)}
	h.scan.at, h.scan.line = start, line
	h.scan.next()
	var spare []byte
	for i, f := range h.scan.fields {
		h.values = append(h.values, string(h.scan.value(f, &spare)))
		for column, names := range r.columnNames {
			if slices.ContainsFunc(names, func(name string) bool { return strings.EqualFold(name, h.values[i]) }) {
				h.columns[column] = append(h.columns[column], i)
			}
		}
	}
	return h
}

// use goes on with the heading that fits best.
func (r *reader) use(h heading) bool {
	s := h.scan
	switch {
	case s.at-s.from > longest:
		r.errs.add(s.from, "the table needs line ends, and quotes only in pairs", "the first line has %d bytes", s.at-s.from)
	case s.problem.message != "":
		r.errs.add(s.problem.at, s.problem.cure, "%s", s.problem.message)
	case s.count > mostColumns:
		r.errs.add(s.from, "leave some out", "the table has %d columns, and at most %d can be read", s.count, mostColumns)
	case h.found() == 0 && h.like() == [3]string{}:
		r.errs.add(s.from, fmt.Sprintf("it must name a column %s, one %s and one %s, such as id,sire,dam", either(r.columnNames[id]), either(r.columnNames[sire]), either(r.columnNames[dam])),
			"the first line names none of the columns")
	default:
		r.choose(h)
	}
	s.fields = make([]field, 0, s.count)
	r.scan, r.width = s, s.count
	return r.errs.total == 0
}

// choose takes the column for each of the three.
func (r *reader) choose(h heading) {
	like := h.like()
	for column, at := range h.columns {
		switch {
		case len(at) == 0:
			cure, name := "name one so, or tell its name", "NAME"
			if like[column] != "" {
				cure, name = fmt.Sprintf("did you mean %q?", like[column]), like[column]
			}
			r.errs.add(h.scan.from, cure, "no column is called %s", either(r.columnNames[column]))
			r.errs.option("columns " + columnWords[column] + "=" + name)
		case len(at) > 1:
			r.errs.add(h.scan.fields[at[1]].from, "rename one, or tell which",
				"columns %q and %q both mean %s", h.values[at[0]], h.values[at[1]], columnWords[column])
			r.errs.option("columns " + columnWords[column] + "=NAME")
		default:
			r.columns[column] = at[0]
			r.headWords[column] = h.values[at[0]]
		}
	}
	if r.columns[id] == r.columns[sire] || r.columns[id] == r.columns[dam] || r.columns[sire] == r.columns[dam] {
		if r.errs.total == 0 {
			r.errs.add(h.scan.from, "tell a column of its own for each", "one column cannot be two of id, sire and dam")
		}
	}
}

func either(names []string) string { return strings.Join(names, " or ") }

// like gives, for each column that is not there, the name of a column that may be
// meant, or nothing.
func (h heading) like() (like [3]string) {
	for _, column := range []int{sire, dam, id} { // "sire_id" is no id
		if len(h.columns[column]) > 0 {
			continue
		}
		for field, value := range h.values {
			taken := slices.Contains(like[:], value)
			for _, at := range h.columns {
				taken = taken || slices.Contains(at, field)
			}
			if !taken && resembles(value, usualNames[column]) {
				like[column] = value
				break
			}
		}
	}
	return like
}

// resembles reports whether a heading holds one of the names, as "Sire ID" does,
// or is one but for a slip.
func resembles(heading string, names []string) bool {
	letters := strings.Map(func(c rune) rune {
		if unicode.IsLetter(c) {
			return unicode.ToLower(c)
		}
		return -1
	}, heading[:min(len(heading), 64)])
	return slices.ContainsFunc(names, func(name string) bool {
		return strings.HasPrefix(letters, name) || strings.HasSuffix(letters, name) || len(name) > 2 && slip(letters, name)
	})
}

// slip reports whether two words differ in one letter that is wrong, missing or
// too many, or in two neighbours that changed places.
func slip(a, b string) bool {
	same := 0
	for same < min(len(a), len(b)) && a[same] == b[same] {
		same++
	}
	a, b = a[same:], b[same:]
	switch {
	case len(a) == len(b) && len(a) >= 2 && a[0] == b[1] && a[1] == b[0] && a[2:] == b[2:]:
		return true
	case len(a) == len(b):
		return len(a) > 0 && a[1:] == b[1:]
	case len(a) == len(b)+1:
		return a[1:] == b
	case len(a)+1 == len(b):
		return a == b[1:]
	}
	return false
}
