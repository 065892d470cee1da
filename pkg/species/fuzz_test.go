package species

import (
	"testing"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Whatever stands in an entry, reading it ends, and an entry without errors
// gives values inside their limits.
func FuzzFromMapping(f *testing.F) {
	for _, seed := range []string{
		"use: xenopus-laevis\nsafe_c: [1, 2]",
		"{id: a, name: A, like: hyla-cinerea, cycle: {cooling: none, rain: {days: [1, 2, 3]}}}",
		"{id: a, name: A, development: {egg: {days: [1, 2, 3], at_c: 20, source: x, sources: {days: y}}}}",
		"{use: hyla-cinerea, cautions: [a, {text: b, source: c}, [d], {}], adult: {tank: ''}}",
		"{use: hyla-cinerea, maturity: {male: {age_days: -1}}, sources: {maturity: {}}, source: []}",
		"development: {egg: {days: [9, 2, {}]}}\nuse: hyla-cinerea\nuse: b",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		doc := strictyaml.Parse("c.yaml", data)
		if doc.Root == nil {
			return
		}
		p := FromMapping(doc.Mapping(doc.Root, "a species"))
		problems := doc.Problems()
		if p == nil && !problems.HasErrors() {
			t.Fatal("no profile and no error")
		}
		if p == nil || problems.HasErrors() {
			return
		}
		if p.ID == "" || p.Name == "" {
			t.Fatalf("a profile without a name: %+v", p)
		}
		for _, row := range p.Rows() {
			if row.Value == "" {
				t.Errorf("%s %s has a source and no value", row.Section, row.Key)
			}
		}
		checkLimits(t, p)
	})
}

func checkLimits(t *testing.T, p *Profile) {
	for _, ph := range p.Cycle {
		if d := ph.Days; d.Min < 1 || d.Min > d.Usual || d.Usual > d.Max {
			t.Errorf("days of %s: %v", ph.Name, d)
		}
	}
	for _, s := range p.Development {
		if d := s.Days; d.P10 <= 0 || d.P10 > d.P50 || d.P50 > d.P90 {
			t.Errorf("days of %s: %v", s.Name, d)
		}
		if v := s.Survival.Value; v < 0 || v > 1 {
			t.Errorf("survival of %s: %v", s.Name, v)
		}
		if c := s.AtC; c.Low < -5 || c.Low > c.High || c.High > 50 {
			t.Errorf("at_c of %s: %v", s.Name, c)
		}
	}
	if h := p.Adult.HumidityPct; h.Low < 0 || h.Low > h.High || h.High > 100 {
		t.Errorf("humidity: %v", h)
	}
}
