package breedingplan

import (
	"fmt"
	"math"
	"strconv"

	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// reason says in a line what speaks for a pair.
func (l *line) reason(p pairing.Pair) string {
	var kin string
	switch f := level(p.Verdict.YoungInbreeding); {
	case f == 0:
		kin = "no known ancestor in common"
	case p.Verdict.YoungInbreeding < l.stock.Terms.Rules.WarnInbreeding:
		kin = "distant kin"
	case p.Verdict.YoungInbreeding < l.stock.Terms.Rules.MaxInbreeding:
		kin = "kin, within the limit"
	default:
		kin = "close kin, though over the limit"
	}
	return kin + "; by rarity " + l.rank(l.stock.number(p.Male)) + " and " + l.rank(l.stock.number(p.Female))
}

// rank says how rare the genes of an animal are among those of its sex.
func (l *line) rank(self int) string {
	sex := l.stock.animal(self).Sex
	mine := l.set.MeanKinship(self)
	rarer, of, same := 0, 0, 0
	for _, i := range l.here {
		if l.stock.animal(i).Sex != sex {
			continue
		}
		of++
		switch k := l.set.MeanKinship(i); {
		case level(k) < level(mine):
			rarer++
		case level(k) == level(mine):
			same++
		}
	}
	place := fmt.Sprintf("%d", rarer+1)
	if same > 1 {
		place = fmt.Sprintf("%d to %d", rarer+1, rarer+same)
	}
	return fmt.Sprintf("%s of %d %ss", place, of, sex)
}

// decimals writes a coefficient with four places at most.
func decimals(x float64) string {
	return strconv.FormatFloat(math.Round(x*1e4)/1e4, 'f', -1, 64)
}
