package collection

import (
	"regexp"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

var ruleName = regexp.MustCompile(`^[a-z]+(-[a-z]+)*$`)

func (r *reader) rules(top *strictyaml.Mapping) Rules {
	rules := Rules{WarnInbreeding: defaultWarnInbreeding, MaxInbreeding: defaultMaxInbreeding, SpacePct: defaultSpacePct}
	m := top.Sub("rules", "rules")
	if m == nil {
		return rules
	}
	r.inbreeding(m, &rules)
	rules.PairingsASeason = given(m.Int("pairings_a_season", 1, maxCount))
	rules.ClutchesASeason, _ = m.Int("clutches_a_season", 1, maxCount)
	rules.Relax = r.relaxed(m)
	r.spacePct(m, &rules.SpacePct)
	m.Done()
	return rules
}

// inbreeding takes the two limits; when only one is given, the default of the
// other gives way to it.
func (r *reader) inbreeding(m *strictyaml.Mapping, rules *Rules) {
	warn, warned := m.Float("warn_inbreeding", 0, 1)
	most, refused := m.Float("max_inbreeding", 0, 1)
	switch {
	case warned && refused && warn > most:
		r.doc.Errorf(strictyaml.Value(m.Node, "warn_inbreeding"), "make it the smaller one",
			"warn_inbreeding %v is above max_inbreeding %v", warn, most)
	case warned && !refused:
		rules.WarnInbreeding, rules.MaxInbreeding = warn, max(warn, defaultMaxInbreeding)
	case refused && !warned:
		rules.WarnInbreeding, rules.MaxInbreeding = min(defaultWarnInbreeding, most), most
	case warned && refused:
		rules.WarnInbreeding, rules.MaxInbreeding = warn, most
	}
}

// relaxed takes the names of rules. Which rules there are is not known here.
func (r *reader) relaxed(m *strictyaml.Mapping) []RelaxedRule {
	var rules []RelaxedRule
	list := m.List("relax")
	for _, n := range list {
		r.doc.Describe(n, ruleSchema)
		name := r.doc.Text(n, "relax")
		switch {
		case ruleName.MatchString(name):
			rules = append(rules, RelaxedRule{Name: name, At: strictyaml.PositionOf(n)})
		case name != "" || isEmpty(n):
			r.doc.Errorf(n, "write the name of a rule in small letters, such as rest", "relax cannot be %q", name)
		}
	}
	r.twice(list, "relax")
	return rules
}

// spacePct takes the two percentiles of the time in which tubs and bins are
// kept free.
func (r *reader) spacePct(m *strictyaml.Mapping, to *[2]int) {
	n := m.Take("space_pct")
	if n == nil {
		return
	}
	r.doc.Describe(n, spaceSchema)
	if n.Kind != yaml.SequenceNode || len(n.Content) != 2 {
		r.doc.Errorf(n, "write two whole numbers, such as space_pct: [10, 90]", "space_pct is not a list of 2 numbers")
		return
	}
	first, ok := r.doc.Int(n.Content[0], "the first of space_pct", 1, 50)
	second, also := r.doc.Int(n.Content[1], "the second of space_pct", 50, 99)
	if ok && also {
		*to = [2]int{first, second}
	}
}
