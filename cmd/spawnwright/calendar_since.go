package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// goOn gives the calendar of a room as it goes on from an earlier one: the file that
// --since names, else the one that -o would replace; and what is in the way of the
// season. The plan keeps the days of the earlier one where it can.
func (a *app) goOn(room *frogroom.Room, since string, on civil.Date) (calendar.Calendar, []frogroom.Conflict, error) {
	c := room.Calendar()
	earlier, err := a.replaced(c)
	if err != nil {
		return c, nil, err
	}
	if since != "" {
		if earlier, err = earlierCalendar(since, c); err != nil {
			return c, nil, cause(err, func(err error) error { return inputError(fmt.Errorf("--since %s: %w", since, err)) })
		}
		if a.format != "ics" { // otherwise it may go on in its own place
			a.inputs = append(a.inputs, since)
		}
	}
	var o frogroom.Planning
	if earlier != nil {
		o.Announced = earlier.Announced()
	}
	c, conflicts := room.PlanEvents(context.Background(), on, o)
	if earlier == nil {
		return c, conflicts, nil
	}
	next, changes := c.Since(*earlier, on)
	if !a.quiet {
		fmt.Fprintf(a.stderr, "since the earlier calendar: %d changed, %d new, %d cancelled, %d as they were\n",
			changes.Changed, changes.New, changes.Cancelled, changes.Same)
	}
	return next, conflicts, nil
}

// replaced gives the calendar that -o would replace, nil where there is none. Any
// other file stays.
func (a *app) replaced(c calendar.Calendar) (*calendar.Published, error) {
	if !a.toFile() || a.format != "ics" {
		return nil, nil
	}
	info, err := os.Stat(a.out)
	if err != nil || !info.Mode().IsRegular() || info.Size() == 0 {
		return nil, nil // nothing to lose; what is wrong with it is told when it is written
	}
	if err := a.spare(); err != nil {
		return nil, err
	}
	p, err := earlierCalendar(a.out, c)
	return p, cause(err, func(err error) error {
		return usagef("-o %s would replace a file that is no earlier version of this calendar: %w; write to another one", a.out, err)
	})
}

// cause gives err as it is when a file could not be read, and otherwise what say
// makes of it.
func cause(err error, say func(error) error) error {
	var unreadable *fs.PathError
	switch {
	case err == nil:
		return nil
	case errors.As(err, &unreadable):
		return fileError(err)
	}
	return say(err)
}

// earlierCalendar reads an earlier version of c. The error is a *[fs.PathError], a
// *[calendar.ICSError] or a *[calendar.NotOursError].
func earlierCalendar(path string, c calendar.Calendar) (*calendar.Published, error) {
	data, err := readWhole(path)
	if err != nil {
		return nil, err
	}
	p, err := calendar.ReadICS(data)
	if err != nil {
		return nil, err
	}
	if err := p.Of(c); err != nil {
		return nil, err
	}
	return &p, nil
}

// mostCalendar is more than any calendar that was written takes.
const mostCalendar = 1 << 28

func readWhole(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var b bytes.Buffer
	if _, err := b.ReadFrom(io.LimitReader(f, mostCalendar)); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}
