package planner

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"strings"
	"unicode"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// longest is the most bytes that a document may have, and mostFaults the most
// faults that are listed.
const (
	longest    = 64 << 20
	mostFaults = 20
)

// ReadDocument reads a document, strictly: keys that are unknown, missing or
// there twice, values of another kind, numbers that are not whole or out of
// range, dates that do not exist and phases that a chain does not have are
// faults, up to 20 of them in one run. The error is then a [*DocumentError]; an
// error of r comes back as it is. Whether a plan in it keeps the limits is left to
// [Check]. [Solve] takes the problem of any document that was read.
func ReadDocument(r io.Reader) (Document, error) {
	text, err := io.ReadAll(io.LimitReader(r, longest+1))
	if err != nil {
		return Document{}, err
	}
	if len(text) > longest {
		return Document{}, &DocumentError{[]Fault{{Problem: fmt.Sprintf("the document has more than %d MiB", longest>>20)}}}
	}
	d := reader{text: text, json: json.NewDecoder(bytes.NewReader(text))}
	d.json.UseNumber()
	var w written
	d.value("", reflect.ValueOf(&w).Elem())
	if len(d.faults) == 0 {
		d.end()
		d.faults = append(d.faults, w.faults()...)
	}
	if len(d.faults) > 0 {
		return Document{}, &DocumentError{d.faults[:min(len(d.faults), mostFaults)]}
	}
	return Document{w.Problem, w.Plan, w.Solver}, nil
}

// reader fills values from JSON and notes what does not fit.
type reader struct {
	text   []byte
	json   *json.Decoder
	faults []Fault
	broken bool // not JSON, or too many faults: nothing more is read
}

func (d *reader) fault(place, format string, args ...any) {
	d.faults = append(d.faults, Fault{place, fmt.Sprintf(format, args...)})
	d.broken = d.broken || len(d.faults) >= mostFaults
}

// token gives the next token, nil when there is none.
func (d *reader) token(place string) json.Token {
	t, err := d.json.Token()
	if err != nil && !d.broken {
		d.notJSON(place, err)
	}
	return t
}

func (d *reader) notJSON(place string, err error) {
	d.broken = true
	at := d.json.InputOffset()
	if bad := (*json.SyntaxError)(nil); errors.As(err, &bad) {
		at = max(at, bad.Offset)
	}
	line := 1 + bytes.Count(d.text[:min(int(at), len(d.text))], []byte("\n"))
	if errors.Is(err, io.EOF) || errors.Is(err, io.ErrUnexpectedEOF) {
		d.fault(place, "line %d: the document ends too early", line)
		return
	}
	d.fault(place, "line %d: this is not JSON: %v", line, err)
}

// end checks that nothing follows.
func (d *reader) end() {
	if _, err := d.json.Token(); !errors.Is(err, io.EOF) {
		d.fault("", "something follows after the end of the document")
	}
}

// value reads one value.
func (d *reader) value(place string, v reflect.Value) {
	t := d.token(place)
	if d.broken {
		return
	}
	if v.Kind() == reflect.Pointer {
		v.Set(reflect.New(v.Type().Elem()))
		v = v.Elem()
	}
	if date, isDate := v.Addr().Interface().(*civil.Date); isDate {
		d.date(place, t, date)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		d.object(place, t, v)
	case reflect.Slice:
		d.list(place, t, v)
	default:
		d.plain(place, t, v)
	}
}

// pass notes that a token is not what was expected, and passes over the rest of
// what it begins.
func (d *reader) pass(place string, t json.Token, expected string) {
	d.fault(place, "%s", expected)
	depth := 0
	for {
		switch t {
		case json.Delim('{'), json.Delim('['):
			depth++
		case json.Delim('}'), json.Delim(']'):
			depth--
		}
		if depth <= 0 || d.broken {
			return
		}
		t = d.token(place)
	}
}

func (d *reader) date(place string, t json.Token, date *civil.Date) {
	text, isText := t.(string)
	if !isText {
		d.pass(place, t, "has to be a date as YYYY-MM-DD")
	} else if err := date.UnmarshalText([]byte(text)); err != nil || text == "" {
		d.fault(place, "there is no date %.20q; dates are written YYYY-MM-DD", text)
	}
}

var plainKinds = map[reflect.Kind]string{reflect.String: "text", reflect.Bool: "true or false", reflect.Int: "a whole number"}

func (d *reader) plain(place string, t json.Token, v reflect.Value) {
	switch x := t.(type) {
	case string:
		if v.Kind() == reflect.String {
			if strings.ContainsFunc(x, func(r rune) bool { return !unicode.IsPrint(r) }) {
				d.fault(place, "%.20q has signs that cannot be printed", x)
			}
			v.SetString(x)
			return
		}
	case bool:
		if v.Kind() == reflect.Bool {
			v.SetBool(x)
			return
		}
	case json.Number:
		if v.Kind() == reflect.Int {
			n, err := x.Int64()
			if err != nil || v.OverflowInt(n) {
				d.fault(place, "%.20s is not a whole number, or out of range", x)
			}
			v.SetInt(n)
			return
		}
	}
	d.pass(place, t, "has to be "+plainKinds[v.Kind()])
}

func (d *reader) list(place string, t json.Token, v reflect.Value) {
	if t != json.Delim('[') {
		d.pass(place, t, "has to be a list")
		return
	}
	v.Set(reflect.MakeSlice(v.Type(), 0, 0))
	for i := 0; d.json.More() && !d.broken; i++ {
		item := reflect.New(v.Type().Elem()).Elem()
		d.value(fmt.Sprintf("%s[%d]", place, i), item)
		v.Set(reflect.Append(v, item))
	}
	d.token(place)
}

func (d *reader) object(place string, t json.Token, v reflect.Value) {
	if t != json.Delim('{') {
		d.pass(place, t, "has to be an object")
		return
	}
	seen := map[string]bool{}
	for d.json.More() && !d.broken {
		key, _ := d.token(place).(string)
		if d.broken {
			return
		}
		at := strings.TrimPrefix(place+"."+key, ".")
		field, known := fieldOf(v, key)
		switch {
		case !known:
			d.pass(at, d.token(at), "there is no such key")
			continue
		case seen[key]:
			d.fault(at, "stands twice")
		}
		seen[key] = true
		d.value(at, field)
	}
	d.token(place)
	for i := range v.NumField() {
		if key, optional := keyOf(v.Type().Field(i)); !seen[key] && !optional && !d.broken {
			d.fault(strings.TrimPrefix(place+"."+key, "."), "is missing")
		}
	}
}

// keyOf gives the key of a field, and whether it may be left out.
func keyOf(f reflect.StructField) (key string, optional bool) {
	key, options, _ := strings.Cut(f.Tag.Get("json"), ",")
	return key, options != ""
}

func fieldOf(v reflect.Value, key string) (field reflect.Value, known bool) {
	for i := range v.NumField() {
		if name, _ := keyOf(v.Type().Field(i)); name == key {
			return v.Field(i), true
		}
	}
	return reflect.Value{}, false
}
