package species

import "github.com/spawnwright/spawnwright/pkg/strictyaml"

// KeepersFile is the source of a value for which a keeper's file gives none.
const KeepersFile = "the keeper's file"

// FromMapping reads one entry of `species:` in a keeper's file, in any of its
// forms: `use` adapts a built-in profile and keeps its id; `id` with `like`
// starts a profile of the keeper's own from a built-in one; `id` alone is a
// profile written out whole. It takes all keys of m, and calls m.Done.
//
// Problems are reported into the document of m. The result is nil when the
// entry does not say which species it is about; otherwise it is what could be
// read.
func FromMapping(m *strictyaml.Mapping) *Profile { return nil }

// Apply changes the values of p that m gives, and reports problems into the
// document of m. Each changed value takes the source that stands beside it, or
// [KeepersFile]. The id stays; cautions are added to those there are. It calls
// m.Done: a caller that knows more keys takes them before.
func (p *Profile) Apply(m *strictyaml.Mapping) {}
