package frogroom

import (
	"context"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/rearing"
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

// SheetClutch is a clutch with the pairing that it is of. Its Warnings do not say
// where in the file they come from.
type SheetClutch struct {
	rearing.Clutch
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
	told := r.rearing.Told(p.clutches...)
	for i, k := range p.clutches {
		clutch := SheetClutch{Clutch: told[i]}
		clutch.Warnings = slices.Clone(k.Warnings)
		for i, d := range slices.Concat(k.Doubts, k.NotSafe) { // the first of them, which have a place
			clutch.Warnings[i] = d.Text
		}
		if c, ok := r.Collection.Clutch(k.ID); ok {
			clutch.Pairing = c.Pairing
		}
		s.Clutches = append(s.Clutches, clutch)
	}
	if err := s.reasons(r); err != nil {
		return Sheet{}, err
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

// reasons names the parents and says what speaks for each pairing. Pairs of the
// same sex or of two species have no reason, and the findings say so.
func (s *Sheet) reasons(r *Room) error {
	stock, err := r.stock(s.On, breedingplan.Wish{})
	if err != nil {
		return err
	}
	var pairs [][2]string
	var of []string // the pairing of each
	for _, p := range s.Pairings {
		s.name(r, p.Dams)
		s.name(r, p.Sires)
		for _, dam := range p.Dams {
			for _, sire := range p.Sires {
				pairs, of = append(pairs, [2]string{sire, dam}), append(of, p.ID)
			}
		}
	}
	for i, reason := range stock.Reasons(pairs...) {
		if reason != "" {
			s.Reasons[of[i]] = append(s.Reasons[of[i]], fmt.Sprintf("%s with %s: %s", pairs[i][1], pairs[i][0], reason))
		}
	}
	return nil
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
