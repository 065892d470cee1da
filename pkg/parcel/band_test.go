package parcel_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/parcel"
)

// The rows are the lines of the published list in °F, and both sides of each of
// its ends; see BandOf.
func TestBands(t *testing.T) {
	for _, row := range []struct {
		name      string
		low, high float64 // °F
		pack      parcel.Pack
		depot     bool
		refused   bool
	}{
		{"below 38 nothing is sent", 37.9, 50, "", false, true},
		{"from 38 with a heat pack", 38, 50, parcel.HeatPack, false, false},
		{"to 59 with a heat pack", 59, 70, parcel.HeatPack, false, false},
		{"between 59 and 60 the list is silent: the stricter", 59.9, 70, parcel.HeatPack, false, false},
		{"from 60 without", 60, 79, parcel.NoPack, false, false},
		{"between 79 and 80 the list is silent: the stricter", 60, 79.1, parcel.ColdPack, false, false},
		{"from 80 with a cold pack", 60, 80, parcel.ColdPack, false, false},
		{"to 92 with a cold pack", 60, 91.9, parcel.ColdPack, false, false},
		{"at 92 two lines overlap: the stricter", 60, 92, parcel.ColdPack, true, false},
		{"to 95 only to a depot", 60, 94.9, parcel.ColdPack, true, false},
		{"above 95 nothing, though a line says depot up to 100", 60, 95.1, "", false, true},
		{"cold and hot at once", 50, 85, "", false, true},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := parcel.BandOf(parcel.Outside{LowC: fahrenheit(row.low), HighC: fahrenheit(row.high)})
			assert.Equal(t, row.refused, got.Why != "", got.Why)
			assert.Equal(t, row.pack, got.Pack)
			assert.Equal(t, row.depot, got.Depot)
		})
	}
}

func TestOutsideInWords(t *testing.T) {
	assert.Equal(t, "3 to 12.5 °C", parcel.Outside{LowC: 3, HighC: 12.5}.String())
	assert.Equal(t, "20 °C", parcel.Outside{LowC: 20, HighC: 20}.String())
}

func fahrenheit(f float64) float64 { return (f - 32) * 5 / 9 }

// A wider range of temperatures is never judged more lightly.
func TestWiderIsStricter(t *testing.T) {
	rank := func(b parcel.Band) int {
		switch {
		case b.Why != "":
			return 3
		case b.Depot:
			return 2
		case b.Pack != parcel.NoPack:
			return 1
		}
		return 0
	}
	rapid.Check(t, func(t *rapid.T) {
		low, high := rapid.Float64Range(-10, 45).Draw(t, "low"), rapid.Float64Range(0, 10).Draw(t, "width")
		inner := parcel.Outside{LowC: low, HighC: low + high}
		outer := parcel.Outside{LowC: low - rapid.Float64Range(0, 5).Draw(t, "colder"), HighC: inner.HighC + rapid.Float64Range(0, 5).Draw(t, "hotter")}
		if rank(parcel.BandOf(outer)) < rank(parcel.BandOf(inner)) {
			t.Fatalf("%v: %+v, but %v: %+v", inner, parcel.BandOf(inner), outer, parcel.BandOf(outer))
		}
	})
}
