package civil

import (
	"fmt"
	"strings"
)

// ParseError says why a text is not a date or a span. It is what [Parse] and
// [ParseSpan] return.
type ParseError struct {
	Text   string // the text that was given
	Reason string // what is wrong with it, as in "is not a date: there is no month 13"
	Cure   string // what to write instead, without a full stop
}

func (e *ParseError) Error() string {
	return fmt.Sprintf("%.40q %s; %s", e.Text, e.Reason, e.Cure)
}

const wantISO = "write year, month and day as 2027-03-19"

// Parse reads a date written as YYYY-MM-DD (ISO 8601 extended format), and
// nothing else: no blanks, no signs, no other order. Errors are *[ParseError].
func Parse(s string) (Date, error) {
	if len(s) != 10 || s[4] != '-' || s[7] != '-' {
		return 0, &ParseError{Text: s, Reason: "is not a date: it is not written YYYY-MM-DD", Cure: cureFor(s)}
	}
	var ymd [3]int
	for i, part := range [3]string{s[:4], s[5:7], s[8:]} {
		for _, c := range []byte(part) {
			if c < '0' || c > '9' {
				return 0, &ParseError{Text: s, Reason: "is not a date: it is not written YYYY-MM-DD", Cure: cureFor(s)}
			}
			ymd[i] = ymd[i]*10 + int(c-'0')
		}
	}
	year, month, day := ymd[0], ymd[1], ymd[2]
	if d, ok := of(year, month, day); ok {
		return d, nil
	}
	switch {
	case year < 1:
		return 0, &ParseError{Text: s, Reason: "is not a date: there is no year 0000", Cure: wantISO}
	case month < 1 || month > 12:
		return 0, &ParseError{Text: s, Reason: fmt.Sprintf("is not a date: there is no month %02d", month), Cure: wantISO}
	default:
		return 0, &ParseError{
			Text:   s,
			Reason: fmt.Sprintf("is not a date: %04d-%02d has days 01 to %02d", year, month, daysIn(year, month)),
			Cure:   "check the day",
		}
	}
}

// ParseSpan reads a span written as A..B, both dates included, or a single
// date as a span of one day. Errors are *[ParseError].
func ParseSpan(s string) (Span, error) {
	first, last, found := strings.Cut(s, "..")
	if !found {
		d, err := Parse(s)
		if err != nil {
			return Span{}, err
		}
		return Span{First: d, Last: d}, nil
	}
	a, err := Parse(first)
	if err != nil {
		return Span{}, err
	}
	b, err := Parse(last)
	if err != nil {
		return Span{}, err
	}
	if b < a {
		return Span{}, &ParseError{Text: s, Reason: "ends before it begins", Cure: fmt.Sprintf("write %s..%s", b, a)}
	}
	return Span{First: a, Last: b}, nil
}
