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
	w, known := p.laying()
	if !known || !r.awaits(p.Pairing, on) || r.damLaid(p, on) {
		return civil.Window{}, false
	}
	return w, true
}

// damLaid reports whether a dam of a pairing has laid since its rain began.
func (r *Room) damLaid(p planned, on civil.Date) bool {
	return slices.ContainsFunc(p.Dams, func(dam string) bool {
		days := r.breeders.Laid(dam, on)
		return len(days) > 0 && days[len(days)-1] >= p.cycle.RainStart
	})
}

// laying gives when a pairing is to lay by its cycle.
func (p planned) laying() (w civil.Window, known bool) {
	i := slices.IndexFunc(p.cycle.Stages, func(s season.StageWindow) bool { return s.Stage == development.Laid.String() })
	if i < 0 {
		return civil.Window{}, false
	}
	return p.cycle.Stages[i].Window, true
}

// rested gives since when a pairing rests of which no clutch is recorded; ok is false
// for others. From the day after that on none is waited for.
func (r *Room) rested(p *collection.Pairing, on civil.Date) (since civil.Date, ok bool) {
	if clutches, _ := upTo(on, r.laid[p.ID]); clutches > 0 {
		return 0, false
	}
	for _, b := range r.recorded(p, on) {
		if b.Phase == season.Rest && b.On < on {
			return b.On, true
		}
	}
	return 0, false
}

// awaits reports whether the young of a pairing are still to come: it has no clutch yet,
// and does not rest already.
func (r *Room) awaits(p *collection.Pairing, on civil.Date) bool {
	clutches, _ := upTo(on, r.laid[p.ID])
	_, rested := r.rested(p, on)
	return clutches == 0 && !rested
}

// noEggs says that eggs are late since the rain began, or that none came; nothing when
// they are neither.
func (r *Room) noEggs(p planned, on civil.Date) (w civil.Window, text string) {
	if since, ok := r.rested(p.Pairing, on); ok && !r.damLaid(p, on) {
		w, _ = p.laying()
		return w, fmt.Sprintf("it rests since %s and no clutch of it is recorded, so no young of it are counted on", since)
	}
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
	return fmt.Sprintf("clutch %s has a dam of pairing %s, whose rain began on %s, but names no pairing, so that it does not count as the clutch of the pairing", k.ID, p.ID, p.cycle.RainStart)
}

// raining reports whether the rain of a pairing is recorded to have begun.
func (p planned) raining() bool {
	return slices.ContainsFunc(p.cycle.Phases, func(ph season.Dated) bool { return ph.Name == season.Rain && ph.Recorded })
}
