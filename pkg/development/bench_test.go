package development

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// busy is a clutch with 20 looks at tadpoles that are on their way, in water
// whose temperature changed often.
func busy() Clutch {
	c := Clutch{Laid: day(0), Looks: []Look{{Hatched, day(7), Reached}, {Feeding, day(9), By}}}
	for i := range 18 {
		c.Looks = append(c.Looks, Look{FrontLegs, day(20 + 2*i), NotYet})
		c.Water = append(c.Water, Reading{day(3 * i), 24 + float64(i%5)/2})
	}
	return c
}

func builtin(t testing.TB, id string) *Model {
	p, ok := species.Find(id)
	require.True(t, ok)
	m, err := NewModel(p)
	require.NoError(t, err)
	return m
}

func BenchmarkOutlook(b *testing.B) {
	m := builtin(b, "agalychnis-callidryas")
	room := m.Learn(finished(m, 30))
	for _, c := range []struct {
		name   string
		clutch Clutch
		room   *Room
	}{
		{"nothing seen", Clutch{Laid: day(0)}, nil},
		{"20 looks", busy(), nil},
		{"20 looks and a room", busy(), room},
	} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				m.Outlook(c.clutch, c.room)
			}
		})
	}
}

// finished gives clutches that went all the way, each in water of its own.
func finished(m *Model, n int) []Clutch {
	random := rand.New(rand.NewPCG(1, 2))
	var all []Clutch
	for range n {
		c := Clutch{Laid: day(0), Water: Temperatures{{day(0), 23 + 4*random.Float64()}}}
		at, pace := 0, random.NormFloat64()
		for i, l := range links {
			at += int(m.shapes[i].days(0.6*pace+0.8*random.NormFloat64()) + 0.5)
			c.Looks = append(c.Looks, Look{l.end, day(at), Reached})
		}
		all = append(all, c)
	}
	return all
}

func BenchmarkThousandClutches(b *testing.B) {
	m := builtin(b, "agalychnis-callidryas")
	past, now := finished(m, 1000), busy()
	for b.Loop() {
		room := m.Learn(append(past, now))
		for i := range 1000 {
			c := now
			c.Laid = now.Laid.Add(-i % 7)
			m.Outlook(c, room.Without(now))
		}
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(b.Elapsed().Seconds())/float64(b.N), "s/op")
}

func BenchmarkHeads(b *testing.B) {
	m := builtin(b, "agalychnis-callidryas")
	o := m.Outlook(busy(), nil)
	span := civil.Span{First: day(0), Last: day(199)}
	for b.Loop() {
		o.Heads([]Count{{day(0), 60}}, span)
	}
}
