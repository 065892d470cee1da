package pedigree_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Inbreeding under regular systems of mating: Falconer and Mackay 1996,
// Introduction to Quantitative Genetics, Table 5.1, from memory; recurrences
// after Wright 1921, Genetics 6:111. Each is built as a real pedigree, of which
// animal g<t> is in generation t, counted so that the first mating of relatives
// gives generation 1.
func TestMatingSystems(t *testing.T) {
	for _, test := range []struct {
		system string
		text   string
		want   []float64
	}{
		{"full sibs", fullSibs(10), []float64{.25, .375, .5, .5938, .6719, .7344, .7852, .8262, .8594, .8862}},
		{"half sibs: one male to half-sisters", halfSibs(10), []float64{.125, .2188, .3047, .3809, .4487, .5092, .5630, .6109, .6535, .6915}},
		{"offspring to younger parent", youngerParent(6), []float64{.25, .375, .5, .5938, .6719, .7344}},
		{"selfing", selfing(5), []float64{.5, .75, .875, .9375, .9688}},
		{"double first cousins", doubleCousins(8), []float64{.125, .1875, .25, .3125, .3672, .4180, .4648, .5078}},
		{"back to one parent", backcross("P,0,0", 5), []float64{.25, .375, .4375, .4688, .4844}},
	} {
		t.Run(test.system, func(t *testing.T) {
			p := build(t, test.text)
			for g, want := range test.want {
				assert.InDelta(t, want, p.Inbreeding(at(t, p, fmt.Sprint("g", g+1))), 0.00005001, "generation %d", g+1)
			}
		})
	}
}

// Back to one parent tends to 1/2, or to that of the parent: (1 + F)/2.
func TestBackcrossLimit(t *testing.T) {
	p := build(t, backcross("P,0,0", 60))
	assert.InDelta(t, .5, p.Inbreeding(at(t, p, "g60")), 1e-12)
	p = build(t, backcross("Q,0,0 S1,Q,Q S2,S1,S1 P,S2,S2", 60)) // F of P is 7/8
	assert.InDelta(t, (1+7./8)/2, p.Inbreeding(at(t, p, "g60")), 1e-12)
}

// Full sibs of an inbred line of great length become one animal; nothing on the
// way may leave the range of 0 to 1 or fall.
func TestLongFullSibLine(t *testing.T) {
	const generations = 2000
	p := build(t, fullSibs(generations))
	before := 0.0
	for g := 1; g <= generations; g++ {
		f := p.Inbreeding(at(t, p, fmt.Sprint("g", g)))
		if f < before || f > 1 {
			t.Fatalf("generation %d: F is %v after %v", g, f, before)
		}
		before = f
	}
	assert.InDelta(t, 1, before, 1e-12)
}

func lines(parts ...string) string { return strings.Join(parts, "\n") }

func fullSibs(generations int) string {
	text := []string{"A,0,0 B,0,0 m0,A,B g0,A,B"}
	for g := 1; g <= generations; g++ {
		text = append(text, fmt.Sprintf("m%d,m%d,g%d g%d,m%d,g%d", g, g-1, g-1, g, g-1, g-1))
	}
	return lines(text...)
}

// halfSibs gives every generation one male and as many females as are still
// needed, all of them with different dams.
func halfSibs(generations int) string {
	text := []string{"m-1,0,0"}
	females := generations + 3
	for i := range females {
		text = append(text, fmt.Sprintf("f-1.%d,0,0", i))
	}
	for g := 0; g <= generations; g++ {
		females--
		for i := range females {
			text = append(text, fmt.Sprintf("f%d.%d,m%d,f%d.%d", g, i, g-1, g-1, i))
		}
		text = append(text, fmt.Sprintf("m%d,m%d,f%d.%d", g, g-1, g-1, females))
		text = append(text, fmt.Sprintf("g%d,m%d,f%d.0", g, g-1, g-1))
	}
	return lines(text...)
}

func youngerParent(generations int) string {
	text := []string{"A,0,0 g-1,0,0 g0,A,g-1"}
	for g := 1; g <= generations; g++ {
		text = append(text, fmt.Sprintf("g%d,g%d,g%d", g, g-1, g-2))
	}
	return lines(text...)
}

func selfing(generations int) string {
	text := []string{"g0,0,0"}
	for g := 1; g <= generations; g++ {
		text = append(text, fmt.Sprintf("g%d,g%d,g%d", g, g-1, g-1))
	}
	return lines(text...)
}

// doubleCousins keeps two families of a son and a daughter each; the son of one
// is mated with the daughter of the other.
func doubleCousins(generations int) string {
	text := []string{"A,0,0 B,0,0 C,0,0 D,0,0 s-1.0,A,B d-1.0,A,B s-1.1,C,D d-1.1,C,D"}
	for g := 0; g <= generations; g++ {
		for family := range 2 {
			for _, young := range []string{"s", "d"} {
				text = append(text, fmt.Sprintf("%s%d.%d,s%d.%d,d%d.%d", young, g, family, g-1, family, g-1, 1-family))
			}
		}
		text = append(text, fmt.Sprintf("g%d,s%d.0,d%d.1", g, g-1, g-1))
	}
	return lines(text...)
}

func backcross(parent string, generations int) string {
	text := []string{parent, "M,0,0 g0,P,M"}
	for g := 1; g <= generations; g++ {
		text = append(text, fmt.Sprintf("g%d,P,g%d", g, g-1))
	}
	return lines(text...)
}
