// Package frogroom answers a keeper's questions in one call each. It opens a
// collection file and carries what stands in it from one computing package to
// the next:
//
//	room, problems, err := frogroom.Open("collection.yaml")
//	if err != nil || room == nil { … } // problems say what is wrong, with place and cure
//	plan := room.Season(today)
//
// [Room.Check], [Room.Kin], [Room.Season], [Room.Clutches], [Room.Events] and
// [Room.Lineage] each stand for a command. Step down to the packages below when
// the answer is needed in another shape: each of them takes plain values.
//
// Nothing here reads a clock; the day that counts as today is an argument.
package frogroom

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Room is an opened collection. It does not change, and can be used by several
// goroutines at once.
type Room struct {
	Collection *collection.Collection
	Ancestry   *Ancestry // who descends from whom

	problems strictyaml.Diagnostics // warnings of the reading
	holidays *calendar.Holidays     // nil when the file names none
	models   map[string]*development.Model
}

// Open reads the file at path. The room is nil when the file cannot be used;
// problems then has at least one error, and may have warnings otherwise. The
// error is only for a file that cannot be read (*fs.PathError).
func Open(path string) (room *Room, problems strictyaml.Diagnostics, err error) {
	c, problems, err := collection.Load(path)
	if err != nil {
		return nil, nil, err
	}
	room, problems = newRoom(path, c, problems)
	return room, problems, nil
}

// Read is [Open] for text at hand; name is only shown in messages.
func Read(name string, data []byte) (*Room, strictyaml.Diagnostics) {
	c, problems := collection.Read(name, data)
	return newRoom(name, c, problems)
}

func newRoom(name string, c *collection.Collection, problems strictyaml.Diagnostics) (*Room, strictyaml.Diagnostics) {
	if c == nil {
		return nil, problems
	}
	bad := func(message, cure string) (*Room, strictyaml.Diagnostics) {
		problems = append(problems, strictyaml.Diagnostic{File: name, Severity: strictyaml.Error, Message: message, Cure: cure})
		problems.Sort()
		return nil, problems
	}
	room := &Room{Collection: c, problems: problems, models: make(map[string]*development.Model)}
	if c.Holidays != "" {
		h, err := calendar.HolidaysOf(c.Holidays)
		if err != nil {
			return bad("holidays: "+err.Error(), "write a country or region code such as de, de-by or us")
		}
		room.holidays = h
	}
	for _, p := range c.Species {
		m, err := development.NewModel(p)
		if err != nil {
			return bad(err.Error(), "correct the days of that step")
		}
		room.models[p.ID] = m
	}
	ancestry, err := ancestryOf(c)
	if err != nil {
		return bad(err.Error(), "correct the parents")
	}
	room.Ancestry = ancestry
	return room, problems
}

// profile gives the profile of a species that the collection uses.
func (r *Room) profile(id string) *species.Profile {
	p, ok := r.Collection.Profile(id)
	if !ok {
		panic(fmt.Sprintf("frogroom: the collection has no species %q", id))
	}
	return p
}

// living gives the numbers of the animals of a species that are in the room on
// a day. An empty species means all.
func (r *Room) living(speciesID string, on civil.Date) []int {
	var out []int
	for i := range r.Collection.Animals {
		a := &r.Collection.Animals[i]
		if status, _ := a.Status(on); status == collection.Here && (speciesID == "" || a.Species == speciesID) && !(a.Acquired > on) {
			out = append(out, i)
		}
	}
	return out
}

// shipping gives the days on which the keeper hands parcels over.
func (r *Room) shipping() calendar.Shipping {
	s := r.Collection.Shipping
	return calendar.Shipping{Weekdays: s.Weekdays, TransitDays: s.TransitDays, Holidays: r.holidays}
}

// terms is what a pairing is judged by on a day.
func (r *Room) terms(on civil.Date) pairing.Terms {
	needs := make(map[string]pairing.Needs, len(r.Collection.Species))
	for _, p := range r.Collection.Species {
		needs[p.ID] = needsOf(p)
	}
	rules := r.Collection.Rules
	return pairing.Terms{
		Pedigree: r.Ancestry.Pedigree,
		Needs:    needs,
		Rules:    pairing.Rules{WarnInbreeding: rules.WarnInbreeding, MaxInbreeding: rules.MaxInbreeding},
		On:       on,
	}
}

// needsOf takes from a profile what the rules about breeders ask.
func needsOf(p *species.Profile) pairing.Needs {
	n := pairing.Needs{
		Male:               maturityOf(p.Maturity.Male),
		Female:             maturityOf(p.Maturity.Female),
		MalesPerFemaleLow:  p.Breeding.MalesPerFemale.Low,
		MalesPerFemaleHigh: p.Breeding.MalesPerFemale.High,
	}
	for _, name := range []species.StepName{species.Hatchling, species.Tadpole, species.Metamorph} {
		if s, ok := p.Step(name); ok {
			n.TadpoleDays += int(s.Days.P50 + 0.5)
		}
	}
	if rest, ok := p.Phase(species.Rest); ok {
		n.RestLeast, n.RestUsual = rest.Days.Min, rest.Days.Usual
	}
	return n
}

func maturityOf(m species.Maturity) pairing.Maturity {
	return pairing.Maturity{AgeDays: int(m.AgeDays.Value), LengthMM: m.LengthMM.Value, WeightG: m.WeightG.Value}
}

// breeders gives animals as the pairing rules see them on a day.
func (r *Room) breeders(ids []string, on civil.Date) []pairing.Animal {
	out := make([]pairing.Animal, len(ids))
	for i, id := range ids {
		a, _ := r.Collection.Animal(id)
		node, _ := r.Ancestry.Pedigree.Index(id)
		weight, _ := r.Collection.Weight(id, on)
		length, _ := r.Collection.Length(id, on)
		out[i] = pairing.Animal{
			ID: id, Node: node, Species: a.Species, Line: a.Line, Locality: a.Locality,
			Sex:     sexOf(a.Sex),
			Hatched: a.Hatched, OutOfWater: a.OutOfWater, Acquired: a.Acquired,
			Died: a.Died, Left: a.Left, Promised: a.Promised,
			WeightG: weight.Value, LengthMM: length.Value,
			LastClutch: r.lastClutch(id, on),
		}
	}
	return out
}

func sexOf(s collection.Sex) pairing.Sex {
	switch s {
	case collection.Male:
		return pairing.Male
	case collection.Female:
		return pairing.Female
	}
	return pairing.SexUnknown
}

// lastClutch gives the day of the latest clutch that an animal may be the dam of.
func (r *Room) lastClutch(id string, on civil.Date) civil.Date {
	var last civil.Date
	for i := range r.Collection.Clutches {
		c := &r.Collection.Clutches[i]
		if c.Laid <= on && c.Laid > last && slices.Contains(c.Dams, id) {
			last = c.Laid
		}
	}
	return last
}
