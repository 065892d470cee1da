package species

import (
	"slices"

	"go.yaml.in/yaml/v3"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// KeepersFile is the source of a value for which a keeper's file gives none.
const KeepersFile = "the keeper's file"

// Apply changes the values of p that m gives, and reports problems into the
// document of m. Each changed value takes the source that stands beside it, or
// [KeepersFile]. A phase given as the word none is taken out, cautions are
// added to those there are, and the id stays.
//
// It calls m.Done: a caller that knows more keys takes them before.
func (p *Profile) Apply(m *strictyaml.Mapping) { p.read(m, KeepersFile) }

// read reads a whole profile or changes to one. Outer is the source of values
// that have none; when it is empty they are reported.
func (p *Profile) read(m *strictyaml.Mapping, outer string) {
	s := open(m, outer)
	readName(s, "name", &p.Name)
	readName(s, "common_name", &p.CommonName)
	s.some(p.youngFields())
	p.readCycle(s)
	if b := s.sub("breeding", "breeding"); b != nil {
		b.fields(p.Breeding.fields())
	}
	p.readDevelopment(s)
	p.checkWarmth(s)
	p.readMaturity(s)
	if sale := s.sub("sale", "sale"); sale != nil {
		sale.fields(p.Sale.fields())
	}
	if adult := s.sub("adult", "adult"); adult != nil {
		adult.fields(p.Adult.fields())
	}
	p.readFood(s)
	s.some(p.keepFields())
	p.readCautions(s)
	s.Done()
}

func readName(s *scope, key string, to *string) {
	if n := s.Take(key); n != nil {
		if text, ok := readLine(s.Doc(), n, key); ok {
			*to = text
		}
	}
}

func (p *Profile) readMaturity(s *scope) {
	maturity := s.sub("maturity", "maturity")
	if maturity == nil {
		return
	}
	if male := maturity.sub("male", "maturity of males"); male != nil {
		male.fields(p.Maturity.Male.fields())
	}
	if female := maturity.sub("female", "maturity of females"); female != nil {
		female.fields(p.Maturity.Female.fields())
	}
	maturity.Done()
}

func (p *Profile) readCautions(s *scope) {
	for _, n := range s.List("cautions") {
		source := s.source("cautions")
		line := n
		if n.Kind == yaml.MappingNode || s.Doc().Sketching() {
			entry := open(s.Doc().Mapping(n, "a caution"), source)
			source = entry.source("text")
			entry.Require("text")
			line = entry.Take("text")
			entry.Done()
			if line == nil {
				s.Doc().Errorf(n, "write {text: …, source: …}", "a caution has no text")
				continue
			}
		}
		text, ok := readLine(s.Doc(), line, "a caution")
		s.Doc().Or(n, strictyaml.AnyText())
		if !ok || p.cautioned(text) {
			continue
		}
		if source == "" {
			s.Doc().Errorf(n, "write `source` beside it", "a caution has no source")
			continue
		}
		p.Cautions = append(p.Cautions, Text{text, source})
	}
}

func (p *Profile) cautioned(text string) bool {
	return slices.ContainsFunc(p.Cautions, func(c Text) bool { return c.Value == text })
}
