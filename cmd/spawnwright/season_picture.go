package main

import (
	"context"
	"path/filepath"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/picture"
)

// writesPage reports whether -o asks for a page.
func (a *app) writesPage() bool { return strings.EqualFold(filepath.Ext(a.out), ".html") }

// drawSeason writes the season as a chart or as a sheet for the wall. What the
// chart has no room for is told on standard error.
func (a *app) drawSeason(ctx context.Context, room *frogroom.Room, on civil.Date, o frogroom.Planning, problem string) error {
	sheet, err := room.SeasonSheet(ctx, on, o)
	if err != nil {
		return wishError(err)
	}
	if err := a.writeProblem(problem, sheet.Season); err != nil {
		return err
	}
	var drawn []byte
	if a.writesPage() {
		drawn = picture.Sheet(sheet)
	} else {
		a.warn(seasonDoubts(sheet.Season))
		drawn = picture.Season(sheet)
	}
	if err := a.write(drawn); err != nil {
		return err
	}
	if len(sheet.Conflicts) > 0 {
		return a.noPlan(sheet.Season)
	}
	return nil
}
