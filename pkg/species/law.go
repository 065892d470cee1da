package species

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// LawKind names how the length of a step follows the temperature.
type LawKind string

// The laws. Of a step that has none of them nothing is known but its days at
// their own temperature.
const (
	// ThermalSum counts degrees above a threshold: the rate is proportional
	// to T - ThresholdC. It fails near the threshold.
	ThermalSum LawKind = "thermal_sum"
	// FallingQ10 speeds the rate up by a factor for ten degrees, which is itself
	// different in the cold and in the warm.
	FallingQ10 LawKind = "q10"
)

var lawKinds = []string{string(ThermalSum), string(FallingQ10)}

// Law is how the rate of development follows the temperature.
type Law struct {
	Kind       LawKind
	ThresholdC float64  // of ThermalSum, °C
	At         []Factor // of FallingQ10, by rising temperature; at least one
	Source     string
}

// Factor is a ten-degree factor, and the temperature at which it holds.
type Factor struct{ AtC, Q10 float64 }

// Known reports whether the profile has the value.
func (l Law) Known() bool { return l.Source != "" }

// Factor gives the ten-degree factor at a temperature in °C. Between the
// temperatures of At its logarithm runs straight, outside them it stays. Of
// a thermal sum it is that of the slope there; at and below the threshold it is
// +Inf. It panics for a law that is not known.
func (l Law) Factor(c float64) float64 {
	switch l.Kind {
	case ThermalSum:
		if c <= l.ThresholdC {
			return math.Inf(1)
		}
		return math.Exp(10 / (c - l.ThresholdC))
	case FallingQ10:
		return math.Exp(l.lnFactor(c))
	}
	panic("species: the factor of a law that is not known; see Law.Known")
}

// Ratio gives how many times as fast development runs at the temperature to
// as at from, both in °C. Of a thermal sum it is 0 at and below the threshold,
// and from must be above it. It panics for a law that is not known.
func (l Law) Ratio(from, to float64) float64 {
	switch l.Kind {
	case ThermalSum:
		return max(to-l.ThresholdC, 0) / (from - l.ThresholdC)
	case FallingQ10:
		return math.Exp(l.lnRate(to) - l.lnRate(from))
	}
	panic("species: the ratio of a law that is not known; see Law.Known")
}

// lnFactor is ln Q10 at c.
func (l Law) lnFactor(c float64) float64 {
	i := slices.IndexFunc(l.At, func(f Factor) bool { return f.AtC >= c })
	switch i {
	case 0:
		return math.Log(l.At[0].Q10)
	case -1:
		return math.Log(l.At[len(l.At)-1].Q10)
	}
	a, b := l.At[i-1], l.At[i]
	share := (c - a.AtC) / (b.AtC - a.AtC)
	return (1-share)*math.Log(a.Q10) + share*math.Log(b.Q10)
}

// lnRate is the logarithm of the rate at c, against that at the first
// temperature of At: the integral of ln Q10 / 10.
func (l Law) lnRate(c float64) float64 {
	at := l.At[0].AtC
	if c <= at {
		return (c - at) * math.Log(l.At[0].Q10) / 10
	}
	sum := 0.0
	for _, f := range l.At[1:] {
		next := min(f.AtC, c)
		sum += (next - at) * (l.lnFactor(at) + l.lnFactor(next)) / 20
		if at = next; at == c {
			return sum
		}
	}
	return sum + (c-at)*l.lnFactor(c)/10
}

// lawValue is written {kind: thermal_sum, threshold_c: 10.4},
// {kind: q10, at: [[15, 3], [20, 2.5]]}, or as the word none.
type lawValue struct{ to *Law }

func (v lawValue) read(doc *strictyaml.Document, n *yaml.Node, key, source string) {
	if n.Kind == yaml.ScalarNode && n.Value == "none" {
		*v.to = Law{}
		return
	}
	problem := func(cure string) { doc.Errorf(n, cure, "this is no law of temperature") }
	in := open(doc.Mapping(n, "the law"), source)
	given := in.Has("kind")
	kind := LawKind(in.Choice("kind", lawKinds...))
	threshold, at := in.Take("threshold_c"), in.Take("at")
	in.Done()
	if doc.Sketching() {
		pair := strictyaml.Schema{Type: []string{"array"}, Items: strictyaml.NumberFrom(min(celsius.low, tenDegrees.low), max(celsius.high, tenDegrees.high)), MinItems: 2, MaxItems: 2}
		doc.Describe(threshold, celsius.schema())
		doc.Describe(at, strictyaml.ListOf(&pair, 1, 0))
		doc.Or(n, strictyaml.OneOfWords("none"))
	}
	switch {
	case n.Kind == yaml.MappingNode && !given:
		problem("write {kind: q10, at: [[20, 2.5]]}, {kind: thermal_sum, threshold_c: 10}, or none")
	case kind == ThermalSum && (threshold == nil || at != nil):
		problem("write {kind: thermal_sum, threshold_c: 10} and nothing else")
	case kind == ThermalSum:
		if c, ok := read(doc, threshold, "threshold_c", celsius); ok {
			*v.to = Law{Kind: kind, ThresholdC: c, Source: in.group}
		}
	case kind == FallingQ10 && (at == nil || threshold != nil):
		problem("write {kind: q10, at: [[15, 3], [20, 2.5]]} and nothing else")
	case kind == FallingQ10:
		if factors, ok := readFactors(doc, at); ok {
			*v.to = Law{Kind: kind, At: factors, Source: in.group}
		}
	}
}

func readFactors(doc *strictyaml.Document, n *yaml.Node) (factors []Factor, ok bool) {
	const cure = "write pairs of a temperature in °C and the factor for ten degrees there, such as at: [[15, 3], [20, 2.5]]"
	if n.Kind != yaml.SequenceNode || len(n.Content) == 0 {
		doc.Errorf(n, cure, "at is not a list of pairs")
		return nil, false
	}
	ok = true
	for i, pair := range n.Content {
		if pair.Kind != yaml.SequenceNode || len(pair.Content) != 2 {
			doc.Errorf(pair, cure, "at is not a list of pairs")
			return nil, false
		}
		c, good := read(doc, pair.Content[0], "at", celsius)
		q, good2 := read(doc, pair.Content[1], "at", tenDegrees)
		factors = append(factors, Factor{c, q})
		ok = ok && good && good2
		if ok && i > 0 && c <= factors[i-1].AtC {
			doc.Errorf(pair, "write the coldest first, and each temperature once", "the temperatures of at must rise")
			return nil, false
		}
	}
	return factors, ok
}

func (v lawValue) show() string {
	if v.to.Kind == ThermalSum {
		return "degrees above " + plain(v.to.ThresholdC) + celsius.unit
	}
	words := make([]string, len(v.to.At))
	for i, f := range v.to.At {
		words[i] = fmt.Sprintf("%s at %s%s", plain(f.Q10), plain(f.AtC), celsius.unit)
	}
	return "Q10 " + strings.Join(words, ", ")
}

func (v lawValue) source() *string { return &v.to.Source }
