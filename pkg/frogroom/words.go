package frogroom

import "strings"

// stageWords gives a stage, or a phase, as it reads in a sentence: front-legs
// becomes front legs.
func stageWords(stage string) string {
	switch stage {
	case "sale-ready":
		return stage
	case "warm-up":
		return stage
	}
	return strings.ReplaceAll(stage, "-", " ")
}
