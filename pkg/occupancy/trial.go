package occupancy

import "slices"

// trial is moves that are tried.
type trial struct {
	season *Season
	deck   *deck
	moves  []Move
	rises  [][][]rise // [move][course]: what the clutch does once it is moved
}

func newTrial(s *Season, moves []Move) *trial {
	t := &trial{season: s, deck: newDeck(s), moves: moves}
	for _, m := range moves {
		t.rises = append(t.rises, s.risesOf(s.Clutches[m.Clutch], m.Days))
	}
	return t
}

func (t *trial) blank(seasons int) []Moved {
	all := make([]Moved, len(t.moves))
	change := Change{Short: Chance{Of: seasons}}
	for i, m := range t.moves {
		all[i] = Moved{Move: m, Any: change, Resources: slices.Repeat([]Change{change}, len(t.season.Resources))}
	}
	return all
}
