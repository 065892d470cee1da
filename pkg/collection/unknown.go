package collection

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// UnknownError is an id that nothing of its kind has.
type UnknownError struct {
	Kind    string // "animal", "clutch", "animal or clutch", "pairing" or "species"
	ID      string
	Nearest string // the id that may have been meant; empty when none is near
}

func (e *UnknownError) Error() string {
	text := fmt.Sprintf("there is no %s %q", e.Kind, e.ID)
	if e.Nearest != "" {
		text += fmt.Sprintf("; did you mean %q?", e.Nearest)
	}
	return text
}

// Unknown gives the error for an id that nothing of a kind has in the collection. It
// panics when there is no such kind.
func (c *Collection) Unknown(kind, id string) *UnknownError {
	var ids []string
	switch kind {
	case "animal":
		ids = idsOf(c.Animals, func(a *Animal) string { return a.ID })
	case "clutch":
		ids = idsOf(c.Clutches, func(k *Clutch) string { return k.ID })
	case "animal or clutch":
		ids = slices.Concat(idsOf(c.Animals, func(a *Animal) string { return a.ID }), idsOf(c.Clutches, func(k *Clutch) string { return k.ID }))
	case "pairing":
		ids = idsOf(c.Pairings, func(p *Pairing) string { return p.ID })
	case "species":
		ids = idsOf(c.Species, func(p **species.Profile) string { return (*p).ID })
	default:
		panic(fmt.Sprintf("collection: there is no kind %q", kind))
	}
	return &UnknownError{Kind: kind, ID: id, Nearest: strictyaml.Nearest(id, ids)}
}

func idsOf[T any](list []T, id func(*T) string) []string {
	ids := make([]string, len(list))
	for i := range list {
		ids[i] = id(&list[i])
	}
	return ids
}
