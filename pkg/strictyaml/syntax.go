package strictyaml

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"sort"
	"strconv"
	"strings"
)

var syntaxError = regexp.MustCompile(`^yaml: (?:line (\d+): )?(.*)$`)

// phrases puts the usual complaints of the YAML parser into the keeper's words.
var phrases = []struct{ said, message, cure string }{
	{"did not find expected '-' indicator", "this line does not belong to the list above it", "indent it like the - lines above, or begin it with -"},
	{"did not find expected key", "this line does not fit the lines above it", "indent it like the key that it belongs beside"},
	{"did not find expected ',' or ']'", "a list that begins with [ is not closed, or a comma is missing", "look from here on for a missing ] or comma"},
	{"did not find expected ',' or '}'", "a set that begins with { is not closed, or a comma is missing", "look from here on for a missing } or comma"},
	{"mapping values are not allowed in this context", "a colon stands where none can be", "put quotes around a text that has a colon; look how the line is indented"},
	{"could not find expected ':'", "a colon is missing after a key", "write key: value"},
	{"found unexpected end of stream", "a quote that is opened here is not closed", "close it"},
	{"found character that cannot start any token", "a text cannot begin with this character", "put quotes around the text; a tab has to be a blank"},
	{"did not find expected node content", "a value is missing, or a bracket or comma is too many", "look here and at the lines just above"},
	{"block sequence entries are not allowed in this context", "a list cannot begin in the line of its key", "put each - on a line of its own"},
	{"exceeded max depth of 10000", "lists and sets stand in one another too deep", "look for brackets that are not closed"},
	{"found incompatible YAML document", "this file is marked for another version of YAML", "remove the line"},
	{"found unknown directive name", "a line cannot begin with %", "put quotes around the text, or remove the line"},
	{"found unknown escape character", "a backslash in double quotes is followed by an unknown letter", "use single quotes, or write the backslash twice"},
}

// syntax reports an error of the YAML parser.
func (doc *Document) syntax(err error) {
	line, said := doc.locate(err)
	message, cure := "this is not YAML: "+said, "look here and at the lines just above"
	for _, p := range phrases {
		if p.said == said {
			message, cure = p.message, p.cure
		}
	}
	if anchor, ok := unknownAnchor(said); ok {
		message, cure = noAliases(anchor)
	}
	for _, near := range []int{line, line - 1} { // the parser often sees it one line later
		if near < 1 || near > len(doc.lines) {
			continue
		}
		if m, c, ok := blankMissing(doc.lines[near-1]); ok {
			line, message, cure = near, m, c
			break
		}
	}
	doc.at(Error, line, 0, message, cure)
}

var (
	dashAlone  = regexp.MustCompile(`^ *-[A-Za-z{\["']`)
	colonAlone = regexp.MustCompile(`^ *(?:- )?([A-Za-z_]+):[^ \t/:]`)
)

// blankMissing finds the blank that has to stand behind the - of an entry or the colon of a
// key, in a line where YAML has something to complain about.
func blankMissing(line string) (message, cure string, ok bool) {
	if dashAlone.MatchString(line) {
		return "there is no blank behind the -", "put one there", true
	}
	if match := colonAlone.FindStringSubmatch(line); match != nil {
		return "there is no blank behind the colon of " + shorten(match[1]), "put one there", true
	}
	return "", "", false
}

// locate gives the line of an error and what the parser said. The parser names
// where the list, set or quote began, which can be far above the mistake, and
// nothing in the first line. The mistake is in the first line that brings the
// same error when the text is cut off behind it, and halving finds that one.
func (doc *Document) locate(err error) (line int, said string) {
	_, said = parserSaid(err)
	if anchor, ok := unknownAnchor(said); ok {
		uses := func(line string) bool { return strings.Contains(line, "*"+anchor) }
		return 1 + slices.IndexFunc(doc.lines, uses), said
	}
	whole := doc.errorOf(len(doc.lines))
	const small = 10_000 // lines; above, the parser's word has to do, for each step reads up to the mistake
	if len(doc.lines) > small || whole == nil {
		line, _ = parserSaid(cmp.Or(whole, err))
		line = min(max(line-1, 1), len(doc.lines))
	} else {
		line = 1 + sort.Search(len(doc.lines)-1, func(i int) bool {
			part := doc.errorOf(i + 1)
			return part != nil && part.Error() == whole.Error()
		})
	}
	for line > 1 && strings.TrimSpace(doc.lines[line-1]) == "" {
		line-- // the end of the text was the surprise
	}
	return line, said
}

// errorOf gives the error of the first n lines. A blank line before them makes
// the parser name the first line too.
func (doc *Document) errorOf(n int) error {
	_, _, err := decode([]byte("\n" + strings.Join(doc.lines[:n], "\n") + "\n"))
	return err
}

func parserSaid(err error) (line int, said string) {
	m := syntaxError.FindStringSubmatch(strings.ReplaceAll(err.Error(), "\n", " "))
	if m == nil {
		return 0, err.Error()
	}
	line, _ = strconv.Atoi(m[1])
	return line, m[2]
}

func unknownAnchor(said string) (string, bool) {
	rest, ok := strings.CutPrefix(said, "unknown anchor '")
	return strings.TrimSuffix(rest, "' referenced"), ok
}

func noAliases(name string) (message, cure string) {
	return fmt.Sprintf("aliases (*%s) are not used in this file", shorten(name)), "write the values out"
}
