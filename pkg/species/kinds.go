package species

import (
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// A field ties a key of a file to the value of a profile that it stands for.
// Reading and listing both go through the fields, so that neither can know a
// key that the other does not.
type field struct {
	key   string
	value value
}

// A value can be read from a node and shown with its unit. Reading leaves the
// value as it was when the node is wrong.
type value interface {
	read(doc *strictyaml.Document, n *yaml.Node, key, source string)
	show() string
	// source points at the source, which is empty when the value is not known.
	source() *string
}

type rangeValue struct {
	to *Range
	measure
	orMore bool // one number means that or more
}

func (v rangeValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if doc.Sketching() {
		doc.Describe(n, strictyaml.Either(v.schema(), strictyaml.ListOf(v.schema(), 2, 2)))
	}
	if n.Kind == yaml.ScalarNode {
		if number, ok := read(doc, n, key, v.measure); ok {
			*v.to = Range{number, number, source}
		}
		return
	}
	numbers, ok := readList(doc, n, key, v.measure, 2, "write the lower and the upper end, such as "+key+": [24, 29], or one number")
	if ok && rising(doc, n, key, "lower end, upper end", numbers) {
		*v.to = Range{numbers[0], numbers[1], source}
	}
}

func (v rangeValue) show() string {
	switch {
	case v.to.Low < v.to.High:
		return plain(v.to.Low) + " to " + plain(v.to.High) + v.unit
	case v.orMore:
		return plain(v.to.Low) + v.unit + " or more"
	}
	return plain(v.to.Low) + v.unit
}

func (v rangeValue) source() *string { return &v.to.Source }

type numberValue struct {
	to *Number
	measure
}

func (v numberValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if number, ok := read(doc, n, key, v.measure); ok {
		*v.to = Number{number, source}
	}
}

func (v numberValue) show() string { return plain(v.to.Value) + v.unit }

func (v numberValue) source() *string { return &v.to.Source }

// shareValue is a number from 0 to 1 that is shown in percent.
type shareValue struct{ to *Number }

func (v shareValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	numberValue{v.to, measure{"", 0, 1}}.read(doc, n, key, source)
}

func (v shareValue) show() string { return fmt.Sprintf("%.4g %%", v.to.Value*100) }

func (v shareValue) source() *string { return &v.to.Source }

type percentilesValue struct {
	to *Percentiles
	measure
}

func (v percentilesValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if doc.Sketching() {
		doc.Describe(n, strictyaml.ListOf(v.schema(), 3, 3))
	}
	numbers, ok := readList(doc, n, key, v.measure, 3, "write the 10th, 50th and 90th percentile, such as "+key+": [48, 60, 80]")
	if ok && rising(doc, n, key, "10th, 50th, 90th percentile", numbers) {
		*v.to = Percentiles{numbers[0], numbers[1], numbers[2], source}
	}
}

func (v percentilesValue) show() string {
	return join([]float64{v.to.P10, v.to.P50, v.to.P90}, " / ") + v.unit
}

func (v percentilesValue) source() *string { return &v.to.Source }

type daysValue struct {
	to   *Days
	unit string
}

func (v daysValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if doc.Sketching() {
		doc.Describe(n, strictyaml.ListOf(strictyaml.WholeFrom(1, longestPhase), 3, 3))
	}
	cure := "write whole days at least, usually, at most, such as " + key + ": [28, 42, 56]"
	if n.Kind != yaml.SequenceNode || len(n.Content) != 3 {
		doc.Errorf(n, cure, "%s is not a list of 3 numbers", key)
		return
	}
	var days [3]int
	var numbers []float64
	for i, item := range n.Content {
		d, ok := doc.Int(item, key, 1, longestPhase)
		if !ok {
			return
		}
		days[i] = d
		numbers = append(numbers, float64(d))
	}
	if rising(doc, n, key, "at least, usually, at most", numbers) {
		*v.to = Days{days[0], days[1], days[2], source}
	}
}

func (v daysValue) show() string {
	return fmt.Sprintf("%d / %d / %d%s", v.to.Min, v.to.Usual, v.to.Max, v.unit)
}

func (v daysValue) source() *string { return &v.to.Source }

type textValue struct{ to *Text }

func (v textValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if text, ok := readLine(doc, n, key); ok {
		*v.to = Text{text, source}
	}
}

func (v textValue) show() string { return v.to.Value }

func (v textValue) source() *string { return &v.to.Source }

// placeValue is a text that is one of places.
type placeValue struct{ to *Text }

func (v placeValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if doc.Sketching() {
		doc.Describe(n, strictyaml.OneOfWords(places...))
	}
	text, ok := readLine(doc, n, key)
	if !ok {
		return
	}
	if !slices.Contains(places, text) {
		doc.Errorf(n, oneOf(text, places), "%s cannot be %q", key, text)
		return
	}
	*v.to = Text{text, source}
}

func (v placeValue) show() string { return v.to.Value }

func (v placeValue) source() *string { return &v.to.Source }

// readLine reads a text as one line; an empty one is reported.
func readLine(doc *strictyaml.Document, n *yaml.Node, key string) (string, bool) {
	raw := doc.Text(n, key)
	line := strings.Join(strings.Fields(raw), " ")
	if line == "" && n.Kind == yaml.ScalarNode && strings.TrimSpace(n.Value) == "" {
		doc.Errorf(n, "write a text or remove the line", "%s is empty", key)
	}
	return line, line != ""
}

func oneOf(text string, words []string) string {
	if cure := strictyaml.DidYouMean(text, words); cure != "" {
		return cure
	}
	return "write one of " + strings.Join(words, ", ")
}
