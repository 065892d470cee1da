package frogroom

import "github.com/spawnwright/spawnwright/pkg/strictyaml"

// withCure adds "did you mean" to a message where a known name is near.
func withCure(message, name string, known []string) string {
	if cure := strictyaml.DidYouMean(name, known); cure != "" {
		return message + "; " + cure
	}
	return message
}
