package frogroom

import (
	"context"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// Wish is a pairing that does not stand in the file. Exactly one of Start and
// ReadyBy is known.
type Wish struct {
	Dams, Sires    []string // ids; at least one of each, nobody twice
	Start, ReadyBy civil.Date
	CertaintyPct   int // for ReadyBy, 50 to 95
}

// SeasonOf plans one pairing that does not stand in the file. It is judged by
// all rules, so that a wrong sex or species is a refusal and no error. The
// error is a *[collection.UnknownError], a *[WishError] or a *[NoCycleError].
func (r *Room) SeasonOf(on civil.Date, w Wish) (Season, error) {
	return r.PlanSeason(context.Background(), on, Planning{Wish: &w})
}

// wished gives a wish as if it stood in the file.
func (r *Room) wished(w Wish) *collection.Pairing {
	dam, _ := r.Collection.Animal(w.Dams[0])
	return &collection.Pairing{
		ID: "this pairing", Species: dam.Species, Dams: w.Dams, Sires: w.Sires,
		Start: w.Start, ReadyBy: w.ReadyBy, CertaintyPct: w.CertaintyPct,
	}
}

// possible says why a wish cannot be planned.
func (r *Room) possible(w Wish) error {
	all := slices.Concat(w.Sires, w.Dams)
	for i, id := range all {
		if _, err := r.Ancestry.Number(id); err != nil {
			return err
		}
		if slices.Contains(all[:i], id) {
			return &WishError{fmt.Sprintf("%s stands in the pairing twice", id)}
		}
	}
	switch {
	case len(w.Dams) == 0 || len(w.Sires) == 0:
		return &WishError{"a pairing needs at least one dam and one sire"}
	case w.Start.Known() == w.ReadyBy.Known():
		return &WishError{"give either a start or a date by which young are to be ready"}
	case w.ReadyBy.Known() && (w.CertaintyPct < 50 || w.CertaintyPct > 95):
		return &WishError{fmt.Sprintf("a certainty of %d %% is not from 50 to 95", w.CertaintyPct)}
	}
	return nil
}

// WishError says why a wish cannot be planned.
type WishError struct{ Reason string }

func (e *WishError) Error() string { return e.Reason }
