package spreadsheet

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// DateOrder says how days are meant that could be two, such as 03/04/2025.
type DateOrder int

// The orders. Days that can only be one are understood in every order but
// [OnlyISO].
const (
	Unstated   DateOrder = iota // what could be two days is left out
	OnlyISO                     // 2006-01-02 and nothing else
	DayFirst                    // 2.1.2006, 2/1/2006
	MonthFirst                  // 1/2/2006
)

// The years in which a date is taken for meant, as in the collection file.
const firstYear, lastYear = 1900, 2199

var months = []string{"jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"}

// dateOf reads a day; why says what is wrong with a text that is none.
func dateOf(text string, order DateOrder) (d civil.Date, why, cure string) {
	day, _, _ := strings.Cut(strings.Replace(text, "T", " ", 1), " 00:00") // a spreadsheet adds midnight
	if d, err := civil.Parse(day); err == nil {
		return inRange(d)
	}
	if order == OnlyISO {
		return 0, "is not written 2006-01-02", "--dates says how dates are written"
	}
	parts := strings.FieldsFunc(day, func(r rune) bool { return strings.ContainsRune("./- ,", r) })
	if len(parts) != 3 {
		return 0, "is no day", "write year, month and day as 2025-03-19"
	}
	if d, ok := named(parts); ok {
		return inRange(d)
	}
	var n [3]int
	for i, p := range parts {
		v, err := strconv.Atoi(p)
		if err != nil || v < 0 {
			return 0, "is no day", "write year, month and day as 2025-03-19"
		}
		n[i] = v
	}
	switch {
	case len(parts[0]) == 4:
		if d, ok := exact(n[0], n[1], n[2]); ok {
			return inRange(d)
		}
		return 0, "is no day", "write year, month and day as 2025-03-19"
	case len(parts[2]) != 4:
		return 0, "has no year of four digits", "write it as 2025-03-19"
	}
	return ordered(n, order)
}

// ordered reads a day and a month before a year.
func ordered(n [3]int, order DateOrder) (d civil.Date, why, cure string) {
	day, isDay := exact(n[2], n[1], n[0])
	month, isMonth := exact(n[2], n[0], n[1])
	switch {
	case order == DayFirst && !isDay && isMonth, order == MonthFirst && !isMonth && isDay:
		return 0, "is no day in the order that --dates states", "correct it, or state the other order"
	case !isDay && !isMonth:
		return 0, "is no day", "write year, month and day as 2025-03-19"
	case order == DayFirst, order == Unstated && (!isMonth || day == month):
		return inRange(day)
	case order == MonthFirst, !isDay:
		return inRange(month)
	}
	return 0, fmt.Sprintf("could be %v or %v", day, month), "say --dates day-first or --dates month-first"
}

// named reads a date whose month is a word: 2 Jan 2006, Jan 2 2006.
func named(parts []string) (civil.Date, bool) {
	for i, word := range parts[:2] {
		if len(word) < 3 {
			continue
		}
		for m, name := range months {
			day, noDay := strconv.Atoi(parts[1-i])
			year, noYear := strconv.Atoi(parts[2])
			if strings.HasPrefix(strings.ToLower(word), name) && noDay == nil && noYear == nil {
				return exact(year, m+1, day)
			}
		}
	}
	return 0, false
}

// exact gives a day, and false when there is none.
func exact(year, month, day int) (civil.Date, bool) {
	d, err := civil.Parse(fmt.Sprintf("%04d-%02d-%02d", year, month, day))
	return d, err == nil
}

func inRange(d civil.Date) (civil.Date, string, string) {
	if year, _, _ := d.YMD(); year < firstYear || year > lastYear {
		return 0, fmt.Sprintf("is in the year %04d", year), fmt.Sprintf("write a year from %d to %d", firstYear, lastYear)
	}
	return d, "", ""
}
