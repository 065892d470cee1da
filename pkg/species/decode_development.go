package species

import (
	"slices"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func (p *Profile) readDevelopment(s *scope) {
	development := s.sub("development", "the development")
	if development == nil {
		return
	}
	for _, name := range stepNames {
		if n := development.Take(name.key()); n != nil {
			p.readStep(development, n, name)
		}
	}
	development.Done()
	slices.SortStableFunc(p.Development, func(a, b Step) int {
		return slices.Index(stepNames, a.Name) - slices.Index(stepNames, b.Name)
	})
}

func (p *Profile) readStep(development *scope, n *yaml.Node, name StepName) {
	before, _ := p.Step(name)
	step := before
	p.Development = slices.DeleteFunc(p.Development, func(s Step) bool { return s.Name == name })
	step.Name = name
	in := development.below(n, name.key(), "the step "+string(name))
	in.fields(step.fields())
	step.checkLaw(development.Doc(), n, before)
	p.Development = append(p.Development, step)
	if n.Kind != yaml.MappingNode {
		return
	}
	days, warm := in.Key("days"), in.Has("at_c")
	changed := step.Days != before.Days
	if step.HindLegsPct.P50 > step.ToesPct.P50 && step.ToesPct.Known() {
		development.Doc().Warnf(n, "check hind_legs_pct and toes_pct", "the toes are free before there are hind legs")
	}
	switch doc := development.Doc(); {
	case !in.Has("days") && !step.Days.Known():
		doc.Errorf(n, "add days: [10th, 50th, 90th percentile]", "the step %s has no days", name)
	case changed && !warm && step.AtC.Known():
		doc.Warnf(days, "add at_c: the temperature of these days", "days of the step %s are counted as if they were at %s", name, rangeValue{to: &step.AtC, measure: celsius}.show())
	case changed && !warm:
		doc.Warnf(days, "add at_c: the temperature of these days", "the step %s has no temperature, so its days hold at any", name)
	}
}

// checkLaw reports a law that cannot be used with the temperatures of the step;
// what was there before stays then. n is the step.
func (s *Step) checkLaw(doc *strictyaml.Document, n *yaml.Node, before Step) {
	lowest := s.AtC.Low
	if s.CoversC.Known() {
		lowest = min(lowest, s.CoversC.Low)
	}
	switch {
	case !s.Law.Known():
		return
	case !s.AtC.Known():
		doc.Errorf(n, "add at_c: the temperature of its days", "the step %s has a law, but no temperature at which its days hold", s.Name)
	case s.Law.Kind == ThermalSum && s.Law.ThresholdC >= lowest:
		doc.Errorf(n, "write a threshold_c below "+plain(lowest)+celsius.unit, "by its law the step %s never ends at %s", s.Name, plain(lowest)+celsius.unit)
	default:
		return
	}
	s.AtC, s.Law, s.CoversC = before.AtC, before.Law, before.CoversC
}

// checkWarmth warns of a step that is timed outside the temperatures that the
// young may be kept at. It says so only where the file gives one of the two.
func (p *Profile) checkWarmth(s *scope) {
	if !p.Safe.Known() {
		return
	}
	safe := rangeValue{to: &p.Safe, measure: celsius}.show()
	for _, step := range p.Development {
		outside := step.AtC.Known() && (step.AtC.Low < p.Safe.Low || step.AtC.High > p.Safe.High)
		if n := s.warmth(step.Name); outside && n != nil {
			s.Doc().Warnf(n, "check both", "at_c of the step %s is outside safe_c, %s", step.Name, safe)
		}
	}
}

// warmth is the place in the file that set how warm a step or the young are
// kept; nil when neither is there.
func (s *scope) warmth(name StepName) *yaml.Node {
	n := s.Node
	for _, key := range []string{"development", name.key(), "at_c"} {
		if n = strictyaml.Value(n, key); n == nil {
			return strictyaml.Value(s.Node, "safe_c")
		}
	}
	return n
}
