package civil_test

import (
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

const (
	notISO  = "is not a date: it is not written YYYY-MM-DD"
	wantISO = "write year, month and day as 2027-03-19"
)

func TestParse(t *testing.T) {
	for _, row := range []struct {
		text string
		want civil.Date
	}{
		{"0001-01-01", civil.First},
		{"9999-12-31", civil.Last},
		{"2027-03-19", civil.Of(2027, time.March, 19)},
		{"2028-02-29", civil.Of(2028, time.February, 29)},
	} {
		d, err := civil.Parse(row.text)
		require.NoError(t, err, row.text)
		assert.Equal(t, row.want, d, row.text)
	}
}

func TestParseRefuses(t *testing.T) {
	for _, row := range []struct {
		name, text, reason, cure string
	}{
		{"empty", "", notISO, wantISO},
		{"blank before", " 2027-03-19", notISO, wantISO},
		{"blank behind", "2027-03-19 ", notISO, wantISO},
		{"one digit", "2027-3-19", notISO, "write 2027-03-19"},
		{"day first", "19-03-2027", notISO, "write 2027-03-19"},
		{"points", "19.03.2027", notISO, "write 2027-03-19"},
		{"day or month first", "3/4/2027", notISO, "write 2027-04-03 or 2027-03-04, whichever is meant"},
		{"the same day either way", "4.4.2027", notISO, "write 2027-04-04"},
		{"no day either way", "31.13.2027", notISO, wantISO},
		{"no day of that month", "2027-2-30", notISO, wantISO},
		{"a year that is none", "3.4.0000", notISO, wantISO},
		{"signs that differ", "3.4-2027", notISO, wantISO},
		{"a word in it", "3.May.2027", notISO, wantISO},
		{"a number beyond all", "3.99999999999999999999.2027", notISO, wantISO},
		{"slashes", "2027/03/19", notISO, "write 2027-03-19"},
		{"without dashes", "20270319", notISO, wantISO},
		{"two digits of a year", "27-03-19", notISO, wantISO},
		{"with a time", "2027-03-19T00:00:00Z", notISO, wantISO},
		{"year and month", "2027-03", notISO, wantISO},
		{"signs in the places of digits", "+027--3-19", notISO, wantISO},
		{"letters", "2027-0a-19", notISO, wantISO},
		{"other digits", "٢٠٢٧-٠٣-١٩", notISO, wantISO},
		{"ten bytes that are not digits", "２-１-", notISO, wantISO},
		{"year 0", "0000-01-01", "is not a date: there is no year 0000", wantISO},
		{"month 0", "2027-00-10", "is not a date: there is no month 00", wantISO},
		{"month 13", "2027-13-10", "is not a date: there is no month 13", wantISO},
		{"day 0", "2027-03-00", "is not a date: 2027-03 has days 01 to 31", "check the day"},
		{"day 32", "2027-03-32", "is not a date: 2027-03 has days 01 to 31", "check the day"},
		{"day 31 of a short month", "2027-04-31", "is not a date: 2027-04 has days 01 to 30", "check the day"},
		{"29 February", "2027-02-29", "is not a date: 2027-02 has days 01 to 28", "check the day"},
		{"29 February of a full century", "2100-02-29", "is not a date: 2100-02 has days 01 to 28", "check the day"},
		{"30 February of a leap year", "2028-02-30", "is not a date: 2028-02 has days 01 to 29", "check the day"},
	} {
		t.Run(row.name, func(t *testing.T) {
			d, err := civil.Parse(row.text)
			assert.Zero(t, d)
			var problem *civil.ParseError
			require.ErrorAs(t, err, &problem)
			assert.Equal(t, civil.ParseError{Text: row.text, Reason: row.reason, Cure: row.cure}, *problem)
		})
	}
}

func TestParseErrorText(t *testing.T) {
	_, err := civil.Parse("2027-02-29")
	assert.EqualError(t, err, `"2027-02-29" is not a date: 2027-02 has days 01 to 28; check the day`)
	_, err = civil.Parse(strings.Repeat("9", 1000) + "\x1b[2J")
	assert.Less(t, len(err.Error()), 200, "a long text is cut")
	_, err = civil.Parse("\x1b[2J")
	assert.NotContains(t, err.Error(), "\x1b", "no control character reaches a terminal")
}

func TestParseSpan(t *testing.T) {
	a, b := civil.Of(2027, time.May, 8), civil.Of(2027, time.May, 16)
	for _, row := range []struct {
		text string
		want civil.Span
	}{
		{"2027-05-08..2027-05-16", civil.Span{First: a, Last: b}},
		{"2027-05-08..2027-05-08", civil.Span{First: a, Last: a}},
		{"2027-05-08", civil.Span{First: a, Last: a}},
	} {
		s, err := civil.ParseSpan(row.text)
		require.NoError(t, err, row.text)
		assert.Equal(t, row.want, s, row.text)
	}
}

func TestParseSpanRefuses(t *testing.T) {
	for _, row := range []struct {
		name, text string
		want       civil.ParseError
	}{
		{"empty", "", civil.ParseError{Text: "", Reason: notISO, Cure: wantISO}},
		{"no end", "2027-05-08..", civil.ParseError{Text: "", Reason: notISO, Cure: wantISO}},
		{"no beginning", "..2027-05-08", civil.ParseError{Text: "", Reason: notISO, Cure: wantISO}},
		{"blanks", "2027-05-08 .. 2027-05-16", civil.ParseError{Text: "2027-05-08 ", Reason: notISO, Cure: wantISO}},
		{"three points", "2027-05-08...2027-05-16", civil.ParseError{Text: ".2027-05-16", Reason: notISO, Cure: wantISO}},
		{"three dates", "2027-05-08..2027-05-09..2027-05-10", civil.ParseError{Text: "2027-05-09..2027-05-10", Reason: notISO, Cure: wantISO}},
		{"bad end", "2027-05-08..2027-05-32", civil.ParseError{Text: "2027-05-32", Reason: "is not a date: 2027-05 has days 01 to 31", Cure: "check the day"}},
		{"backwards", "2027-05-16..2027-05-08", civil.ParseError{
			Text: "2027-05-16..2027-05-08", Reason: "ends before it begins", Cure: "write 2027-05-08..2027-05-16",
		}},
	} {
		t.Run(row.name, func(t *testing.T) {
			s, err := civil.ParseSpan(row.text)
			assert.Zero(t, s)
			var problem *civil.ParseError
			require.ErrorAs(t, err, &problem)
			assert.Equal(t, row.want, *problem)
		})
	}
}

func TestSpanTextReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anyDate().Draw(t, "a"), anyDate().Draw(t, "b")
		s := civil.Span{First: min(a, b), Last: max(a, b)}
		back, err := civil.ParseSpan(s.String())
		if err != nil || back != s {
			t.Fatalf("%s reads back as %s, %v", s, back, err)
		}
	})
}

// FuzzParse compares with the standard library, which takes the same texts but
// for year 0000.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"2027-03-19", "2027-02-29", "0000-01-01", "", "2027-3-19", "９９９９-01-01"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, err := civil.Parse(s)
		want, wantErr := time.Parse(time.DateOnly, s)
		if wantErr == nil && want.Year() == 0 {
			wantErr = errors.New("no year 0")
		}
		if (err == nil) != (wantErr == nil) {
			t.Fatalf("Parse(%q): %v, the standard library: %v", s, err, wantErr)
		}
		if err == nil && (!d.UTC().Equal(want) || d.String() != s) {
			t.Fatalf("Parse(%q) gives %s", s, d)
		}
		var problem *civil.ParseError
		if err != nil && (d != 0 || !errors.As(err, &problem) || problem.Reason == "" || problem.Cure == "") {
			t.Fatalf("Parse(%q) gives %d and %#v", s, d, err)
		}
	})
}

func FuzzParseSpan(f *testing.F) {
	for _, s := range []string{"2027-05-08..2027-05-16", "2027-05-08", "2027-05-16..2027-05-08", "..", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		span, err := civil.ParseSpan(s)
		if err != nil {
			if span != (civil.Span{}) {
				t.Fatalf("ParseSpan(%q) gives %s with an error", s, span)
			}
			return
		}
		if span.Days() < 1 {
			t.Fatalf("ParseSpan(%q) gives %d days", s, span.Days())
		}
		if back, err := civil.ParseSpan(span.String()); err != nil || back != span {
			t.Fatalf("%s reads back as %s, %v", span, back, err)
		}
	})
}
