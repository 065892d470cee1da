package calendar

import (
	"bytes"
	"fmt"
	"strings"
	"unicode/utf8"
)

// contentLine is a property of an iCalendar file (RFC 5545, section 3.1).
type contentLine struct {
	number int               // of its first line in the file, from 1
	name   string            // in capitals
	params map[string]string // of those with several values the first; names in capitals
	value  string            // as it stands there
}

// ICSError says what is wrong with an iCalendar file that was read.
type ICSError struct {
	Line   int    // from 1
	Reason string // without a full stop
}

func (e *ICSError) Error() string { return fmt.Sprintf("line %d: %s", e.Line, e.Reason) }

// contentLines takes a file apart. Lines may end with CRLF, as they have to, or
// with a bare line feed, as some programs leave them; empty ones are passed over.
// Lines are put together before their bytes are looked at, for some programs fold
// within a character.
func contentLines(data []byte) ([]contentLine, error) {
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	var lines []contentLine
	number := 0
	var pending []byte
	began := 0
	flush := func() error {
		if len(pending) == 0 {
			return nil
		}
		line, err := parseLine(began, pending)
		lines = append(lines, line)
		pending = pending[:0]
		return err
	}
	for raw := range bytes.Lines(data) {
		number++
		text := bytes.TrimSuffix(bytes.TrimSuffix(raw, []byte("\n")), []byte("\r"))
		if len(text) > 0 && (text[0] == ' ' || text[0] == '\t') {
			if len(pending) == 0 {
				return nil, &ICSError{number, "a continued line with none before it"}
			}
			pending = append(pending, text[1:]...)
			continue
		}
		if err := flush(); err != nil {
			return nil, err
		}
		pending, began = append(pending, text...), number
	}
	return lines, flush()
}

func parseLine(number int, raw []byte) (contentLine, error) {
	line := contentLine{number: number}
	if !utf8.Valid(raw) {
		return line, &ICSError{number, "it is not UTF-8"}
	}
	rest := string(raw)
	end := strings.IndexFunc(rest, func(r rune) bool { return !nameRune(r) })
	if end <= 0 || rest[end] != ':' && rest[end] != ';' {
		return line, &ICSError{number, "there is no name of a property before a colon"}
	}
	line.name, rest = strings.ToUpper(rest[:end]), rest[end:]
	for rest[0] == ';' {
		name, value, after, ok := parseParam(rest[1:])
		if !ok {
			return line, &ICSError{number, "a parameter of " + line.name + " cannot be read"}
		}
		if line.params == nil {
			line.params = make(map[string]string)
		}
		if _, twice := line.params[name]; twice {
			return line, &ICSError{number, "the parameter " + name + " of " + line.name + " stands twice"}
		}
		line.params[name], rest = value, after
	}
	line.value = rest[1:] // the loop ends at a colon
	return line, nil
}

// parseParam reads NAME=VALUE or NAME=VALUE,VALUE, with or without quotes, up to
// the semicolon or colon that follows, with which after begins.
func parseParam(text string) (name, value, after string, ok bool) {
	end := strings.IndexFunc(text, func(r rune) bool { return !nameRune(r) })
	if end <= 0 || text[end] != '=' {
		return "", "", "", false
	}
	name, after = strings.ToUpper(text[:end]), text[end:]
	for first := true; ; first = false {
		var one string
		one, after, ok = paramValue(after[1:])
		if first {
			value = one
		}
		if !ok || after[0] != ',' {
			return name, value, after, ok
		}
	}
}

// paramValue reads one value; after begins with a comma, semicolon or colon.
func paramValue(text string) (value, after string, ok bool) {
	if quoted, found := strings.CutPrefix(text, `"`); found {
		value, after, ok = strings.Cut(quoted, `"`)
		return value, after, ok && after != "" && strings.ContainsRune(",;:", rune(after[0]))
	}
	end := strings.IndexAny(text, `",;:`)
	if end < 0 || text[end] == '"' {
		return "", "", false
	}
	return text[:end], text[end:], true
}

func nameRune(r rune) bool {
	return r == '-' || r >= '0' && r <= '9' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z'
}

// text gives the value of a property whose type is TEXT, in which some signs are
// written with a backslash. A backslash before any other sign stays.
func (l contentLine) text() string {
	return unescape.Replace(l.value)
}

var unescape = strings.NewReplacer(`\\`, `\`, `\n`, "\n", `\N`, "\n", `\;`, ";", `\,`, ",")
