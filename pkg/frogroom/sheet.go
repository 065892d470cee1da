package frogroom

import (
	"context"
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// Sheet is a season with what a picture of it, or a sheet for the wall, shows
// beside its dates.
type Sheet struct {
	Season
	Keeper string
	Names  map[string]string // of the parents of pairings, by id
	// Reasons are what speaks for each pairing, by its id: a line for each dam
	// with each sire.
	Reasons  map[string][]string
	Clutches []SheetClutch // those that run
	Loads    []PlaceDays   // in the order of Peaks
	Away     []civil.Span
	Holidays []Holiday // of the days of Loads; none where they are not known
	Agenda   Agenda    // of the next eight weeks
}

// SheetClutch is a clutch with the pairing that it is of.
type SheetClutch struct {
	Clutch
	Pairing string // id, empty where the file names none
}

// sheetDays is how far the agenda of a sheet looks ahead.
const sheetDays = 8 * 7

// SeasonSheet plans as [Room.PlanSeason] does, with the same errors.
func (r *Room) SeasonSheet(ctx context.Context, on civil.Date, o Planning) (Sheet, error) {
	p, err := r.planFor(ctx, on, o)
	if err != nil {
		return Sheet{}, err
	}
	s := Sheet{
		Season: p.season(), Keeper: r.Collection.Keeper, Away: r.Collection.Away,
		Names: make(map[string]string), Reasons: make(map[string][]string),
		Loads: p.placeDays(), Agenda: r.agenda(p, sheetDays),
	}
	for _, k := range p.clutches {
		clutch := SheetClutch{Clutch: k.Clutch}
		if c, ok := r.Collection.Clutch(k.ID); ok {
			clutch.Pairing = c.Pairing
		}
		s.Clutches = append(s.Clutches, clutch)
	}
	lines := make(map[string]*line)
	for _, one := range s.Pairings {
		s.name(r, one.Dams)
		s.name(r, one.Sires)
		if lines[one.Species] == nil {
			lines[one.Species] = r.line(on, one.Species, PairsWish{})
		}
		s.Reasons[one.ID] = lines[one.Species].reasons(one)
	}
	s.holidays(r)
	return s, nil
}

func (s *Sheet) name(r *Room, ids []string) {
	for _, id := range ids {
		if a, ok := r.Collection.Animal(id); ok && a.Name != "" {
			s.Names[id] = a.Name
		}
	}
}

// reasons says what speaks for a pairing. Animals of another sex or species than
// they should be have no place in the line, and its findings say so.
func (l *line) reasons(p PlannedPairing) []string {
	var out []string
	for _, dam := range p.Dams {
		for _, sire := range p.Sires {
			if !l.ranks(dam, collection.Female) || !l.ranks(sire, collection.Male) {
				continue
			}
			kin := l.room.Ancestry.Pedigree.Kinship(l.room.number(sire), l.room.number(dam))
			reason := l.reason(pairing.Pair{Male: sire, Female: dam, Verdict: pairing.Verdict{YoungInbreeding: kin}})
			out = append(out, fmt.Sprintf("%s with %s: %s", dam, sire, reason))
		}
	}
	return out
}

// ranks reports whether an animal of this sex has a place in the line.
func (l *line) ranks(id string, sex collection.Sex) bool {
	a, ok := l.room.Collection.Animal(id)
	return ok && a.Species == l.species && a.Sex == sex
}

func (s *Sheet) holidays(r *Room) {
	if r.holidays == nil {
		return
	}
	days := 1
	for _, l := range s.Loads {
		days = max(days, len(l.Kept))
	}
	for i := range days {
		if name, ok := r.holidays.On(s.On.Add(i)); ok {
			s.Holidays = append(s.Holidays, Holiday{s.On.Add(i), name})
		}
	}
}
