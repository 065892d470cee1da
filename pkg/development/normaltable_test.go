package development

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// Nieuwkoop and Faber 1994, Normal Table of Xenopus laevis, at 22 to 24 °C:
// stage 35/36 (hatching) at 50 hours, stage 45 (feeding) at 98 hours, stage 58
// (front legs out) on day 44, stage 66 (tail gone) on day 58.
func TestXenopusAgainstTheNormalTable(t *testing.T) {
	p, ok := species.Find("xenopus-laevis")
	require.True(t, ok)
	m := mustModel(t, p)
	for _, row := range []struct {
		stage Stage
		day   float64
	}{
		{Hatched, 50.0 / 24},
		{Feeding, 98.0 / 24},
		{FrontLegs, 44},
		{OutOfWater, 58},
	} {
		assert.InDelta(t, row.day, until(m, row.stage).Quantile(0.5), 1, "%v", row.stage)
	}
}

// The rest of the table: on the day of each of its stages the likeliest stage
// of the forecast is the one that it belongs to, by what is seen of it (hatching
// from 35/36, feeding from 45, front legs from 58, tail gone at 66).
func TestXenopusStageByStage(t *testing.T) {
	m := builtin(t, "xenopus-laevis")
	o := m.Outlook(Clutch{Laid: day(0), Water: Temperatures{{day(0), 23}}}, nil)
	assert.Empty(t, o.Warnings)
	for _, row := range []struct {
		nf    string
		hours float64
		stage Stage
	}{
		{"10", 9, Laid},
		{"20", 21.75, Laid},
		{"28", 32.5, Laid},
		{"37/38", 53.5, Hatched},
		{"40", 66, Hatched},
		{"43", 87, Hatched},
		{"46", 106, Feeding},
		{"47", 132, Feeding},
		{"48", 7.5 * 24, Feeding},
		{"50", 15 * 24, Feeding},
		{"53", 24 * 24, Feeding},
		{"55", 32 * 24, Feeding},
		{"60", 46 * 24, FrontLegs},
		{"62", 49 * 24, FrontLegs},
		{"64", 53 * 24, FrontLegs},
	} {
		best, likeliest := 0.0, Laid
		before := 1.0 // chance to have reached the stage, at the middle of a day
		stages := []Stage{Laid, Hatched, Feeding, FrontLegs, OutOfWater, SaleReady}
		for i, s := range stages {
			next := 0.0
			if i < len(o.Events) {
				d := o.Events[i].Dist
				at := row.hours/24 + 0.5 // between the ends of two whole days
				low := int(math.Floor(at)) - 1
				next = d.CDF(low) + (at-math.Floor(at))*d.Mass(low+1)
			}
			if before-next > best {
				best, likeliest = before-next, s
			}
			before = next
		}
		assert.Equal(t, row.stage, likeliest, "stage %s at %v hours", row.nf, row.hours)
	}
}

// Published times of whole ways, against the windows of the built-in profiles at
// those temperatures.
func TestPublishedTimes(t *testing.T) {
	for _, c := range []struct {
		name, id  string
		waterC    float64
		stage     Stage
		low, high int // days, as published
	}{
		// Theloderma corticale larval stages and husbandry in Hanoi and at Cologne zoo: about 4.5 months at 20.
		{"mossy frog", "theloderma-corticale", 20, OutOfWater, 132, 142},
		// Ortiz et al. 2013, International Zoo Yearbook 47: C. stolzmanni, froglets after 20 to 32 days at about 27; another species of the genus.
		{"horned frog, a relative", "ceratophrys-cranwelli", 27, OutOfWater, 20, 32},
		// and hatched after 40 hours.
		{"horned frog, eggs", "ceratophrys-cranwelli", 27, Hatched, 1, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := builtin(t, c.id).Outlook(Clutch{Laid: day(0), Water: Temperatures{{day(0), c.waterC}}}, nil)
			e, _ := o.Event(c.stage)
			assert.LessOrEqual(t, e.Window.Early.Sub(day(0)), c.high, "%v", e.Window)
			assert.GreaterOrEqual(t, e.Window.Late.Sub(day(0)), c.low, "%v", e.Window)
		})
	}
	// Tapley & Girgin 2015, Herpetological Bulletin 132: Polypedates otilophus
	// hatched after 10 days and left the water after 74 to 84 at 22 to 26 °C. The
	// built-in relative, P. leucomystax, is faster: a species of its own is no
	// guide to another's.
	o := builtin(t, "polypedates-leucomystax").Outlook(Clutch{Laid: day(0), Water: Temperatures{{day(0), 24}}}, nil)
	e, _ := o.Event(OutOfWater)
	assert.Less(t, e.Window.Likely, day(74))
	m := mustModel(t, profile(step(species.Egg, 9, 10, 11, 1), step(species.Hatchling, 2, 3, 4, 1), step(species.Tadpole, 52, 60, 69, 1), step(species.Metamorph, 4, 5, 7, 1)))
	own, _ := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{Hatched, day(10), Reached}}}, nil).Event(OutOfWater)
	assert.InDelta(t, 79, own.Window.Likely.Sub(day(0)), 2, "with its own days")
	sib := m.Outlook(Clutch{Laid: day(0), Looks: []Look{{Hatched, day(10), Reached}}}, nil).Siblings(44)
	assert.LessOrEqual(t, sib[1].First.Late, day(79))
}

// Whatever a built-in profile says, it makes a model, and the likely days rise.
func TestBuiltinProfiles(t *testing.T) {
	for _, p := range species.Builtin() {
		t.Run(p.ID, func(t *testing.T) {
			m := mustModel(t, p)
			last := 0
			for _, l := range links {
				e, _ := m.Outlook(Clutch{Laid: day(0)}, nil).Event(l.end)
				d := e.Dist
				if !d.Known() {
					continue
				}
				assert.GreaterOrEqual(t, d.Quantile(0.5), last, "%v", l.end)
				last = d.Quantile(0.5)
			}
		})
	}
}
