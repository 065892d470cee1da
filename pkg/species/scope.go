package species

import (
	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// A scope is a mapping of values with the sources that stand beside them.
type scope struct {
	*strictyaml.Mapping
	group  string            // source of all values in the mapping; empty when none was given
	single map[string]string // sources of single keys
}

// open takes `source` and `sources` of m. A value with neither has the source
// of the mapping around m, outer.
func open(m *strictyaml.Mapping, outer string) *scope {
	s := &scope{Mapping: m, group: outer, single: map[string]string{}}
	doc := m.Doc()
	if n := m.Take("source"); n != nil {
		if text, ok := readLine(doc, n, "source"); ok {
			s.group = text
		}
	}
	sources := m.Sub("sources", "the sources of "+m.What())
	if sources == nil {
		return s
	}
	keys, values := sources.Rest()
	for i, k := range keys {
		if m.Key(k.Value) == nil {
			doc.Errorf(k, "name a key that stands beside it", "sources has %q, which is not a key of %s", k.Value, m.What())
			continue
		}
		if text, ok := readLine(doc, values[i], "the source of "+k.Value); ok {
			s.single[k.Value] = text
		}
	}
	return s
}

// source of the value or the mapping that stands under key.
func (s *scope) source(key string) string {
	if text := s.single[key]; text != "" {
		return text
	}
	return s.group
}

// sub opens a mapping below s; nil when it is missing.
func (s *scope) sub(key, what string) *scope {
	n := s.Take(key)
	if n == nil {
		return nil
	}
	return s.below(n, key, what)
}

// below opens the mapping n that was taken from key.
func (s *scope) below(n *yaml.Node, key, what string) *scope {
	return open(s.Doc().Mapping(n, what), s.source(key))
}

// fields reads the given fields and then reports what was not taken.
func (s *scope) fields(fields []field) {
	s.some(fields)
	s.Done()
}

// some reads the given fields.
func (s *scope) some(fields []field) {
	for _, f := range fields {
		if n := s.Take(f.key); n != nil && s.sourced(n, f.key) {
			f.value.read(s.Doc(), n, f.key, s.source(f.key))
		}
	}
}

// sourced reports a value without a source, which only a built-in profile can
// have: in a keeper's file the file itself is the source.
func (s *scope) sourced(n *yaml.Node, key string) bool {
	if s.source(key) != "" {
		return true
	}
	s.Doc().Errorf(n, "write `source` beside it", "%s of %s has no source", key, s.What())
	return false
}
