package species

import (
	"slices"

	"go.yaml.in/yaml/v3"
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
	p.Development = append(p.Development, step)
	if n.Kind != yaml.MappingNode {
		return
	}
	days, at := in.Key("days"), in.Key("at_c")
	changed := step.Days != before.Days
	switch doc := development.Doc(); {
	case days == nil && !step.Days.Known():
		doc.Errorf(n, "add days: [10th, 50th, 90th percentile]", "the step %s has no days", name)
	case changed && at == nil && step.AtC.Known():
		doc.Warnf(days, "add at_c: the temperature of these days", "days of the step %s are counted as if they were at %s", name, rangeValue{to: &step.AtC, measure: celsius}.show())
	case changed && at == nil:
		doc.Warnf(days, "add at_c: the temperature of these days", "the step %s has no temperature, so its days hold at any", name)
	}
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

// warmth is the place in the file that set how warm a step or the young are kept.
func (s *scope) warmth(name StepName) *yaml.Node {
	for _, path := range [][]string{{"development", name.key(), "at_c"}, {"safe_c"}} {
		if n := find(s.Node, path); n != nil {
			return n
		}
	}
	return nil
}

// find follows the keys of path down from n.
func find(n *yaml.Node, path []string) *yaml.Node {
	for _, key := range path {
		at := -1
		for i := 0; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
			if n.Content[i].Value == key {
				at = i + 1
				break
			}
		}
		if at < 0 {
			return nil
		}
		n = n.Content[at]
	}
	return n
}
