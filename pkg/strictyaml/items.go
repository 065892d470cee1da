package strictyaml

import "go.yaml.in/yaml/v3"

// Item is an entry of a list: where it begins, and how to come to what stands
// in it. One that was read by line is no more than its place, for the nodes of a
// large list are many times the size of its text.
type Item struct {
	At   Position
	node *yaml.Node // nil when it stands in its line and nowhere else
}

// itemsOf gives nodes as items.
func itemsOf(list []*yaml.Node) []Item {
	items := make([]Item, len(list))
	for i, n := range list {
		items[i] = Item{PositionOf(n), n}
	}
	return items
}

// Items takes a list as [Mapping.List] does, without the nodes of a large one.
func (m *Mapping) Items(key string) []Item {
	n := m.list(key)
	switch {
	case n == nil:
		return nil
	case m.sketch != nil:
		return itemsOf(m.doc.sketchedList(n))
	}
	return m.doc.Items(n)
}

// Items gives the entries of a list.
func (doc *Document) Items(list *yaml.Node) []Item {
	if items, ok := doc.byLine[list]; ok {
		return items
	}
	return itemsOf(list.Content)
}

// Node gives an entry as a node. One that was read by line is made anew by each
// call.
func (doc *Document) Node(item Item) *yaml.Node { return doc.node(item, new(nodes)) }

// EachMapping reads the entries of a list as mappings, one after the other. Memory
// is used again for each: no mapping or node may be kept. What names an entry, as
// in [Document.Mapping].
func (doc *Document) EachMapping(items []Item, what string, read func(i int, m *Mapping)) {
	var room nodes
	for i, item := range items {
		room.reuse()
		read(i, doc.Mapping(doc.node(item, &room), what))
	}
}

func (doc *Document) node(item Item, in *nodes) *yaml.Node {
	if item.node != nil {
		return item.node
	}
	text := doc.lines[item.At.Line-1][item.At.Column-1:] // only blanks and a dash before it
	return in.entry(text, item.At.Line, item.At.Column)
}

// nodesOf gives the entries of a list as nodes.
func (doc *Document) nodesOf(list *yaml.Node) []*yaml.Node {
	items, ok := doc.byLine[list]
	if !ok {
		return list.Content
	}
	var room nodes
	made := make([]*yaml.Node, len(items))
	for i, item := range items {
		made[i] = doc.node(item, &room)
	}
	return made
}
