// Package frogroom answers a keeper's questions in one call each. It opens a
// collection file and carries what stands in it from one computing package to
// the next:
//
//	room, problems, err := frogroom.Open("collection.yaml")
//	if err != nil || room == nil { … } // problems say what is wrong, with place and cure
//	agenda := room.Agenda(today, 14)
//
// [Room.Check], [Room.Kin], [Room.Pairs], [Room.Season], [Room.Clutches],
// [Room.ClutchReport], [Room.Ready], [Room.Events], [Room.Agenda], [Room.Lineage],
// [Room.SeasonSheet] and [Room.Horizon] are the questions. Here the season is planned
// and told, with all that waits for it; kin, rearing, breeders and departure answer
// about the animals and clutches of a collection by themselves. Step down further when
// the answer is needed in another shape: the packages below take plain values.
//
// Nothing here reads a clock; the day that counts as today is an argument. The
// methods of [Room] panic when it is not known, or outside of [civil.First] to
// [civil.Last]; only [Room.Lineage] takes an unknown day.
package frogroom

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/breeders"
	"github.com/spawnwright/spawnwright/pkg/brood"
	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/departure"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/rearing"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Room is an opened collection, from [Open], [Read] or [Of]. It does not change, and can
// be used by several goroutines at once.
type Room struct {
	Collection *collection.Collection
	Ancestry   *kin.Ancestry // who descends from whom

	problems strictyaml.Diagnostics  // warnings of the reading
	holidays *calendar.Holidays      // nil when the file names none
	laid     map[string][]civil.Date // when, by pairing
	rearing  *rearing.Rearing
	breeders *breeders.Breeders
	leaving  *departure.Register
	broods   *brood.Broods
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

// Of is [Open] for a collection that was read, without the problems of the reading. The
// room of a nil collection is nil.
func Of(name string, c *collection.Collection) (*Room, strictyaml.Diagnostics) {
	return newRoom(name, c, nil)
}

func newRoom(name string, c *collection.Collection, problems strictyaml.Diagnostics) (*Room, strictyaml.Diagnostics) {
	if c == nil {
		return nil, problems
	}
	bad := func(message, cure string) {
		problems = append(problems, strictyaml.Diagnostic{File: name, Severity: strictyaml.Error, Message: message, Cure: cure})
	}
	room := &Room{
		Collection: c,
		laid:       layings(c),
	}
	var more strictyaml.Diagnostics
	room.holidays, more = holidaysOf(c)
	problems = append(problems, more...)
	relaxed, more := relaxedBy(c)
	problems = append(problems, more...)
	breeding := make(map[string]*brood.Breeding, len(c.Species))
	models := make(map[string]*development.Model, len(c.Species))
	for _, p := range c.Species {
		b, err := brood.NewBreeding(p)
		if err != nil {
			bad(err.Error(), "correct these days")
			continue
		}
		breeding[p.ID], models[p.ID] = b, b.Model
	}
	var err error
	if room.Ancestry, err = kin.Of(c); err != nil {
		bad(err.Error(), "correct the parents")
	}
	if problems.HasErrors() {
		problems.Sort()
		return nil, problems
	}
	room.rearing = rearing.New(c, room.Ancestry, models)
	room.broods = brood.New(room.rearing, breeding)
	room.breeders = breeders.New(c, room.Ancestry, relaxed)
	room.leaving = &departure.Register{Collection: c, Ancestry: room.Ancestry, Rearing: room.rearing, Breeders: room.breeders, Shipping: room.shipping()}
	room.problems = slices.Clone(problems)
	return room, problems
}

// holidaysOf gives the public holidays that the file names; nil for none.
func holidaysOf(c *collection.Collection) (*calendar.Holidays, strictyaml.Diagnostics) {
	if c.Holidays == "" {
		return nil, nil
	}
	h, err := calendar.HolidaysOf(c.Holidays)
	var unknown *calendar.UnknownCodeError
	if errors.As(err, &unknown) {
		return nil, strictyaml.Diagnostics{c.Diagnostic(strictyaml.Error, c.HolidaysAt,
			fmt.Sprintf("no public holidays are known for %q", unknown.Code), holidaysCure(unknown))}
	}
	return h, nil
}

// relaxedBy gives the rules about pairings that the file sets aside.
func relaxedBy(c *collection.Collection) (rules []pairing.Rule, problems strictyaml.Diagnostics) {
	for _, rule := range c.Rules.Relax {
		if problem, cure := mayRelax(pairing.Rule(rule.Name)); problem != "" {
			problems = append(problems, c.Diagnostic(strictyaml.Error, rule.At, problem, cure))
			continue
		}
		rules = append(rules, pairing.Rule(rule.Name))
	}
	return rules, problems
}

// holidaysCure says what to write instead of a code that is not known.
func holidaysCure(e *calendar.UnknownCodeError) string {
	switch {
	case e.Nearest != "":
		return fmt.Sprintf("did you mean %q?", e.Nearest)
	case len(e.Country) > 0:
		return "write one of " + strings.Join(e.Country, ", ") + ", or remove the line"
	}
	return "write a country or region code such as de, de-by or us, or remove the line"
}

// of gives how a species is bred that the collection uses.
func (r *Room) of(species string) *brood.Breeding { return r.broods.Breeding(species) }

// shipping gives the days on which the keeper hands parcels over.
func (r *Room) shipping() calendar.Shipping {
	s := r.Collection.Shipping
	return calendar.Shipping{Weekdays: s.Weekdays, TransitDays: s.TransitDays, Away: r.Collection.Away, Closed: s.Closed, Holidays: r.holidays}
}

func mustKnow(today civil.Date) {
	switch {
	case !today.Known():
		panic("frogroom: the day that counts as today is not given")
	case today < civil.First || today > civil.Last:
		panic("frogroom: the day that counts as today is in none of the years 1 to 9999")
	}
}
