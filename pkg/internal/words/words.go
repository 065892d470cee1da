// Package words writes stages, days and lists as they read in a sentence.
package words

import (
	"fmt"
	"strings"
)

// Stage gives a stage, or a phase, as it reads in a sentence: front-legs
// becomes front legs.
func Stage(stage string) string {
	switch stage {
	case "sale-ready", "warm-up":
		return stage
	}
	return strings.ReplaceAll(stage, "-", " ")
}

// Days writes "1 day" or "3 days".
func Days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// And writes "A, B and C".
func And(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

// Planned gives a stage of young that nobody has seen yet: eggs, and not laid.
func Planned(stage string) string {
	if stage == "laid" {
		return "eggs"
	}
	return Stage(stage)
}

// At names a clutch with its place.
func At(id, place string) string {
	if place == "" {
		return id
	}
	return id + " (" + place + ")"
}
