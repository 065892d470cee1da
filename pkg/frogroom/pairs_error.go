package frogroom

import "strings"

// PairsWishError is a wish that makes no sense.
type PairsWishError struct{ Message string }

func (e *PairsWishError) Error() string { return e.Message }

// NoPairsError says that no plan exists, and why.
type NoPairsError struct {
	Species string // empty when it is about all
	// Blocking is the smallest set of rules and wishes that together leave no
	// plan.
	Blocking []string
	// Most is the rule that blocks most pairs, with how many; empty when that
	// says nothing.
	Most string
}

// why is the reason in a few words.
func (e *NoPairsError) why() string {
	text := joined(e.Blocking)
	if e.Most != "" {
		text += " (" + e.Most + ")"
	}
	return text
}

func (e *NoPairsError) Error() string {
	text := "there is no plan"
	if e.Species != "" {
		text += " for " + e.Species
	}
	text += ": " + strings.Join(e.Blocking, "; ")
	if e.Most != "" {
		text += "; " + e.Most
	}
	return text
}
