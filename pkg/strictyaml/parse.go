// Package strictyaml reads one YAML document so strictly that every complaint
// has a place and a cure.
//
// [Parse] gives the document as nodes, refusing what a hand-written file never
// needs and what goes wrong in silence: aliases, tags, tabs as indentation,
// control characters, a second document, a file that is too large. [Mapping]
// then takes the keys out one by one; what was never taken was not known, and
// is reported with the nearest key that is. Scalars stay the text that stands
// in the file, so that an id 007 is not 7.
//
// All problems are collected; nothing stops at the first.
package strictyaml

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v3"
)

// MaxBytes is the size above which [Parse] refuses a file.
const MaxBytes = 64 << 20

// Document is a parsed file and the problems found in it so far.
type Document struct {
	File string     // the name that diagnostics show
	Root *yaml.Node // the top node; nil when the file could not be parsed

	lines    []string
	problems Diagnostics
}

// Parse reads data as one YAML document. File is only shown, never opened.
// When the document cannot be used Root is nil and [Document.Problems] says why.
// Time and memory grow in proportion to the size of data.
func Parse(file string, data []byte) *Document {
	doc := &Document{File: file}
	switch {
	case len(data) > MaxBytes:
		doc.whole(fmt.Sprintf("the file has %d bytes, more than the %d that are read", len(data), MaxBytes),
			"split it, or move old diary lines to another file")
		return doc
	case len(bytes.TrimSpace(data)) == 0:
		doc.whole("the file is empty", "`spawnwright init` writes one to start from")
		return doc
	}
	doc.lines = splitLines(data)
	doc.checkBytes(data)
	if len(doc.problems) > 0 {
		return doc
	}
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var top yaml.Node
	if err := decoder.Decode(&top); err != nil {
		doc.syntax(err)
		return doc
	}
	var second yaml.Node
	switch err := decoder.Decode(&second); {
	case errors.Is(err, io.EOF):
	case err != nil:
		doc.syntax(err)
		return doc
	default:
		doc.Errorf(&second, "keep one document in a file: remove the line --- and what follows it",
			"a second YAML document begins here")
		return doc
	}
	if len(top.Content) == 0 || isNull(top.Content[0]) {
		doc.whole("there is nothing in the file", "`spawnwright init` writes one to start from")
		return doc
	}
	doc.checkNodes(top.Content[0])
	if len(doc.problems) == 0 {
		doc.Root = top.Content[0]
	}
	return doc
}

// Problems gives all that was reported so far, worst first.
func (doc *Document) Problems() Diagnostics {
	sorted := slices.Clone(doc.problems)
	sorted.Sort()
	return sorted
}

// Errorf reports an error at n with its cure.
func (doc *Document) Errorf(n *yaml.Node, cure, format string, args ...any) {
	doc.report(Error, n, cure, fmt.Sprintf(format, args...))
}

// Warnf reports a warning at n with its cure.
func (doc *Document) Warnf(n *yaml.Node, cure, format string, args ...any) {
	doc.report(Warning, n, cure, fmt.Sprintf(format, args...))
}

func (doc *Document) report(severity Severity, n *yaml.Node, cure, message string) {
	doc.at(severity, n.Line, n.Column, message, cure)
}

func (doc *Document) at(severity Severity, line, column int, message, cure string) {
	doc.problems = append(doc.problems, doc.Diagnostic(severity, Position{line, column}, message, cure))
}

func (doc *Document) line(n int) string {
	if n < 1 || n > len(doc.lines) {
		return ""
	}
	return doc.lines[n-1]
}

func (doc *Document) whole(message, cure string) { doc.at(Error, 0, 0, message, cure) }

// checkBytes reports what the parser would refuse without a usable place.
func (doc *Document) checkBytes(data []byte) {
	if !utf8.Valid(data) {
		line, column := place(data, firstInvalid(data))
		doc.at(Error, line, column, "this is not valid UTF-8 text", "save the file as UTF-8")
		if line <= len(doc.lines) {
			doc.problems[len(doc.problems)-1].Excerpt = strings.ToValidUTF8(doc.line(line), "�")
		}
		return
	}
	for i, line := range doc.lines {
		indent := len(line) - len(strings.TrimLeft(line, " \t"))
		if tab := strings.IndexByte(line[:indent], '\t'); tab >= 0 && indent < len(line) {
			doc.at(Error, i+1, tab+1, "a tab is used to indent", "indent with blanks")
		}
		column := 0
		for _, r := range line {
			column++
			if r < ' ' && r != '\t' || r == 0x7f {
				doc.at(Error, i+1, column, fmt.Sprintf("control character U+%04X", r), "remove it")
				doc.problems[len(doc.problems)-1].Excerpt = printable(line)
				break
			}
		}
	}
}

func printable(line string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return '�'
		}
		return r
	}, line)
}

// checkNodes reports anchors, aliases and tags anywhere below n.
func (doc *Document) checkNodes(n *yaml.Node) {
	switch {
	case n.Kind == yaml.AliasNode:
		doc.Errorf(n, "write the values out", "aliases (*%s) are not used in this file", n.Value)
		return
	case n.Anchor != "":
		doc.Errorf(n, "remove it and write the values out", "anchors (&%s) are not used in this file", n.Anchor)
	case n.Style&yaml.TaggedStyle != 0:
		doc.Errorf(n, "remove the tag; put quotes around a text", "tags (%s) are not used in this file", n.Tag)
	}
	for _, child := range n.Content {
		doc.checkNodes(child)
	}
}

var syntaxLine = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// syntax reports an error of the YAML parser. Its line can be off by one or
// more, so the message says "near".
func (doc *Document) syntax(err error) {
	message := strings.ReplaceAll(err.Error(), "\n", " ")
	line := 0
	if m := syntaxLine.FindStringSubmatch(message); m != nil {
		line, _ = strconv.Atoi(m[1])
		message = m[2]
	}
	cure := "look here and at the lines just above for a missing quote, bracket, colon or blank"
	if line == 0 {
		doc.whole("this is not YAML: "+message, cure)
		return
	}
	doc.at(Error, min(line, max(len(doc.lines), 1)), 0, "near this line: "+message, cure)
}

func splitLines(data []byte) []string {
	text := strings.TrimPrefix(string(data), "\ufeff")
	text = strings.ReplaceAll(text, "\r\n", "\n")
	text = strings.ReplaceAll(text, "\r", "\n")
	return strings.Split(text, "\n")
}

func firstInvalid(data []byte) int {
	for i := 0; i < len(data); {
		r, size := utf8.DecodeRune(data[i:])
		if r == utf8.RuneError && size <= 1 {
			return i
		}
		i += size
	}
	return len(data)
}

// place gives line and column, in characters, of a byte offset.
func place(data []byte, offset int) (line, column int) {
	before := string(data[:offset])
	before = strings.ReplaceAll(before, "\r\n", "\n")
	before = strings.ReplaceAll(before, "\r", "\n")
	line = strings.Count(before, "\n") + 1
	column = utf8.RuneCountInString(before[strings.LastIndexByte(before, '\n')+1:]) + 1
	return line, column
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }
