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
// All problems are collected, and none stops at the first; only a file that is
// not YAML, or is refused as a whole, is not looked into any further.
package strictyaml

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"
)

// MaxBytes is the size above which [Parse] refuses a file.
const MaxBytes = 64 << 20

// Document is a parsed file and the problems found in it so far.
type Document struct {
	File string     // the name that diagnostics show
	Root *yaml.Node // the top node; nil when the file could not be parsed. The entries of its lists are for [Document.Items] to give

	lines    []string
	byLine   map[*yaml.Node][]Item // of the lists that were read by line
	problems Diagnostics
	spare    []string // memory of a mapping that is done, for the next one
	sketch   *sketch  // of [SchemaOf]; nil for a document that was parsed
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
	var second *yaml.Node
	var err error
	top, byLine := decodeByLine(doc.lines)
	if top == nil {
		top, second, err = decode(data)
	}
	switch {
	case errors.Is(err, io.EOF), err == nil && isNull(top):
		doc.whole("there is nothing in the file", "`spawnwright init` writes one to start from")
	case err != nil:
		doc.syntax(err)
	case second != nil:
		doc.Errorf(second, "keep one document in a file: remove the line --- and what follows it",
			"a second YAML document begins here")
	default:
		doc.byLine = byLine
		doc.checkNodes(top)
		if len(doc.problems) == 0 {
			doc.Root = top
		}
	}
	return doc
}

// Release lets go of all nodes, for they are large; Root is nil afterwards. Only
// [Document.Diagnostic] and what concerns problems can still be used.
func (doc *Document) Release() { doc.Root, doc.byLine = nil, nil }

// decode gives the top node of the first document, and the node of a second
// document where there is one.
func decode(data []byte) (top, second *yaml.Node, err error) {
	decoder := yaml.NewDecoder(bytes.NewReader(data))
	var first, next yaml.Node
	if err := decoder.Decode(&first); err != nil {
		return nil, nil, err
	}
	switch err := decoder.Decode(&next); {
	case errors.Is(err, io.EOF):
		return first.Content[0], nil, nil
	case err != nil:
		return nil, nil, err
	}
	return first.Content[0], &next, nil
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

// Soften turns the errors that f reports into warnings, for a value without
// which the rest can be used; left, which says so, is added to each message.
func (doc *Document) Soften(left string, f func()) {
	first := len(doc.problems)
	f()
	for i := range doc.problems[first:] {
		if p := &doc.problems[first+i]; p.Severity == Error {
			p.Severity = Warning
			p.Message += left
		}
	}
}

func (doc *Document) report(severity Severity, n *yaml.Node, cure, message string) {
	if doc.sketch != nil {
		return // nothing stands there that could be wrong
	}
	doc.at(severity, n.Line, n.Column, message, cure)
}

func (doc *Document) at(severity Severity, line, column int, message, cure string) {
	doc.problems = append(doc.problems, doc.Diagnostic(severity, Position{line, column}, message, cure))
}

// line gives a line as an excerpt. A longer one would be shown with each of
// its many problems.
func (doc *Document) line(n int) string {
	const longest = 4096
	if n < 1 || n > len(doc.lines) || len(doc.lines[n-1]) > longest {
		return ""
	}
	return doc.lines[n-1]
}

func (doc *Document) whole(message, cure string) { doc.at(Error, 0, 0, message, cure) }

// checkNodes reports anchors, aliases and tags anywhere below n.
func (doc *Document) checkNodes(n *yaml.Node) {
	switch {
	case n.Kind == yaml.AliasNode:
		message, cure := noAliases(n.Value)
		doc.report(Error, n, cure, message)
		return
	case n.Anchor != "":
		doc.Errorf(n, "remove it and write the values out", "anchors (%s) are not used in this file", "&"+shorten(n.Anchor))
	case n.Style&yaml.TaggedStyle != 0:
		doc.Errorf(n, "remove the tag; put quotes around a text", "tags (%s) are not used in this file", strings.Map(visible, shorten(n.Tag)))
	}
	for _, child := range n.Content {
		doc.checkNodes(child)
	}
	for _, item := range doc.byLine[n] {
		if item.node != nil { // the others cannot have any
			doc.checkNodes(item.node)
		}
	}
}

func isNull(n *yaml.Node) bool { return n.Kind == yaml.ScalarNode && n.Tag == "!!null" }
