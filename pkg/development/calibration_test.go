package development

import (
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/species"
)

// quickFrog is an invented species that is fast, so that thousands of clutches
// are worked out in seconds.
func quickFrog(t testing.TB) *Model {
	m, err := NewModel(profile(
		step(species.Egg, 3, 4, 6, 1), step(species.Hatchling, 2, 3, 4, 1), step(species.Tadpole, 17, 21, 28, 1),
		step(species.Metamorph, 4, 5, 7, 1), step(species.GrowOut, 15, 20, 26, 1),
	))
	require.NoError(t, err)
	return m
}

// family draws the standardised length of a step of a clutch.
type family func(random *rand.Rand, pace float64) float64

// lateToes is how much later hind legs and toes come, as a part of the tadpole step,
// in clutches of the last row of docs/calibration.md.
const lateToes = 0.1

// asModelled is how the model itself has it.
func asModelled(random *rand.Rand, pace float64) float64 {
	return math.Sqrt(paceShare)*pace + math.Sqrt(1-paceShare)*random.NormFloat64()
}

// stagesLookedAt are all stages that are forecast, in order.
var stagesLookedAt = [...]Stage{Hatched, Feeding, HindLegs, Toes, FrontLegs, OutOfWater, Eating, SaleReady}

// life8 is the days of these of one clutch.
type life8 [len(stagesLookedAt)]int

// simulate gives the days of the events of one clutch.
func simulate(m *Model, random *rand.Rand, f family, late float64) life8 {
	var ends path
	pace, at := random.NormFloat64(), 0
	for i := range ends {
		// A whole day takes what is within half a day of it.
		at += int(m.shapes[i].days(f(random, pace)) + 0.5)
		ends[i] = at
	}
	later := int(late * float64(ends[2]-ends[1]))
	hind := min(ends[2], later+drawWithin(random, 0, ends[1], ends[2], usualHindLegs))
	toes := min(ends[2], max(hind, later+drawWithin(random, 1, ends[1], ends[2], usualToes)))
	return life8{ends[0], ends[1], hind, toes, ends[2], ends[3], drawWithin(random, 2, ends[3], ends[4], usualEating), ends[4]}
}

// drawWithin draws the day of an event within a step.
func drawWithin(random *rand.Rand, which, begin, end int, at species.Percentiles) int {
	x := random.Float64()
	days := inner(which, begin, end, at)
	for day := begin; day < end; day++ {
		if x -= days[day]; x < 0 {
			return day
		}
	}
	return end
}

// lookedAt gives what is seen of a clutch that is looked at every fourth day:
// that an event has come, on one time of two with its day, or that the next has
// not.
func lookedAt(p life8, looks int, random *rand.Rand) []Look {
	var seen []Look
	next := 0
	for n := 1; n <= looks; n++ {
		today := 4 * n
		for next < len(p) && p[next] <= today {
			if random.IntN(2) == 0 {
				seen = append(seen, Look{stagesLookedAt[next], day(p[next]), Reached})
			} else {
				seen = append(seen, Look{stagesLookedAt[next], day(today), By})
			}
			next++
		}
		if next < len(p) {
			seen = append(seen, Look{stagesLookedAt[next], day(today), NotYet})
		}
	}
	return seen
}

// inside gives how much of the middle 80 % of d is on day: the days at its edges
// count with the part of their chance that belongs to it.
func inside(d Distribution, day int) float64 {
	p := d.Mass(day)
	if p == 0 {
		return 0
	}
	above, below := d.CDF(day), d.CDF(day)-p
	return max(0, min(above, 0.9)-max(below, 0.1)) / p
}

const lookSteps = 7 // after 0, 3, 6, … 18 looks

// coverage gives the share of clutches whose day was in the window, and how
// many there were, by event and looks. An event whose day is known to the day
// does not count.
func coverage(m *Model, clutches int, f family, late float64) (share, count [len(stagesLookedAt)][lookSteps]float64) {
	var wait sync.WaitGroup
	var lock sync.Mutex
	const workers = 2
	for w := range workers {
		wait.Add(1)
		go func() {
			defer wait.Done()
			var hits, all [len(stagesLookedAt)][lookSteps]float64
			for i := w; i < clutches; i += workers {
				random := rand.New(rand.NewPCG(2027, uint64(i)))
				p := simulate(m, random, f, late)
				for k := range lookSteps {
					o := m.Outlook(Clutch{Laid: day(0), Looks: lookedAt(p, 3*k, rand.New(rand.NewPCG(7, uint64(i))))}, nil)
					for e, event := range o.All() {
						if !event.Recorded && event.Dist.First() != event.Dist.Last() {
							hits[e][k] += inside(event.Dist, p[e])
							all[e][k]++
						}
					}
				}
			}
			lock.Lock()
			defer lock.Unlock()
			for e := range hits {
				for k := range hits[e] {
					share[e][k] += hits[e][k]
					count[e][k] += all[e][k]
				}
			}
		}()
	}
	wait.Wait()
	for e := range share {
		for k := range share[e] {
			share[e][k] /= max(count[e][k], 1)
		}
	}
	return share, count
}

// The windows that promise 80 % hold for 78 to 82 % of 5000 clutches drawn from
// the model, for each event and after any number of looks. With -short there are
// fewer clutches, and more may be said of chance.
func TestWindowsHold(t *testing.T) {
	clutches, off := 5000, 0.02
	if testing.Short() {
		clutches, off = 500, 0.08
	}
	share, count := coverage(quickFrog(t), clutches, asModelled, 0)
	for e, stage := range stagesLookedAt {
		for k := range lookSteps {
			assert.Greater(t, count[e][k], 0.4*float64(clutches))
			assert.InDelta(t, 0.8, share[e][k], off, "%v after %d looks, of %v clutches", stage, 3*k, count[e][k])
		}
	}
}

// Families of lengths that the model does not have, all with the 10th and 90th
// percentile of the profile but the last, in the order of docs/calibration.md.
var strangers = []family{
	func(random *rand.Rand, _ float64) float64 { return random.NormFloat64() },
	func(random *rand.Rand, pace float64) float64 {
		return math.Sqrt(0.9)*pace + math.Sqrt(0.1)*random.NormFloat64()
	},
	func(random *rand.Rand, pace float64) float64 {
		chi := 0.0
		for range 3 {
			x := random.NormFloat64()
			chi += x * x
		}
		const t90of3 = 1.6377 // the 90th percentile of the Student distribution
		return math.Sqrt(paceShare)*pace + math.Sqrt(1-paceShare)*random.NormFloat64()/math.Sqrt(chi/3)*z90/t90of3
	},
	func(random *rand.Rand, _ float64) float64 { return (2*random.Float64() - 1) * z90 / 0.8 },
	func(random *rand.Rand, pace float64) float64 { return 1 + asModelled(random, pace) },
	asModelled, // with late toes
}

// What docs/calibration.md says of clutches from another family is so, as far as
// a smaller draw can tell.
func TestWindowsOfAnotherFamily(t *testing.T) {
	page, err := os.ReadFile("../../docs/calibration.md")
	require.NoError(t, err)
	_, table, ok := strings.Cut(string(page), "| the truth |")
	require.True(t, ok)
	rows := strings.Split(table, "\n")[2:]
	clutches, off := 600, 6.0
	if testing.Short() {
		clutches, off = 100, 18
	}
	for i, f := range strangers {
		cells := strings.Split(rows[i], "|")
		t.Run(strings.TrimSpace(cells[1]), func(t *testing.T) {
			late := 0.0
			if i == len(strangers)-1 {
				late = lateToes
			}
			share, _ := coverage(quickFrog(t), clutches, f, late)
			for j, k := range []int{0, 1, 3, 6} {
				want, err := strconv.ParseFloat(strings.TrimSpace(cells[2+j]), 64)
				require.NoError(t, err)
				assert.InDelta(t, want, 100*share[len(stagesLookedAt)-1][k], off, "after %d looks", 3*k)
			}
		})
	}
}
