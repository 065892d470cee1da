// Package figures writes numbers as keepers read them.
package figures

import (
	"math"
	"strconv"
)

// Degrees writes a range of temperatures, °C.
func Degrees(low, high float64) string { return Span(low, high) + " °C" }

// Span writes a range of numbers, one number where both ends are the same.
func Span(low, high float64) string {
	if Plain(low) == Plain(high) {
		return Plain(low)
	}
	return Plain(low) + " to " + Plain(high)
}

// Plain writes a number with up to two places.
func Plain(x float64) string { return strconv.FormatFloat(Rounded(x), 'f', -1, 64) }

// Rounded gives a number to two places.
func Rounded(x float64) float64 { return math.Round(x*100) / 100 }
