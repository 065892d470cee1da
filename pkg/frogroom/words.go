package frogroom

import (
	"fmt"
	"strings"
)

// stageWords gives a stage, or a phase, as it reads in a sentence: front-legs
// becomes front legs.
func stageWords(stage string) string {
	switch stage {
	case "sale-ready", "warm-up":
		return stage
	}
	return strings.ReplaceAll(stage, "-", " ")
}

func inDays(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// joined writes "A, B and C".
func joined(words []string) string {
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}
