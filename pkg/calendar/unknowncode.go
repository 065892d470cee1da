package calendar

import (
	"fmt"
	"slices"
	"strings"
)

// UnknownCodeError says that no public holidays are known for a code.
type UnknownCodeError struct {
	Code    string
	Nearest string   // what may have been meant; empty when nothing is near
	Country []string // the known codes of the same country, sorted
}

func (e *UnknownCodeError) Error() string {
	text := fmt.Sprintf("no public holidays are known for %q", e.Code)
	switch {
	case e.Nearest != "":
		text += fmt.Sprintf("; did you mean %q?", e.Nearest)
	case len(e.Country) == 0:
		return text + "; write an ISO 3166 code in small letters, such as de, de-by or us"
	}
	if len(e.Country) > 1 {
		text += "; known there: " + strings.Join(e.Country, ", ")
	}
	return text
}

// slips are codes that people write for another reason than a slip of the finger.
var slips = map[string]string{"uk": "gb", "gb-eaw": "gb", "usa": "us", "el": "gr"}

func unknownCode(code string) *UnknownCodeError {
	tidy := strings.ReplaceAll(strings.ToLower(strings.TrimSpace(code)), "_", "-")
	if meant, ok := slips[tidy]; ok {
		tidy = meant
	}
	e := &UnknownCodeError{Code: code}
	country, _, _ := strings.Cut(tidy, "-")
	for _, known := range Codes() {
		if known == country || strings.HasPrefix(known, country+"-") {
			e.Country = append(e.Country, known)
		}
	}
	e.Nearest = nearest(tidy, e.Country)
	return e
}

// nearest gives tidy itself when it is known, a known code at one edit from it,
// or its country. Two letters are too few for a guess.
func nearest(tidy string, country []string) string {
	if _, ok := lists[tidy]; ok {
		return tidy
	}
	if len(tidy) > 2 {
		for _, candidates := range [][]string{country, Codes()} {
			for _, c := range candidates {
				if oneEdit(tidy, c) {
					return c
				}
			}
		}
	}
	if name, _, isRegion := strings.Cut(tidy, "-"); isRegion && slices.Contains(country, name) {
		return name
	}
	return ""
}

// oneEdit reports whether one letter put in, taken out or changed turns a into b.
func oneEdit(a, b string) bool {
	if len(a) > len(b) {
		a, b = b, a
	}
	i := 0
	for i < len(a) && a[i] == b[i] {
		i++
	}
	switch len(b) - len(a) {
	case 0:
		return i < len(a) && a[i+1:] == b[i+1:]
	case 1:
		return a[i:] == b[i+1:]
	}
	return false
}
