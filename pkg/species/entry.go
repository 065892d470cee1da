package species

import (
	"regexp"
	"strings"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

var idForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// FromMapping reads one entry of `species:` in a keeper's file, in any of its
// forms: `use` adapts a built-in profile and keeps its id; `id` with `like`
// starts a profile of the keeper's own from a built-in one; `id` alone is a
// profile written out whole. The values are read as by [Profile.Apply], and
// m.Done is called.
//
// Problems are reported into the document of m. The result is nil when the
// entry does not say which species it is about; otherwise it is what could be
// read.
func FromMapping(m *strictyaml.Mapping) *Profile {
	doc := m.Doc()
	use, id, like := m.Take("use"), m.Take("id"), m.Take("like")
	m.OneOf("use", "id")
	var p *Profile
	switch {
	case doc.Sketching():
		describe(doc, use, id, like)
		p = &Profile{}
	case use != nil && (id != nil || like != nil):
		doc.Errorf(use, "keep use to change a built-in profile, or id for one of your own", "use stands beside id or like")
	case use != nil:
		p = named(doc, use, "use")
	case id != nil:
		p = ownProfile(doc, m, id, like)
	case m.Node.Kind == yaml.MappingNode:
		doc.Errorf(m.Node, "add use: and a built-in profile, or id: and a name of your own", "%s does not say which species it is about", m.What())
	}
	if p != nil {
		p.Apply(m)
	}
	return p
}

func describe(doc *strictyaml.Document, ids ...*yaml.Node) {
	for _, n := range ids {
		doc.Describe(n, &strictyaml.Schema{Type: []string{"string"}, Pattern: idForm.String()})
	}
}

// ownProfile starts a profile of the keeper's own, empty or like a built-in one.
func ownProfile(doc *strictyaml.Document, m *strictyaml.Mapping, id, like *yaml.Node) *Profile {
	text := doc.Text(id, "id")
	_, taken := Find(text)
	switch {
	case !idForm.MatchString(text):
		doc.Errorf(id, "write small letters, digits and hyphens, such as agalychnis-callidryas", "%q is not an id of a species", text)
		return nil
	case taken:
		doc.Errorf(id, "write use: "+text+" to change it, or choose another id", "%s is built in", text)
		return nil
	}
	nameless(doc, m, id)
	if like != nil {
		return borrowed(named(doc, like, "like"), text)
	}
	return &Profile{ID: text}
}

// borrowed makes p a profile of another species: its values say whose they are.
func borrowed(p *Profile, id string) *Profile {
	if p == nil {
		return nil
	}
	as := "as in " + p.Name + ": "
	p.each(func(_ string, fields []field) {
		for _, f := range fields {
			if source := f.value.source(); *source != "" {
				*source = as + *source
			}
		}
	})
	for i := range p.Cautions {
		p.Cautions[i].Source = as + p.Cautions[i].Source
	}
	p.ID, p.Name, p.CommonName = id, "", ""
	return p
}

// nameless reports an own profile without a scientific name.
func nameless(doc *strictyaml.Document, m *strictyaml.Mapping, id *yaml.Node) {
	if !m.Has("name") {
		doc.Errorf(id, "add name: and the scientific name", "the species %s has no name", id.Value)
	}
}

// named finds the built-in profile that n names.
func named(doc *strictyaml.Document, n *yaml.Node, key string) *Profile {
	text := doc.Text(n, key)
	if text == "" {
		return nil
	}
	if p, ok := Find(text); ok {
		return p
	}
	cure := strictyaml.DidYouMean(text, builtinIDs())
	if cure == "" {
		cure = "built in are " + strings.Join(builtinIDs(), ", ")
	}
	doc.Errorf(n, cure, "there is no built-in profile %q", text)
	return nil
}
