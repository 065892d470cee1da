package development

import (
	"fmt"
	"strconv"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Young is what is recorded of a froglet, or of all of a clutch. What is 0 is not
// recorded.
type Young struct {
	OutOfWater civil.Date
	LengthMM   float64 // snout to vent; of a clutch the shortest
	WeightG    float64
	SeenEating int // times it was seen eating
}

// Readiness says whether young may leave, and why not.
type Readiness struct {
	Ready bool
	Held  []string   // why they are held, one line each
	Ask   []string   // what is not recorded and has to be before they leave
	From  civil.Date // the first day on which they are old enough; not known when OutOfWater or the age is not
}

// tooSmall is why size counts and not age alone. Of large metamorphs of
// Ceratophrys stolzmanni 95 % lived, of small ones 60 % (BMC Ecology 2020,
// s12898-020-00291-w).
const tooSmall = "froglets of delicate species die when they are sent out too small"

// SaleReadiness judges young by the profile of their species: they leave when
// they are old enough after leaving the water, and long or heavy enough, and
// were seen eating. A date alone is never enough. What the profile wants and is
// not recorded is asked for, never assumed; so is a least age or size that the
// profile lacks. Whoever looks ill is for a veterinarian, whatever this says.
// It panics when p is nil or on is not known.
func SaleReadiness(p *species.Profile, y Young, on civil.Date) Readiness {
	if !on.Known() {
		panic("development: readiness on no day")
	}
	var r Readiness
	r.age(p.Sale, y, on)
	r.size(p.Sale, y)
	times := 1.0
	if p.Sale.SeenEating.Known() {
		times = p.Sale.SeenEating.Value
	}
	switch {
	case y.SeenEating == 0:
		r.ask("was it seen eating, and how often? (at least %g)", times)
	case float64(y.SeenEating) < times:
		r.hold("seen eating %s, at least %g are wanted", count(y.SeenEating, "time", "times"), times)
	}
	r.Ready = len(r.Held) == 0 && len(r.Ask) == 0
	return r
}

func (r *Readiness) age(sale species.Sale, y Young, on civil.Date) {
	least := int(sale.AgeDays.Value)
	switch {
	case !y.OutOfWater.Known():
		r.ask("when did it leave the water?")
	case !sale.AgeDays.Known():
		r.ask("how old must the species be? (sale: age_days)")
	default:
		r.From = y.OutOfWater.Add(least)
		if on < r.From {
			r.hold("out of water for %s, at least %d are wanted: from %s", inDays(max(on.Sub(y.OutOfWater), 0)), least, r.From)
		}
	}
}

// size asks for a length or a weight: one that is enough is enough.
func (r *Readiness) size(sale species.Sale, y Young) {
	long := sale.LengthMM.Known() && y.LengthMM >= sale.LengthMM.Value
	heavy := sale.WeightG.Known() && y.WeightG >= sale.WeightG.Value
	measured := sale.LengthMM.Known() && y.LengthMM > 0
	weighed := sale.WeightG.Known() && y.WeightG > 0
	switch {
	case !sale.LengthMM.Known() && !sale.WeightG.Known():
		r.ask("how long or heavy must the species be? (sale: length_mm or weight_g)")
	case long || heavy:
	case !measured && !weighed && !sale.WeightG.Known():
		r.ask("how long is it? (at least %s mm)", number(sale.LengthMM.Value))
	case !measured && !weighed && !sale.LengthMM.Known():
		r.ask("how heavy is it? (at least %s g)", number(sale.WeightG.Value))
	case !measured && !weighed:
		r.ask("how long or heavy is it? (at least %s mm or %s g)", number(sale.LengthMM.Value), number(sale.WeightG.Value))
	default:
		if measured {
			r.hold("%s mm long, at least %s are wanted: %s", number(y.LengthMM), number(sale.LengthMM.Value), tooSmall)
		}
		if weighed {
			r.hold("%s g heavy, at least %s are wanted: %s", number(y.WeightG), number(sale.WeightG.Value), tooSmall)
		}
	}
}

func (r *Readiness) hold(format string, args ...any) {
	r.Held = append(r.Held, fmt.Sprintf(format, args...))
}

func (r *Readiness) ask(format string, args ...any) {
	r.Ask = append(r.Ask, fmt.Sprintf(format, args...))
}

func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }
