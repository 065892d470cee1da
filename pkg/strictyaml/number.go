package strictyaml

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"sync"

	"go.yaml.in/yaml/v3"
)

// Forms are put together when one is first asked for: most files need none.
var (
	quantity      = form(`^(-?[0-9]{1,15}(?:\.[0-9]{1,15})?) ?([^0-9.\s-][^0-9]*)$`)
	commaFloat    = form(`^-?[0-9]{1,15},[0-9]{1,15}$`)
	commaQuantity = form(`^-?[0-9]{1,15},[0-9]{1,15} ?[^0-9,.\s-]{1,9}$`)
)

func form(of string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(of) })
}

// plainInt reports whether text is a whole number of at most 15 digits.
func plainInt(text string) bool {
	digits, rest := leadingDigits(strings.TrimPrefix(text, "-"))
	return digits > 0 && rest == ""
}

// plainFloat reports whether text is a number of at most 15 digits before and
// behind its point.
func plainFloat(text string) bool {
	digits, rest := leadingDigits(strings.TrimPrefix(text, "-"))
	if rest != "" && rest[0] == '.' && digits > 0 {
		digits, rest = leadingDigits(rest[1:])
	}
	return digits > 0 && rest == ""
}

// leadingDigits counts the digits that text begins with, at most 15, and gives
// what comes after them.
func leadingDigits(text string) (int, string) {
	const most = 15
	n := 0
	for n < min(len(text), most) && isDigit(text[n]) {
		n++
	}
	return n, text[n:]
}

// Int takes a whole number from low to high. The second result is false when
// the key is missing or was reported.
func (m *Mapping) Int(key string, low, high int) (int, bool) {
	n := m.Take(key)
	if n == nil {
		return 0, false
	}
	return m.doc.Int(n, key, low, high)
}

// Int reads a whole number from low to high; name is for messages.
func (doc *Document) Int(n *yaml.Node, name string, low, high int) (int, bool) {
	if doc.sketch != nil {
		doc.Describe(n, WholeFrom(low, high))
		return 0, false
	}
	text, ok := doc.scalar(n, name)
	if !ok {
		return 0, false
	}
	if !plainInt(text) {
		doc.Errorf(n, "write a whole number, such as "+strconv.Itoa(max(low, 1)), "%s is %q, not a whole number", name, shorten(text))
		return 0, false
	}
	v, _ := strconv.Atoi(text)
	if v < low || v > high {
		doc.Errorf(n, fmt.Sprintf("write a number from %d to %d", low, high), "%s is %d", name, v)
		return 0, false
	}
	return v, true
}

// Float takes a number from low to high. The second result is false when the
// key is missing or was reported.
func (m *Mapping) Float(key string, low, high float64) (float64, bool) {
	n := m.Take(key)
	if n == nil {
		return 0, false
	}
	return m.doc.Float(n, key, low, high)
}

// Float reads a number from low to high; name is for messages.
func (doc *Document) Float(n *yaml.Node, name string, low, high float64) (float64, bool) {
	if doc.sketch != nil {
		doc.Describe(n, NumberFrom(low, high))
		return 0, false
	}
	text, ok := doc.scalar(n, name)
	if !ok {
		return 0, false
	}
	if !plainFloat(text) {
		cure := "write a number, such as 12.5"
		if commaFloat().MatchString(text) {
			cure = "write a point: " + strings.Replace(text, ",", ".", 1)
		}
		doc.Errorf(n, cure, "%s is %q, not a number", name, shorten(text))
		return 0, false
	}
	v, _ := strconv.ParseFloat(text, 64)
	if v < low || v > high {
		doc.Errorf(n, fmt.Sprintf("write a number from %v to %v", low, high), "%s is %s", name, text)
		return 0, false
	}
	return v, true
}

// Unit is a kind of quantity with the units that may be written.
type Unit struct {
	Base  string // such as "g"; also the ending of the key that holds a bare number
	Known []Conversion
}

// Conversion turns a written unit into the base unit:
// base = (written - Zero) * Times / Per. The division is apart, for 1/1000 and
// 5/9 have no exact value.
type Conversion struct {
	Name             string
	Zero, Times, Per float64
}

func (c Conversion) base(written float64) float64 { return (written - c.Zero) * c.Times / c.Per }

// The quantities of a keeper's file. The factors are exact by definition
// (international pound and inch of 1959; Celsius and Fahrenheit scales).
var (
	grams = Unit{"g", []Conversion{{"g", 0, 1, 1}, {"kg", 0, 1000, 1}, {"mg", 0, 1, 1000}, {"oz", 0, 28.349523125, 1}}}
	mm    = Unit{"mm", []Conversion{{"mm", 0, 1, 1}, {"cm", 0, 10, 1}, {"in", 0, 254, 10}}}
	degC  = Unit{"c", []Conversion{{"°C", 0, 1, 1}, {"C", 0, 1, 1}, {"°F", 32, 5, 9}, {"F", 32, 5, 9}}}
)

// Grams is a mass: g, kg, mg, oz.
func Grams() Unit { return grams }

// Millimetres is a length: mm, cm, in.
func Millimetres() Unit { return mm }

// Celsius is a temperature: °C, C, °F, F.
func Celsius() Unit { return degC }

// Quantity takes a quantity that is written either as key_base, a bare number
// in the base unit (weight_g: 12.4), or as key with its unit (weight: 0.44 oz).
// A bare number under the plain key is refused, for it has no unit.
func (m *Mapping) Quantity(key string, u Unit, low, high float64) (float64, bool) {
	suffixed := key + "_" + u.Base
	bare, labelled := m.Take(suffixed), m.Take(key)
	switch {
	case m.sketch != nil:
		m.doc.Describe(bare, NumberFrom(low, high))
		m.doc.Describe(labelled, u.schema())
		return 0, false
	case bare != nil && labelled != nil:
		m.doc.Errorf(labelled, "keep one of them", "%s and %s say the same thing", suffixed, key)
		return 0, false
	case bare != nil:
		return m.doc.bare(bare, key, u, low, high)
	case labelled != nil:
		return m.doc.quantity(labelled, key, u, low, high)
	}
	return 0, false
}

// bare reads a number in the base unit of u.
func (doc *Document) bare(n *yaml.Node, key string, u Unit, low, high float64) (float64, bool) {
	if v, err := strconv.ParseFloat(n.Value, 64); err == nil && plainFloat(n.Value) && (v < low || v > high) {
		cure := fmt.Sprintf("write a number from %v to %v", low, high)
		if other := u.fitting(v, low, high); other != "" {
			cure += fmt.Sprintf(", or %s: %s %s", key, n.Value, other)
		}
		doc.Errorf(n, cure, "%s_%s is %s", key, u.Base, n.Value)
		return 0, false
	}
	if cure := u.labelled(key, n.Value); cure != "" && n.Kind == yaml.ScalarNode {
		doc.Errorf(n, cure, "%s_%s is %q, not a number", key, u.Base, shorten(n.Value))
		return 0, false
	}
	return doc.Float(n, key+"_"+u.Base, low, high)
}

// schema is a number with one of the units.
func (u Unit) schema() *Schema {
	return &Schema{Type: []string{"string"}, Pattern: "^-?[0-9]{1,15}(\\.[0-9]{1,15})? ?(" + u.names("|") + ")$"}
}

// names lists the units that may be written.
func (u Unit) names(between string) string {
	names := make([]string, len(u.Known))
	for i, c := range u.Known {
		names[i] = c.Name
	}
	return strings.Join(names, between)
}

// fitting gives the first unit in which a number lies within the limits, and
// nothing when there is none.
func (u Unit) fitting(v, low, high float64) string {
	for _, c := range u.Known {
		if base := c.base(v); low <= base && base <= high {
			return c.Name
		}
	}
	return ""
}

func (doc *Document) quantity(n *yaml.Node, key string, u Unit, low, high float64) (float64, bool) {
	text, ok := doc.scalar(n, key)
	if !ok {
		return 0, false
	}
	if plainFloat(text) {
		doc.Errorf(n, unitCure(text, key, u, low, high), "%s %s has no unit", key, text)
		return 0, false
	}
	match := quantity().FindStringSubmatch(text)
	if match == nil {
		cure := fmt.Sprintf("write a number and its unit, such as %s: 12.5 %s", key, u.Known[0].Name)
		if commaQuantity().MatchString(text) {
			cure = "write a point: " + strings.Replace(text, ",", ".", 1)
		}
		doc.Errorf(n, cure, "%s is %q", key, shorten(text))
		return 0, false
	}
	for _, c := range u.Known {
		if c.Name == match[2] {
			written, _ := strconv.ParseFloat(match[1], 64)
			v := c.base(written)
			if v < low || v > high {
				doc.Errorf(n, fmt.Sprintf("write a quantity from %v to %v %s", low, high, u.Known[0].Name), "%s is %s", key, text)
				return 0, false
			}
			return v, true
		}
	}
	doc.Errorf(n, "units known here: "+u.names(", "), "%s has the unknown unit %q", key, shorten(match[2]))
	return 0, false
}

// unitCure shows a bare number with the unit that was most likely meant.
func unitCure(text, key string, u Unit, low, high float64) string {
	v, _ := strconv.ParseFloat(text, 64)
	switch unit := u.fitting(v, low, high); unit {
	case u.Known[0].Name:
		return fmt.Sprintf("write %s_%s: %s, or %s: %s %s", key, u.Base, text, key, text, unit)
	case "":
		return fmt.Sprintf("write %s_%s: and a number from %v to %v", key, u.Base, low, high)
	default:
		return fmt.Sprintf("if it is in %s, write %s: %s %s", unit, key, text, unit)
	}
}
