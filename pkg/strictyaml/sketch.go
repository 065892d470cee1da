package strictyaml

import "go.yaml.in/yaml/v3"

// A sketch is a document in which nothing stands. What a reader asks it for is
// noted, so that a schema is as the reader is and cannot forget a key.
type sketch struct {
	of map[*yaml.Node]*Schema // of every node that was handed out
}

// SchemaOf gives the schema of all that read takes from the root of a document.
// Read meets a document in which every value is there, has no kind and nothing
// in it, and every list has one entry; problems that it reports are dropped.
// [Document.Describe] tells what the schema does not find out by itself.
func SchemaOf(read func(*Document)) *Schema {
	doc := &Document{sketch: &sketch{of: make(map[*yaml.Node]*Schema)}}
	root := &Schema{}
	doc.Root = doc.sketch.node(root)
	read(doc)
	root.finish()
	return root
}

// node hands out a node for what s describes.
func (k *sketch) node(s *Schema) *yaml.Node {
	n := &yaml.Node{}
	k.of[n] = s
	return n
}

// Sketching reports whether doc is that of [SchemaOf].
func (doc *Document) Sketching() bool { return doc.sketch != nil }

// Describe says what a reader takes for n. The first description of a node
// holds; the readers of this package describe by themselves. Outside [SchemaOf]
// it does nothing.
func (doc *Document) Describe(n *yaml.Node, s *Schema) {
	if doc.sketch == nil || n == nil {
		return
	}
	if known := doc.sketch.of[n]; known != nil && !known.described() {
		*known = *s
	}
}

// Or says that something else may stand for the whole of n, which was described.
// It does nothing outside [SchemaOf].
func (doc *Document) Or(n *yaml.Node, other *Schema) {
	if doc.sketch == nil {
		return
	}
	if known := doc.sketch.of[n]; known != nil {
		first := *known
		*known = *Either(&first, other)
	}
}

// sketched notes that a key is asked for and hands out its node.
func (m *Mapping) sketched(key string) *yaml.Node {
	s := m.sketch.of(key)
	for n, of := range m.doc.sketch.of {
		if of == s {
			return n
		}
	}
	return m.doc.sketch.node(s)
}

// sketchedList hands out the one entry of a list.
func (doc *Document) sketchedList(n *yaml.Node) []*yaml.Node {
	item := &Schema{}
	doc.Describe(n, ListOf(item, 0, 0))
	return []*yaml.Node{doc.sketch.node(item)}
}

// Require says that a key must be there. It does nothing outside [SchemaOf].
func (m *Mapping) Require(keys ...string) {
	if m.sketch != nil {
		m.sketch.Required = append(m.sketch.Required, keys...)
	}
}

// OneOf says that exactly one of some keys must be there. It does nothing
// outside [SchemaOf].
func (m *Mapping) OneOf(keys ...string) {
	if m.sketch == nil {
		return
	}
	for _, key := range keys {
		// A key with nothing behind it counts as left out.
		there := Properties{{key, &Schema{Type: []string{"string", "number", "boolean", "array", "object"}}}}
		m.sketch.OneOf = append(m.sketch.OneOf, &Schema{Properties: there, Required: []string{key}})
	}
}
