package collection

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// species reads the keeper's profiles. Those that are built in join them when
// they are named for the first time.
func (r *reader) species(top *strictyaml.Mapping) {
	lines := make(map[string]*yaml.Node)
	for _, n := range top.List("species") {
		p := species.FromMapping(r.doc.Mapping(n, "a species"))
		if p == nil || p.ID == "" {
			continue
		}
		at := n
		if id := cmp.Or(strictyaml.Value(n, "id"), strictyaml.Value(n, "use")); id != nil {
			at = id
		}
		if first, twice := lines[p.ID]; twice {
			r.doc.Errorf(at, "put all of it into one entry", "species %q stands twice, first in line %d", p.ID, first.Line)
			continue
		}
		lines[p.ID] = at
		r.addProfile(p)
	}
}

func (r *reader) addProfile(p *species.Profile) {
	r.c.profiles[p.ID] = p
	i, _ := slices.BinarySearchFunc(r.c.Species, p.ID, func(q *species.Profile, id string) int { return strings.Compare(q.ID, id) })
	r.c.Species = slices.Insert(r.c.Species, i, p)
}

// speciesID takes the id of a species that there is a profile of.
func (r *reader) speciesID(m *strictyaml.Mapping) string {
	n := m.Take("species")
	if n == nil {
		return ""
	}
	return r.knownSpecies(n)
}

// neededSpecies takes the id of a species that must be given.
func (r *reader) neededSpecies(m *strictyaml.Mapping) string {
	n := r.required(m, "species")
	if n == nil {
		return ""
	}
	return r.knownSpecies(n)
}

func (r *reader) knownSpecies(n *yaml.Node) string {
	r.doc.Describe(n, speciesSchema)
	id := r.doc.Text(n, "species")
	if p, ok := r.c.profiles[id]; ok {
		return p.ID // one string for all animals of a species
	}
	if p, ok := species.Find(id); ok {
		r.addProfile(p)
		return p.ID
	}
	if id != "" || isEmpty(n) {
		r.doc.Errorf(n, r.speciesCure(id), "species %q is not known", id)
	}
	return ""
}

// speciesCure gives the same cure to all animals that share a slip.
func (r *reader) speciesCure(id string) string {
	cure, ok := r.cures[id]
	if !ok {
		cure = cmp.Or(r.speciesNamed(id), r.nearest(id, r.speciesIDs))
		if cure == "" {
			cure = "`spawnwright species list` shows those that are built in; others stand under species:"
		}
		r.cures[id] = cure
	}
	return cure
}

// speciesNamed is the cure for the name of a species in the place of its id.
func (r *reader) speciesNamed(name string) string {
	if name == "" {
		return "" // as many profiles have no common name
	}
	for _, p := range slices.Concat(r.c.Species, species.Builtin()) {
		if strings.EqualFold(name, p.CommonName) || strings.EqualFold(name, p.Name) {
			return fmt.Sprintf("that is a name; its id is %q", p.ID)
		}
	}
	return ""
}

// speciesIDs gives the ids of all profiles, built in or the keeper's.
func (r *reader) speciesIDs() []string {
	var ids []string
	for _, p := range r.c.Species {
		ids = append(ids, p.ID)
	}
	for _, p := range species.Builtin() {
		ids = append(ids, p.ID)
	}
	slices.Sort(ids)
	return slices.Compact(ids)
}
