package collection

import (
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Beginning is a phase of a pairing that began.
type Beginning struct {
	Phase species.PhaseName
	On    civil.Date
	At    strictyaml.Position
}

// Began gives the phases of a pairing that began, by date.
func (c *Collection) Began(pairing string) []Beginning {
	var began []Beginning
	for _, e := range c.DiaryOf(pairing) {
		if e.Began != "" {
			began = append(began, Beginning{Phase: e.Began, On: e.On, At: e.At})
		}
	}
	return began
}
