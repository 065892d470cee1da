package collection

import (
	"io"
	"os"

	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Load reads the file at path; see [Read]. The error is about opening and
// reading it (*fs.PathError), the diagnostics about what stands in it.
func Load(path string) (*Collection, strictyaml.Diagnostics, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	// One byte too many is enough to see that the file is too large.
	data, err := io.ReadAll(io.LimitReader(f, strictyaml.MaxBytes+1))
	if err != nil {
		return nil, nil, err
	}
	c, problems := Read(path, data)
	return c, problems, nil
}

// Read reads data as a collection; file is only shown in messages. All
// problems are given in one run, worst first. The collection is nil when one of
// them is an error. Time and memory grow in proportion to the file, save for
// sorting the diary by date.
func Read(file string, data []byte) (*Collection, strictyaml.Diagnostics) {
	doc := strictyaml.Parse(file, data)
	if doc.Root == nil {
		return nil, doc.Problems()
	}
	r := newReader(doc)
	r.sections()
	r.link()
	r.trace()
	r.fill()
	r.check()
	problems := doc.Problems()
	if problems.HasErrors() {
		return nil, problems
	}
	r.c.outline = outlineOf(doc)
	doc.Release()
	return r.c, problems
}

// reader fills a collection. The entries of its lists stay at hand, so that a
// check that comes late can still say where.
type reader struct {
	doc     *strictyaml.Document
	c       *Collection
	items   struct{ animals, clutches, pairings, diary []strictyaml.Item }
	guesses int               // how many more ids may be looked for among all ids
	cures   map[string]string // of species that are not known
	looks   map[string]string // of each look of an id, the first id that has it
	links   links
	order   []int  // animals and clutches by number, each after all that it comes from
	loop    []bool // by number, whether it comes from itself
}

func newReader(doc *strictyaml.Document) *reader {
	return &reader{
		doc:     doc,
		guesses: maxGuesses,
		cures:   make(map[string]string),
		looks:   make(map[string]string),
		c: &Collection{
			doc:      doc,
			subjects: make(map[string]subject),
			targets:  make(map[string]int),
			profiles: make(map[string]*species.Profile),
		},
	}
}

// sections reads the file section by section. Nothing but ids is compared yet.
func (r *reader) sections() {
	m := r.doc.Mapping(r.doc.Root, "the file")
	r.c.Keeper = r.phrase(m, "keeper")
	r.c.Holidays = r.holidays(m)
	r.c.Away = r.spans(m, "away")
	r.c.Shipping = r.shipping(m)
	r.species(m)
	r.targets(m)
	r.c.Equipment = r.equipment(m)
	r.c.Rules = r.rules(m)
	r.c.Card = r.card(m)
	r.animals(m)
	r.clutches(m)
	r.pairings(m)
	r.entries(m)
	m.Done()
}

// errorAt reports an error at a place.
func (r *reader) errorAt(at strictyaml.Position, message, cure string) {
	r.doc.Report(r.doc.Diagnostic(strictyaml.Error, at, message, cure))
}

// warnAt reports a warning at a place.
func (r *reader) warnAt(at strictyaml.Position, message, cure string) {
	r.doc.Report(r.doc.Diagnostic(strictyaml.Warning, at, message, cure))
}
