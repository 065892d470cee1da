package brood

import (
	"math"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// Space is what there is room for: tadpoles in a tub and froglets in a bin. 0 is
// not known.
type Space struct {
	Tadpoles float64 // in a tub
	Froglets int     // in a bin
	Tubs     int     // in the room; 0 where it is not given
	Bins     int
}

// Space gives the room for young of a species.
func (l *Broods) Space(p *species.Profile) Space {
	e := l.rearing.Collection.Equipment
	s := Space{Froglets: e.FrogletBins.Froglets.Value, Tubs: e.TadpoleTubs.Count.Value, Bins: e.FrogletBins.Count.Value}
	if p.TadpolesPerLitre.Known() {
		s.Tadpoles = p.TadpolesPerLitre.Value * e.TadpoleTubs.Litres.Value
	}
	return s
}

// TubsFor gives the tubs for a number of tadpoles, and whether that is more than
// there are: then it is all of them. ok is false where nothing can be said.
func (s Space) TubsFor(tadpoles float64) (n int, tooMany, ok bool) {
	return fitted(tadpoles, s.Tadpoles, s.Tubs)
}

// BinsFor does the same for bins.
func (s Space) BinsFor(froglets float64) (n int, tooMany, ok bool) {
	return fitted(froglets, float64(s.Froglets), s.Bins)
}

func fitted(young, each float64, there int) (n int, tooMany, ok bool) {
	if each <= 0 || there <= 0 {
		return 0, false, false
	}
	n = int(math.Ceil(min(young/each, 1e6) - 1e-9))
	return min(n, there), n > there, true
}
