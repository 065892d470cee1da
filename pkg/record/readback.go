package record

import (
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// reading is what was read before and after a change.
type reading struct {
	old, new      *collection.Collection // new is nil when it has errors
	before, after strictyaml.Diagnostics
}

// readBack reads the text with the changes of e in it; taken has how many entries
// of a list go away. Of a large file it reads
// a text in which the entries that have nothing to do with e are empty lines,
// once with the changes and once without. That is as good as reading all: an
// entry of a list with dashes begins in a line of its own, where the parser
// knows nothing of the entries before it but how far they are indented, so that
// leaving one out changes nothing else, and nothing that is added behind the
// last one changes those before it. Should that text not be right by itself, the
// whole file is read.
func (b *Book) readBack(e Edit, changes []change, taken map[string]int) reading {
	r := reading{old: b.Collection, before: b.problems}
	var cuts []change
	if len(b.text.data) > b.window {
		cuts = b.cuts(b.around(e, taken))
		if r.old, r.before = collection.Read(b.file, apply(b.text.data, cuts)); r.old == nil {
			r.old, r.before, cuts = b.Collection, b.problems, nil
		}
	}
	r.new, r.after = collection.Read(b.file, apply(b.text.data, merge(cuts, changes)))
	return r
}

// merge puts changes into the order of the text, those of a before those of b
// where they meet.
func merge(a, b []change) []change {
	out := make([]change, 0, len(a)+len(b))
	for len(a) > 0 && len(b) > 0 {
		if a[0].to <= b[0].from {
			out, a = append(out, a[0]), a[1:]
		} else {
			out, b = append(out, b[0]), b[1:]
		}
	}
	return append(append(out, a...), b...)
}
