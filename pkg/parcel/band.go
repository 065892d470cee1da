package parcel

import "fmt"

// Outside is the temperature that a parcel meets on its way, in °C: the lowest
// and the highest of the places it starts from, passes and arrives at.
type Outside struct {
	LowC  float64 `json:"low_c"`
	HighC float64 `json:"high_c"`
}

// String writes a range as "3 to 12 °C", and one without width as "20 °C".
func (o Outside) String() string {
	if o.LowC == o.HighC {
		return fmt.Sprintf("%.3g °C", o.LowC)
	}
	return fmt.Sprintf("%.3g to %.3g °C", o.LowC, o.HighC)
}

// Pack is what goes into a parcel against heat or cold, taped under the lid,
// with paper between it and the animal.
type Pack string

// The packs.
const (
	NoPack   Pack = "none"
	HeatPack Pack = "heat pack"
	ColdPack Pack = "cold pack"
)

// Band is what the temperature asks for.
type Band struct {
	Pack  Pack
	Depot bool   // only to a staffed depot, where it does not wait in a van
	Why   string // why nothing is sent at all, as part of a sentence; empty when it may be
}

// BandSource is who gives the bands of [BandOf].
const BandSource = "keeper article: Reptiles Magazine, shipping temperatures for amphibians; where it says two things, the stricter"

// The bands for amphibians are those of a published list by carrier type
// (keeper article: Reptiles Magazine, shipping temperatures). It is written in
// °F: below 38 nothing, to 59 a heat pack, 60 to 79 no pack, 80 to 92 a cold
// pack, 92 to 95 only to a staffed depot, above 95 nothing. Between 59 and 60
// and between 79 and 80 it is silent, and where two lines overlap it says two
// things: the stricter one is taken.
var (
	tooCold  = celsius(38)
	heatTo   = celsius(60)
	coldFrom = celsius(79)
	depotAt  = celsius(92)
	tooWarm  = celsius(95)
)

func celsius(f float64) float64 { return (f - 32) * 5 / 9 }

// BandOf says what the temperature on the way asks for: below 38 °F (3.3 °C)
// nothing is sent, below 60 °F (15.6 °C) with a heat pack, above 79 °F (26.1 °C)
// with a cold pack, from 92 °F (33.3 °C) only to a staffed depot, above 95 °F (35
// °C) nothing. It is judged at both ends of the range; a way that is cold and hot at
// once would need both packs, and is refused.
//
// The source is a keeper article (Reptiles Magazine, shipping temperatures for
// amphibians); where it is silent or says two things, the stricter is taken.
func BandOf(o Outside) Band {
	cold, hot := o.LowC < heatTo, o.HighC > coldFrom
	switch {
	case o.LowC < tooCold:
		return Band{Why: fmt.Sprintf("%.3g °C on the way, and below %.3g nothing is sent", o.LowC, tooCold)}
	case o.HighC > tooWarm:
		return Band{Why: fmt.Sprintf("%.3g °C on the way, and above %.3g nothing is sent", o.HighC, tooWarm)}
	case cold && hot:
		return Band{Why: fmt.Sprintf("%s on the way asks for a heat pack and a cold pack at once", o)}
	case cold:
		return Band{Pack: HeatPack}
	case hot:
		return Band{Pack: ColdPack, Depot: o.HighC >= depotAt}
	}
	return Band{Pack: NoPack}
}
