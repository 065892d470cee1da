// Package rearing says how far each clutch of a collection has come, when it reaches
// what is ahead, what it needs on the way, and when its young may leave:
//
//	r := rearing.New(collection, ancestry, models)
//	report, err := r.Report("C-26-03", today)
//
// It turns the looks, counts and temperatures of the diary into what the models of
// development take, and lets the clutches of a species learn from each other.
// Nothing here reads a clock; of the diary only what stands in it up to the day
// counts.
package rearing

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Rearing is the clutches of a collection with what they have taught, from [New]. It can
// be used by several goroutines at once.
type Rearing struct {
	Collection *collection.Collection
	Ancestry   *kin.Ancestry

	models  map[string]*development.Model // by species
	lessons *lessons
}

// New takes a collection, its ancestry by [kin.Of], and a model for each species, see
// [ModelOf]. It panics when a species has none.
func New(c *collection.Collection, a *kin.Ancestry, models map[string]*development.Model) *Rearing {
	for _, p := range c.Species {
		if models[p.ID] == nil {
			panic(fmt.Sprintf("rearing: no model of the species %q", p.ID))
		}
	}
	return &Rearing{Collection: c, Ancestry: a, models: models, lessons: newLessons(c)}
}

// ModelOf gives the model of a species. Temperatures that are not safe are told here,
// with the line of the diary, and not by the model. The error is that of
// [development.NewModel].
func ModelOf(p *species.Profile) (*development.Model, error) {
	windows := p.Clone()
	windows.Safe = species.Range{}
	return development.NewModel(windows)
}

// Taught gives the last day up to which the diary has something to teach by a day.
func (r *Rearing) Taught(on civil.Date) civil.Date { return min(on, r.lessons.newest) }
