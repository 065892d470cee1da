package species

import (
	"embed"
	"slices"
	"strings"
	"sync"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

//go:embed profiles/*.yaml
var files embed.FS

// Builtin gives the built-in profiles, sorted by id. They are copies that the
// caller may change. The first call reads them all, which takes milliseconds.
func Builtin() []*Profile {
	profiles := slices.Clone(parsed())
	for i, p := range profiles {
		profiles[i] = p.Clone()
	}
	return profiles
}

// Find gives a copy of the built-in profile with that id, and false when there
// is none.
func Find(id string) (*Profile, bool) {
	at, ok := slices.BinarySearchFunc(parsed(), id, func(p *Profile, id string) int { return strings.Compare(p.ID, id) })
	if !ok {
		return nil, false
	}
	return parsed()[at].Clone(), true
}

// parsed holds the built-in profiles, sorted by id, for reading only.
var parsed = sync.OnceValue(func() []*Profile {
	entries, err := files.ReadDir("profiles")
	if err != nil {
		panic("species: the built-in profiles are missing: " + err.Error())
	}
	profiles := make([]*Profile, len(entries))
	for i, entry := range entries {
		data, err := files.ReadFile("profiles/" + entry.Name())
		if err != nil {
			panic("species: a built-in profile is missing: " + err.Error())
		}
		p, problems := parseBuiltin(entry.Name(), data)
		if err := problems.Err(); err != nil {
			panic("species: a built-in profile is wrong: " + err.Error())
		}
		profiles[i] = p
	}
	slices.SortFunc(profiles, func(a, b *Profile) int { return strings.Compare(a.ID, b.ID) })
	return profiles
})

// parseBuiltin reads a profile in which every value must have a source. The
// name of the file is the id.
func parseBuiltin(name string, data []byte) (*Profile, strictyaml.Diagnostics) {
	p := &Profile{ID: strings.TrimSuffix(name, ".yaml")}
	doc := strictyaml.Parse(name, data)
	if doc.Root != nil {
		p.read(doc.Mapping(doc.Root, "the profile"), "")
	}
	return p, doc.Problems()
}
