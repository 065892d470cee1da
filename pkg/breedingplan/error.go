package breedingplan

import "strings"

// WishError is a wish that makes no sense.
type WishError struct{ Message string }

func (e *WishError) Error() string { return e.Message }

// NoPlanError says that no plan exists, and why.
type NoPlanError struct {
	Species string // empty when it is about all
	// Blocking is the smallest set of rules and wishes that together leave no
	// plan.
	Blocking []string
	// Most is the rule that blocks most pairs, with how many; empty when that
	// says nothing.
	Most string
}

// why is the reason in a few words.
func (e *NoPlanError) why() string {
	text := joined(e.Blocking)
	if e.Most != "" {
		text += " (" + e.Most + ")"
	}
	return text
}

func (e *NoPlanError) Error() string {
	text := "there is no plan"
	if e.Species != "" {
		text += " for " + e.Species
	}
	if len(e.Blocking) == 1 && strings.HasPrefix(e.Most, e.Blocking[0]+" alone ") {
		return text + ": " + e.Most // which says both
	}
	text += ": " + strings.Join(e.Blocking, "; ")
	if e.Most != "" {
		text += "; " + e.Most
	}
	return text
}
