package parentage

import "bytes"

// longest is the number of bytes that a row may have: more is a sign of lost line
// ends or quotes.
const longest = 1 << 20

// field is where a value stands in the text, without its quotes.
type field struct {
	from, to int
	doubled  bool // holds quotes that are written twice
}

// scanner cuts a text into rows and rows into fields. Nothing is copied.
type scanner struct {
	text  []byte
	comma byte
	stops [256]bool // bytes at which an unquoted value may end

	at   int // where the next row begins
	line int // the line of at, counted from 1

	// Of the last row:
	fields  []field // at most as many as there is room for
	count   int     // number of values
	from    int     // where it begins
	rowLine int
	ended   bool // a line end stands behind it
	problem flaw

	oneLine bool // quotes end with their line, because one had no partner
}

// flaw is what is wrong with a row as CSV, and where.
type flaw struct {
	at            int
	message, cure string
}

// newScanner begins at an offset and keeps at most width fields of a row.
func newScanner(text []byte, comma byte, width int) *scanner {
	s := &scanner{text: text, comma: comma, line: 1, fields: make([]field, 0, width)}
	for _, c := range []byte{comma, '\n', '\r', '"'} {
		s.stops[c] = true
	}
	return s
}

// next reads a row and reports whether there was one.
func (s *scanner) next() bool {
	if s.at >= len(s.text) {
		return false
	}
	s.fields, s.count, s.from, s.rowLine, s.problem = s.fields[:0], 0, s.at, s.line, flaw{}
	for more := true; more; {
		more = s.field()
	}
	return true
}

// field reads a value and what ends it, and reports whether another one follows.
func (s *scanner) field() bool {
	at := s.at
	for at < len(s.text) && s.text[at] == ' ' {
		at++
	}
	if at < len(s.text) && s.text[at] == '"' {
		return s.quotedField(at)
	}
	at = s.plain(at)
	if at < len(s.text) && s.text[at] == '"' {
		s.wrong(at, "a quote stands inside a value that does not begin with one", "put the whole value in quotes, and write a quote inside it twice")
		return s.skip(at)
	}
	s.keep(field{from: s.at, to: at})
	return s.end(at)
}

// plain gives where an unquoted value ends.
func (s *scanner) plain(at int) int {
	text := s.text
	for at < len(text) && !s.stops[text[at]] {
		at++
	}
	return at
}

// quotedField reads a value whose first quote is at open.
func (s *scanner) quotedField(open int) bool {
	f := field{from: open + 1}
	at := open + 1
	for {
		step := s.quote(at)
		if step < 0 {
			return s.unclosed(open)
		}
		at += step
		if at+1 < len(s.text) && s.text[at+1] == '"' {
			f.doubled = true
			at += 2
			continue
		}
		break
	}
	f.to = at
	after := at + 1
	for after < len(s.text) && s.text[after] == ' ' {
		after++
	}
	if after < len(s.text) && (s.text[after] == '"' || !s.stops[s.text[after]]) {
		if lineEnds(s.text[open:at]) > 0 {
			return s.unclosed(open) // and this is where another value begins
		}
		s.wrong(at, "text follows the quote that ends a value", "put the whole value in quotes, and write a quote inside it twice")
		return s.skip(after)
	}
	s.line += lineEnds(s.text[open:at])
	s.keep(f)
	return s.end(after)
}

// unclosed notes a quote without a partner and goes on with the next line. From
// then on quotes end with their line, lest the rest of the table be read inside
// out.
func (s *scanner) unclosed(open int) (more bool) {
	s.wrong(open, "the quote that begins here is never closed", "put a quote at the end of the value, or remove this one")
	s.oneLine = true
	return s.skip(open)
}

// quote gives the way from at to the next quote, or -1 when there is none.
func (s *scanner) quote(at int) int {
	rest := s.text[at:]
	step := bytes.IndexByte(rest, '"')
	if step >= 0 && s.oneLine && bytes.ContainsAny(rest[:step], "\r\n") {
		return -1
	}
	return step
}

func (s *scanner) keep(f field) {
	if s.count++; len(s.fields) < cap(s.fields) {
		s.fields = append(s.fields, f)
	}
}

// end goes past what ends a value: a comma, a line end or the end of the text.
func (s *scanner) end(at int) (more bool) {
	if at >= len(s.text) {
		s.at, s.ended = at, false
		return false
	}
	if s.text[at] == s.comma {
		s.at = at + 1
		return true
	}
	s.line++
	s.ended = true
	if s.text[at] == '\r' && at+1 < len(s.text) && s.text[at+1] == '\n' {
		at++
	}
	s.at = at + 1
	return false
}

// wrong notes the first flaw of the row.
func (s *scanner) wrong(at int, message, cure string) {
	if s.problem.message == "" {
		s.problem = flaw{at, message, cure}
	}
}

// skip goes on with the next line after a flaw.
func (s *scanner) skip(at int) (more bool) {
	if step := bytes.IndexAny(s.text[at:], "\r\n"); step >= 0 {
		return s.end(at + step)
	}
	return s.end(len(s.text))
}

// blank reports whether the last row holds nothing but blanks.
func (s *scanner) blank() bool {
	for _, f := range s.fields {
		value := s.text[f.from:f.to]
		if len(value) > 0 && (plainByte(value[0]) || len(bytes.TrimSpace(value)) > 0) {
			return false
		}
	}
	return s.count <= len(s.fields) || len(bytes.Trim(s.text[s.from:s.at], string(s.comma)+" \t\r\n")) == 0
}

// value gives what stands in a field, without blanks around it. It is valid until
// spare is used again.
func (s *scanner) value(f field, spare *[]byte) []byte {
	value := s.text[f.from:f.to]
	if f.doubled {
		*spare = append((*spare)[:0], bytes.ReplaceAll(value, []byte(`""`), []byte(`"`))...)
		value = *spare
	}
	if n := len(value); n > 0 && plainByte(value[0]) && plainByte(value[n-1]) {
		return value
	}
	return bytes.TrimSpace(value)
}

// plainByte reports whether c is an ASCII character other than blanks and controls.
func plainByte(c byte) bool { return ' ' < c && c < 0x7f }

// lineEnds counts line ends of any system.
func lineEnds(text []byte) int {
	n := bytes.Count(text, []byte("\n"))
	if bytes.IndexByte(text, '\r') >= 0 {
		n += bytes.Count(text, []byte("\r")) - bytes.Count(text, []byte("\r\n"))
	}
	return n
}
