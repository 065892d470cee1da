package species

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// A profile that is written out by an obvious writer reads back as it was.
func TestWrittenProfileReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := drawProfile(t)
		text := write(want)
		doc := strictyaml.Parse("c.yaml", []byte(text))
		if doc.Root == nil {
			t.Fatalf("%v\n%s", doc.Problems(), text)
		}
		got := FromMapping(doc.Mapping(doc.Root, "a species"))
		if err := doc.Problems().Err(); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("%s\n%s", diff, text)
		}
	})
}

func drawProfile(t *rapid.T) *Profile {
	p := &Profile{ID: "own-species", Name: "Own species"}
	for _, name := range phaseNames {
		if rapid.Bool().Draw(t, string(name)) {
			p.Cycle = append(p.Cycle, Phase{Name: name})
		}
	}
	for _, name := range stepNames {
		if rapid.Bool().Draw(t, string(name)) {
			p.Development = append(p.Development, Step{Name: name})
		}
	}
	p.each(func(section string, fields []field) {
		for _, f := range fields {
			if f.key == "days" || f.key == "at_c" || rapid.Bool().Draw(t, section+" "+f.key) {
				drawValue(t, f.value)
			}
		}
	})
	for range rapid.IntRange(0, 3).Draw(t, "cautions") {
		p.Cautions = append(p.Cautions, Text{fmt.Sprint("caution ", len(p.Cautions)), "me"})
	}
	return p
}

func drawValue(t *rapid.T, v value) {
	numbers := func(m measure, count int) []float64 {
		list := make([]float64, count)
		for i := range list {
			low, high := int(m.low*100+0.5), int(m.high*100)
			if m.low < 0 {
				low = int(m.low * 100)
			}
			list[i] = float64(rapid.IntRange(low, high).Draw(t, "hundredths")) / 100
		}
		slices.Sort(list)
		return list
	}
	switch v := v.(type) {
	case rangeValue:
		n := numbers(v.measure, 2)
		*v.to = Range{n[0], n[1], "range's source"}
	case numberValue:
		*v.to = Number{numbers(v.measure, 1)[0], "number: source"}
	case shareValue:
		*v.to = Number{numbers(measure{"", 0, 1}, 1)[0], "share # source"}
	case percentilesValue:
		n := numbers(v.measure, 3)
		*v.to = Percentiles{n[0], n[1], n[2], "percentiles \"source\""}
	case daysValue:
		n := numbers(measure{"", 0.01, 7.3}, 3)
		*v.to = Days{int(n[0]*100 + 0.5), int(n[1]*100 + 0.5), int(n[2]*100 + 0.5), "days, source"}
	case textValue:
		*v.to = Text{rapid.StringMatching(`[a-zé:#'"{}\[\]&*!|>%-]{1,9}( [a-z0-9°]{1,9})*`).Draw(t, "text"), "text; source"}
	case placeValue:
		*v.to = Text{rapid.SampledFrom(places).Draw(t, "place"), "- source"}
	case lawValue:
		drawLaw(t, v.to, numbers)
	default:
		t.Fatalf("nobody draws a %T", v)
	}
}

// drawLaw draws factors only: a threshold may not lie anywhere.
func drawLaw(t *rapid.T, to *Law, numbers func(measure, int) []float64) {
	at := slices.Compact(numbers(celsius, 3))
	*to = Law{Kind: FallingQ10, Source: "law's source"}
	for _, c := range at {
		to.At = append(to.At, Factor{c, numbers(tenDegrees, 1)[0]})
	}
}

// write gives p as block YAML, with a sources key in each mapping.
func write(p *Profile) string {
	var b strings.Builder
	fmt.Fprintf(&b, "id: %s\nname: %s\n", p.ID, p.Name)
	opened, sources := "", map[string]string{}
	p.each(func(section string, fields []field) {
		parent, child, nested := strings.Cut(section, ": ")
		indent := ""
		switch {
		case nested && parent != opened:
			fmt.Fprintf(&b, "%s:\n", parent)
			fallthrough
		case nested:
			fmt.Fprintf(&b, "  %s:\n", strings.ReplaceAll(child, "-", "_"))
			indent = "    "
		case section != "":
			fmt.Fprintf(&b, "%s:\n", section)
			indent = "  "
		}
		opened = parent
		mine := map[string]string{}
		for _, f := range fields {
			if *f.value.source() != "" {
				fmt.Fprintf(&b, "%s%s: %s\n", indent, f.key, written(f.value))
				mine[f.key] = *f.value.source()
			}
		}
		if section == "" {
			maps.Copy(sources, mine)
			return
		}
		writeSources(&b, indent, mine)
	})
	if len(p.Cautions) > 0 {
		b.WriteString("cautions:\n")
		for _, c := range p.Cautions {
			fmt.Fprintf(&b, "- {text: %q, source: %q}\n", c.Value, c.Source)
		}
	}
	writeSources(&b, "", sources)
	return b.String()
}

func writeSources(b *strings.Builder, indent string, sources map[string]string) {
	if len(sources) == 0 {
		return
	}
	fmt.Fprintf(b, "%ssources:\n", indent)
	for _, key := range slices.Sorted(maps.Keys(sources)) {
		fmt.Fprintf(b, "%s  %s: %q\n", indent, key, sources[key])
	}
}

func written(v value) string {
	list := func(numbers ...float64) string {
		words := make([]string, len(numbers))
		for i, n := range numbers {
			words[i] = strconv.FormatFloat(n, 'f', -1, 64)
		}
		return "[" + strings.Join(words, ", ") + "]"
	}
	switch v := v.(type) {
	case rangeValue:
		return list(v.to.Low, v.to.High)
	case numberValue:
		return strings.Trim(list(v.to.Value), "[]")
	case shareValue:
		return strings.Trim(list(v.to.Value), "[]")
	case percentilesValue:
		return list(v.to.P10, v.to.P50, v.to.P90)
	case daysValue:
		return fmt.Sprintf("[%d, %d, %d]", v.to.Min, v.to.Usual, v.to.Max)
	case textValue:
		return strconv.Quote(v.to.Value)
	case placeValue:
		return strconv.Quote(v.to.Value)
	case lawValue:
		pairs := make([]string, len(v.to.At))
		for i, f := range v.to.At {
			pairs[i] = list(f.AtC, f.Q10)
		}
		return "{kind: q10, at: [" + strings.Join(pairs, ", ") + "]}"
	}
	return ""
}
