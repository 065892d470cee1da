// Package collection reads the file of a keeper: animals, clutches, pairings,
// equipment, wishes, and a diary of dated facts. docs/file.md is its contract.
//
// [Load] and [Read] give a [Collection] of plain values that hang together:
// every reference leads somewhere, nobody is their own ancestor, and nothing
// happens before it can. Otherwise they give all that is wrong with the file,
// each problem with its place and a cure. What an animal has from its clutch,
// and a clutch from its parents, is filled in.
//
// Nothing is computed here: no kinship, no forecast. Methods such as
// [Collection.Weight] and [Collection.Looks] only look up what the diary says.
package collection

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Collection is what a file says. Treat it as read only: its lookups rest on
// the order of its lists, and its strings may be shared.
type Collection struct {
	Keeper    string       // for headings
	Holidays  string       // ISO 3166 code in small letters, empty when left out; whether there is such a code is for others to say
	Away      []civil.Span // days on which nobody is in the room, by first day
	Shipping  Shipping
	Targets   []Target
	Equipment Equipment
	Rules     Rules
	Card      Card
	Species   []*species.Profile // those that the file uses or brings, by id
	Animals   []Animal           // in the order of the file, like the lists below
	Clutches  []Clutch
	Pairings  []Pairing
	Diary     []Entry

	HolidaysAt strictyaml.Position // where Holidays stands

	doc      *strictyaml.Document // for the lines of the file
	subjects map[string]subject
	targets  map[string]int
	profiles map[string]*species.Profile
	diary    diary
	seen     []Look // of each clutch the first, with an unknown day for none
	outline  Outline
}

// subject is what an id stands for.
type subject struct {
	kind  kind
	index int // in the list of its kind
}

type kind int

const (
	animalKind kind = iota + 1
	clutchKind
	pairingKind
)

// name gives the kind with its article, for messages.
func (k kind) name() string {
	return [...]string{"nothing", "an animal", "a clutch", "a pairing"}[k]
}

// Animal gives the animal of that id, and false when there is none.
func (c *Collection) Animal(id string) (*Animal, bool) {
	s := c.subjects[id]
	if s.kind != animalKind {
		return nil, false
	}
	return &c.Animals[s.index], true
}

// Clutch gives the clutch of that id, and false when there is none.
func (c *Collection) Clutch(id string) (*Clutch, bool) {
	s := c.subjects[id]
	if s.kind != clutchKind {
		return nil, false
	}
	return &c.Clutches[s.index], true
}

// Pairing gives the pairing of that id, and false when there is none.
func (c *Collection) Pairing(id string) (*Pairing, bool) {
	s := c.subjects[id]
	if s.kind != pairingKind {
		return nil, false
	}
	return &c.Pairings[s.index], true
}

// Target gives the target of that name, and false when there is none.
func (c *Collection) Target(name string) (*Target, bool) {
	i, ok := c.targets[name]
	if !ok {
		return nil, false
	}
	return &c.Targets[i], true
}

// Profile gives the profile of a species that the file uses or brings, with
// the keeper's changes, and false for any other.
func (c *Collection) Profile(id string) (*species.Profile, bool) {
	p, ok := c.profiles[id]
	return p, ok
}

// MustProfile is [Collection.Profile] for a species that the file is known to use; it
// panics for another.
func (c *Collection) MustProfile(id string) *species.Profile {
	p, ok := c.profiles[id]
	if !ok {
		panic(fmt.Sprintf("collection: there is no species %q", id))
	}
	return p
}

// Diagnostic gives a problem at a place of the file, with the file's name and
// the line as excerpt. The message is one sentence without a full stop, and so
// is the cure, which may be empty.
func (c *Collection) Diagnostic(severity strictyaml.Severity, at strictyaml.Position, message, cure string) strictyaml.Diagnostic {
	return c.doc.Diagnostic(severity, at, message, cure)
}
