package development

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

func TestCares(t *testing.T) {
	last := Laid
	for _, c := range Cares() {
		assert.NotEmpty(t, c.What)
		assert.NotEmpty(t, c.Source)
		assert.GreaterOrEqual(t, c.Stage, last, "%s", c.What)
		last = c.Stage
		_, forecast := linkOf(c.Stage)
		assert.True(t, forecast || c.Stage == Laid, "%s: a stage that has a date", c.What)
	}
	Cares()[0].What = "spoilt"
	assert.NotEqual(t, "spoilt", Cares()[0].What, "what a caller changes stays with it")
}

func TestCareByDate(t *testing.T) {
	o := leafFrog(t).Outlook(Clutch{Laid: day(0)}, nil)
	on := func(words string) civil.Date {
		for _, c := range o.Care() {
			if strings.Contains(c.What, words) {
				return c.On
			}
		}
		t.Fatalf("nothing to do is %q", words)
		return 0
	}
	legs, _ := o.Event(FrontLegs)
	water, _ := o.Event(OutOfWater)
	assert.Equal(t, legs.Window.Early.Add(-7), on("a way out"), "the way out is there before the first needs it")
	assert.Equal(t, water.Window.Early.Add(-14), on("first foods"))
	assert.Equal(t, water.Window.Likely.Add(3), on("first food every day"))
	all := o.Care()
	require.Len(t, all, len(Cares()))
	for i, c := range all[1:] {
		assert.LessOrEqual(t, all[i].On, c.On)
	}
	assert.Empty(t, leafFrog(t).Outlook(Clutch{}, nil).Care(), "what has no date is not to be done on a day")
}

func TestPreyLength(t *testing.T) {
	small, large := PreyLength(16)
	assert.InDelta(t, 3.2, small, 1e-9)
	assert.InDelta(t, 4.8, large, 1e-9)
}

func TestSaleReadiness(t *testing.T) {
	n := func(v float64) species.Number { return species.Number{Value: v, Source: invented} }
	long := species.Sale{AgeDays: n(42), LengthMM: n(25)}
	both := species.Sale{AgeDays: n(42), LengthMM: n(25), WeightG: n(1.5), SeenEating: n(3)}
	left := day(0)
	for _, c := range []struct {
		name  string
		sale  species.Sale
		young Young
		on    int
		held  []string
		ask   []string
	}{
		{"old, long, seen eating", long, Young{left, 25, 0, 1}, 42, nil, nil},
		{
			"a day too young", long,
			Young{left, 25, 0, 1},
			41,
			[]string{"out of water for 41 days, at least 42 are wanted: from 2027-03-28"},
			nil,
		},
		{
			"old enough and too short", long,
			Young{left, 24.5, 9, 1},
			90,
			[]string{"24.5 mm long, at least 25 are wanted: froglets of delicate species die when they are sent out too small"},
			nil,
		},
		{
			"a date alone is never enough", long,
			Young{OutOfWater: left},
			400,
			nil,
			[]string{"how long is it? (at least 25 mm)", "was it seen eating, and how often? (at least 1)"},
		},
		{"nothing recorded", both, Young{}, 42, nil, []string{
			"when did it leave the water?", "how long or heavy is it? (at least 25 mm or 1.5 g)", "was it seen eating, and how often? (at least 3)",
		}},
		{"heavy is as good as long", both, Young{left, 0, 1.5, 3}, 42, nil, nil},
		{"heavy makes up for short", both, Young{left, 20, 2, 3}, 42, nil, nil},
		{"neither", both, Young{left, 20, 1, 3}, 42, []string{
			"20 mm long, at least 25 are wanted: " + tooSmall, "1 g heavy, at least 1.5 are wanted: " + tooSmall,
		}, nil},
		{"eats too seldom", both, Young{left, 30, 0, 2}, 42, []string{"seen eating 2 times, at least 3 are wanted"}, nil},
		{"a profile that says nothing", species.Sale{}, Young{left, 30, 2, 1}, 400, nil, []string{
			"how old must the species be? (sale: age_days)", "how long or heavy must the species be? (sale: length_mm or weight_g)",
		}},
		{"a weight is asked for where only that counts", species.Sale{AgeDays: n(1), WeightG: n(2)}, Young{left, 30, 0, 1}, 9, nil, []string{"how heavy is it? (at least 2 g)"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := SaleReadiness(&species.Profile{Sale: c.sale}, c.young, day(c.on))
			assert.Equal(t, c.held, r.Held)
			assert.Equal(t, c.ask, r.Ask)
			assert.Equal(t, c.held == nil && c.ask == nil, r.Ready)
		})
	}
	assert.Panics(t, func() { SaleReadiness(&species.Profile{}, Young{}, 0) })
}
