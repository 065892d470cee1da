package species

import (
	"embed"
	"maps"
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
	profiles := make([]*Profile, 0, len(parsed()))
	for _, id := range builtinIDs() {
		profiles = append(profiles, parsed()[id]().Clone())
	}
	return profiles
}

// Find gives a copy of the built-in profile with that id, and false when there
// is none. Only this profile is read, when it is asked for first.
func Find(id string) (*Profile, bool) {
	profile, ok := parsed()[id]
	if !ok {
		return nil, false
	}
	return profile().Clone(), true
}

// builtinIDs gives the ids of the built-in profiles in order.
func builtinIDs() []string { return slices.Sorted(maps.Keys(parsed())) }

// parsed holds the built-in profiles by id, for reading only. Each is read when
// it is asked for.
var parsed = sync.OnceValue(func() map[string]func() *Profile {
	entries, err := files.ReadDir("profiles")
	if err != nil {
		panic("species: the built-in profiles are missing: " + err.Error())
	}
	profiles := make(map[string]func() *Profile, len(entries))
	for _, entry := range entries {
		profiles[strings.TrimSuffix(entry.Name(), ".yaml")] = sync.OnceValue(func() *Profile { return load(entry.Name()) })
	}
	return profiles
})

// load reads a built-in profile.
func load(name string) *Profile {
	data, err := files.ReadFile("profiles/" + name)
	if err != nil {
		panic("species: a built-in profile is missing: " + err.Error())
	}
	p, problems := parseBuiltin(name, data)
	if err := problems.Err(); err != nil {
		panic("species: a built-in profile is wrong: " + err.Error())
	}
	return p
}

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
