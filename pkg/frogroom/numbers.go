package frogroom

import (
	"math"
	"strconv"
)

func degrees(low, high float64) string { return span(low, high) + " °C" }

// span writes a range of numbers, one number where both ends are the same.
func span(low, high float64) string {
	if plain(low) == plain(high) {
		return plain(low)
	}
	return plain(low) + " to " + plain(high)
}

// plain writes a number with up to two places.
func plain(x float64) string { return strconv.FormatFloat(rounded(x), 'f', -1, 64) }

func rounded(x float64) float64 { return math.Round(x*100) / 100 }
