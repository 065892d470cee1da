package parcel

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// ForecastError is a place in a forecast table that cannot be read.
type ForecastError struct {
	Line    int    // counted from 1
	Column  string // of the header; empty for the whole line
	Message string // what is wrong
	Cure    string // what to do
}

func (e *ForecastError) Error() string {
	where := fmt.Sprintf("line %d", e.Line)
	if e.Column != "" {
		where += ", " + e.Column
	}
	return fmt.Sprintf("%s: %s; %s", where, e.Message, e.Cure)
}

const (
	mostForecast = 1 << 20 // bytes
	mostProblems = 20
	coldest      = -60.0 // °C; beyond these a number is a slip
	hottest      = 60.0
)

// ReadForecast reads a table of temperatures with a header: a column date, and
// low_c and high_c, or low_f and high_f for °F; others, such as place, are
// passed over. Columns are divided by commas, semicolons or tabs; where not by
// commas, one may stand before the fraction. A day that stands several times, once
// for each place on the way, has the lowest and the highest of all. Temperatures
// without a unit are refused.
//
// The error joins a *[ForecastError] for each problem, at most 20, or is that of
// the reader; the forecast knows nothing then. A table above 1 MiB is refused.
func ReadForecast(r io.Reader) (Forecast, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostForecast+1))
	if err != nil {
		return Forecast{}, err
	}
	if len(data) > mostForecast {
		return Forecast{}, &ForecastError{Line: 1, Message: "the table is larger than 1 MiB", Cure: "leave only the days of the journey"}
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	rows := csv.NewReader(strings.NewReader(text))
	rows.Comma = divider(text)
	rows.FieldsPerRecord = -1
	rows.TrimLeadingSpace = true
	header, err := rows.Read()
	if errors.Is(err, io.EOF) {
		return Forecast{}, &ForecastError{Line: 1, Message: "the table is empty", Cure: "begin with a line date,low_c,high_c"}
	}
	if err != nil {
		return Forecast{}, tableError(err)
	}
	t, err := newTable(header)
	if err != nil {
		return Forecast{}, err
	}
	t.comma = rows.Comma != ','
	return t.read(rows)
}

// divider is the first of the usual ones in the header.
func divider(text string) rune {
	line, _, _ := strings.Cut(text, "\n")
	if i := strings.IndexAny(line, ",;\t"); i >= 0 {
		return rune(line[i])
	}
	return ','
}

// table reads rows by the header.
type table struct {
	date, low, high int // columns
	names           [3]string
	fahrenheit      bool
	comma           bool // may stand before the fraction
	forecast        Forecast
	problems        []error
}

func newTable(header []string) (*table, error) {
	at := make(map[string]int)
	for i, name := range header {
		name = strings.ToLower(strings.TrimSpace(name))
		if _, twice := at[name]; twice {
			return nil, &ForecastError{Line: 1, Column: name, Message: "the column stands twice", Cure: "keep one"}
		}
		at[name] = i
	}
	has := func(names ...string) bool {
		for _, name := range names {
			if _, ok := at[name]; !ok {
				return false
			}
		}
		return true
	}
	switch {
	case !has("date"):
		return nil, &ForecastError{Line: 1, Message: "there is no column date", Cure: "write a header: date,low_c,high_c"}
	case has("low_c", "high_c") && !has("low_f") && !has("high_f"):
		return &table{date: at["date"], low: at["low_c"], high: at["high_c"], names: [3]string{"date", "low_c", "high_c"}}, nil
	case has("low_f", "high_f") && !has("low_c") && !has("high_c"):
		return &table{date: at["date"], low: at["low_f"], high: at["high_f"], names: [3]string{"date", "low_f", "high_f"}, fahrenheit: true}, nil
	}
	return nil, &ForecastError{Line: 1, Message: "the temperatures have no unit, or two", Cure: "name the columns low_c and high_c, or low_f and high_f"}
}

func (t *table) read(rows *csv.Reader) (Forecast, error) {
	for len(t.problems) < mostProblems {
		row, err := rows.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.problems = append(t.problems, tableError(err))
			break
		}
		t.row(rows, row)
	}
	if err := errors.Join(t.problems...); err != nil {
		return Forecast{}, err
	}
	return t.forecast, nil
}

func (t *table) row(rows *csv.Reader, row []string) {
	line, _ := rows.FieldPos(0)
	date, err := civil.Parse(cell(row, t.date))
	var wrong *civil.ParseError
	if errors.As(err, &wrong) {
		t.problems = append(t.problems, &ForecastError{line, t.names[0], fmt.Sprintf("%.40q %s", wrong.Text, wrong.Reason), wrong.Cure})
		return
	}
	low, okLow := t.degrees(line, t.names[1], cell(row, t.low))
	high, okHigh := t.degrees(line, t.names[2], cell(row, t.high))
	switch {
	case !okLow || !okHigh:
	case low > high:
		t.problems = append(t.problems, &ForecastError{line, "", "the lowest temperature is above the highest", "change them over"})
	default:
		t.forecast.add(date, Outside{low, high})
	}
}

func (t *table) degrees(line int, column, text string) (float64, bool) {
	number := text
	if t.comma {
		number = strings.Replace(text, ",", ".", 1)
	}
	x, err := strconv.ParseFloat(number, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		t.problems = append(t.problems, &ForecastError{line, column, fmt.Sprintf("%q is not a number", text), "write degrees, with a point"})
		return 0, false
	}
	if t.fahrenheit {
		x = celsius(x)
	}
	if x < coldest || x > hottest {
		t.problems = append(t.problems, &ForecastError{line, column, fmt.Sprintf("%s is not a temperature of the air", text), "look at the unit of the column"})
		return 0, false
	}
	return x, true
}

// cell gives a cell, empty where the row is too short.
func cell(row []string, i int) string {
	if i >= len(row) {
		return ""
	}
	return strings.TrimSpace(row[i])
}

// tableError says what the reader of the table found in our words.
func tableError(err error) error {
	var broken *csv.ParseError
	if !errors.As(err, &broken) {
		return err
	}
	return &ForecastError{Line: broken.Line, Message: broken.Err.Error(), Cure: "put a text with a quotation mark in it between two"}
}
