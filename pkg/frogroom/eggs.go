package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// eggs gives when a pairing is to lay; ok is false where nobody knows, and once one
// of its dams has laid, in its name or without.
func (r *Room) eggs(p planned, on civil.Date) (w civil.Window, ok bool) {
	i := slices.IndexFunc(p.cycle.Stages, func(s season.StageWindow) bool { return s.Stage == development.Laid.String() })
	clutches, _ := upTo(on, r.laid[p.ID])
	if i < 0 || clutches > 0 {
		return civil.Window{}, false
	}
	for _, dam := range p.Dams {
		if days := r.breeders.Laid(dam, on); len(days) > 0 && days[len(days)-1] >= p.cycle.RainStart {
			return civil.Window{}, false
		}
	}
	return p.cycle.Stages[i].Window, true
}

// noEggs says that eggs are late since the rain began; nothing when they are not.
func (r *Room) noEggs(p planned, on civil.Date) (w civil.Window, text string) {
	w, waits := r.eggs(p, on)
	if !waits || !p.raining() || w.Late >= on {
		return w, ""
	}
	return w, fmt.Sprintf("eggs expected by %s, none recorded since the rain began on %s", w.Late, p.cycle.RainStart)
}

// unnamed gives the clutch that a dam of a pairing has laid since its rain began and
// that names no pairing, while the plan waits for one; nil for none.
func (r *Room) unnamed(p planned, on civil.Date) *collection.Clutch {
	if clutches, _ := upTo(on, r.laid[p.ID]); clutches > 0 || !p.raining() {
		return nil
	}
	days := civil.Span{First: p.cycle.RainStart, Last: min(on, p.cycle.Span().Last)}
	for i := range r.Collection.Clutches {
		k := &r.Collection.Clutches[i]
		hers := slices.ContainsFunc(k.Dams, func(id string) bool { return slices.Contains(p.Dams, id) })
		if hers && k.Pairing == "" && days.Contains(r.Collection.Since(k.ID)) {
			return k
		}
	}
	return nil
}

// unnamedText says so.
func unnamedText(k *collection.Clutch, p planned) string {
	return fmt.Sprintf("clutch %s has a dam of pairing %s, whose rain began on %s, but names no pairing, so that the plan waits for another clutch", k.ID, p.ID, p.cycle.RainStart)
}

// raining reports whether the rain of a pairing is recorded to have begun.
func (p planned) raining() bool {
	return slices.ContainsFunc(p.cycle.Phases, func(ph season.Dated) bool { return ph.Name == season.Rain && ph.Recorded })
}
