package species

import (
	"slices"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

func (p *Profile) readCycle(s *scope) {
	cycle := s.sub("cycle", "the cycle")
	if cycle == nil {
		return
	}
	for _, name := range phaseNames {
		if n := cycle.Take(name.key()); n != nil {
			p.readPhase(cycle, n, name)
		}
	}
	cycle.Done()
	slices.SortStableFunc(p.Cycle, func(a, b Phase) int {
		return slices.Index(phaseNames, a.Name) - slices.Index(phaseNames, b.Name)
	})
}

// readPhase changes, adds, or for the word none takes out a phase.
func (p *Profile) readPhase(cycle *scope, n *yaml.Node, name PhaseName) {
	phase, _ := p.Phase(name)
	p.Cycle = slices.DeleteFunc(p.Cycle, func(ph Phase) bool { return ph.Name == name })
	if n.Kind == yaml.ScalarNode && n.Value == "none" {
		return
	}
	phase.Name = name
	in := cycle.below(n, name.key(), "the phase "+string(name))
	in.fields(phase.fields())
	cycle.Doc().Or(n, strictyaml.OneOfWords("none"))
	if !phase.Days.Known() && n.Kind == yaml.MappingNode && !in.Has("days") {
		cycle.Doc().Errorf(n, "add days: [at least, usually, at most]", "the phase %s has no days", name)
	}
	p.Cycle = append(p.Cycle, phase)
}
