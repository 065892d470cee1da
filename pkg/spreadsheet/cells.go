package spreadsheet

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// nothing are the cells that say that something is not known.
var nothing = []string{"", "-", "--", "?", "unknown", "unk", "n/a", "na", "none", "nil"}

func empty(text string) bool { return slices.Contains(nothing, strings.ToLower(text)) }

// formula reports a cell that holds a formula, or the error of one, and not
// what came of it.
func formula(text string) bool {
	return len(text) > 1 && (text[0] == '=' || text[0] == '#' && strings.ContainsAny(text[len(text)-1:], "!?AE"))
}

func hasControl(text string) bool {
	return strings.ContainsFunc(text, func(r rune) bool {
		return r != '\n' && (unicode.IsControl(r) || unicode.Is(unicode.Cf, r) && r != '\u200c' && r != '\u200d' || r == '\u2028' || r == '\u2029')
	})
}

// sexes are the ways of writing a sex. Numbers are those of males, females and
// unknown, as animals are offered in the trade, with a point or a comma.
var sexes = map[string]string{
	"m": "male", "male": "male", "♂": "male", "1.0": "male", "1.0.0": "male", "1,0": "male", "1,0,0": "male",
	"f": "female", "female": "female", "♀": "female", "0.1": "female", "0.1.0": "female", "0,1": "female", "0,1,0": "female",
	"u": "unknown", "unsexed": "unknown", "0.0.1": "unknown", "0,0,1": "unknown", "juvenile": "unknown",
}

// units are the units of masses and lengths with their names in the file.
var units = map[string]string{
	"g": "g", "gram": "g", "grams": "g", "kg": "kg", "mg": "mg", "oz": "oz", "ounces": "oz",
	"mm": "mm", "cm": "cm", "in": "in", "inch": "in", "inches": "in",
}

var unitsOf = map[string][]string{"weight": {"g", "kg", "mg", "oz"}, "length": {"mm", "cm", "in"}}

var quantity = regexp.MustCompile(`^([0-9]{1,9})(?:([.,])([0-9]{1,9}))? ?([a-z]*)$`)

// quantityOf reads a number with the unit beside it, or else that of its header.
// What why says is wrong with it.
func quantityOf(key, text, header string) (value, why, cure string) {
	match := quantity.FindStringSubmatch(strings.ToLower(text))
	if match == nil {
		return "", "is no quantity", "write a number and its unit, such as 12.5 " + unitsOf[key][0]
	}
	whole, comma, behind, unit := match[1], match[2] == ",", match[3], match[4]
	if unit == "" {
		unit = header
	}
	unit = units[unit]
	switch {
	case unit == "":
		return "", "has no unit", "write the unit into the header, such as " + key + " (" + unitsOf[key][0] + ")"
	case !slices.Contains(unitsOf[key], unit):
		return "", "has no unit of a " + key, "units known here: " + strings.Join(unitsOf[key], ", ")
	case comma && len(behind) == 3:
		return "", "could be thousands or a fraction", "write a point before the fraction, and none for thousands"
	}
	number := whole
	if behind != "" {
		number += "." + behind
	}
	if v, _ := strconv.ParseFloat(number, 64); v == 0 {
		return "", "is 0", "leave it empty when it was not measured"
	}
	return number + " " + unit, "", ""
}
