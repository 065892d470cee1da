package main

import (
	"bytes"
	"errors"
	"time"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

// calendarFlags are the flags of calendar.
type calendarFlags struct {
	since, alarm string
	before       int // days, for the alarm
}

func calendarCommand(a *app) *cobra.Command {
	var f calendarFlags
	c := &cobra.Command{
		Use:   "calendar",
		Short: "the season as a calendar file for the phone, or as a table",
		Long: `calendar writes the days of every phase and the windows of every clutch as an
iCalendar file. Subscribe to the file rather than import it, or give each season
a calendar of its own: an import never takes away what fell out of the plan.

Writing to the same file again goes on from what is there: what has changed gets a
higher SEQUENCE, so that programs take it over, what fell away and is still to come
is marked as cancelled, and all else keeps its bytes. The plan keeps to the days that
were told where that costs less than moving them. A file that is no earlier
version of this calendar is not replaced. --since names the earlier version when
it lies elsewhere.

With --alarm the program that shows the calendar is asked to remind at that time
of day on the first day of what is to come, or --alarm-days before.

--format text leaves out what is cancelled, unless --since says what was told.`,
		Example: `  spawnwright calendar -o season.ics
  spawnwright calendar --alarm 18:00 --alarm-days 1 -o season.ics
  spawnwright calendar --since season.ics > next.ics`,
		Args: noArguments,
		RunE: func(*cobra.Command, []string) error { return a.calendar(f) },
	}
	a.formatFlag(c, "ics", "csv", "text")
	a.outFlag(c)
	c.Flags().StringVar(&f.since, "since", "", "go on from this earlier calendar `FILE`; without it from the one that -o replaces")
	c.Flags().StringVar(&f.alarm, "alarm", "", "remind at this `TIME` of day, such as 07:30")
	c.Flags().IntVar(&f.before, "alarm-days", 0, "so many `DAYS` before, 0 to 30")
	return c
}

func (a *app) calendar(f calendarFlags) error {
	if f.alarm != "" && a.format != "ics" {
		return usagef("--alarm goes with --format ics")
	}
	at, err := f.alarmAt()
	if err != nil {
		return err
	}
	room, on, err := a.today()
	if err != nil {
		return err
	}
	events, conflicts, err := a.goOn(room, f.since, on)
	if err != nil {
		return err
	}
	if a.format == "text" && f.since == "" {
		events = events.Standing()
	}
	if len(events.Events) == 0 {
		return &exitError{code: exitNoPlan, err: errors.New("there is nothing to put into a calendar; add pairings, clutches or targets to the file")}
	}
	a.warn(conflictTexts(conflicts))
	if at != nil {
		events = events.Alarmed(*at, on)
	}
	var b bytes.Buffer
	switch a.format {
	case "csv":
		err = calendar.WriteCSV(&b, events)
	case "text":
		err = calendar.WriteText(&b, events, frogroom.Extent(events))
	default:
		err = calendar.WriteICS(&b, events)
	}
	if err != nil {
		return inputError(err)
	}
	return a.write(b.Bytes())
}

// alarmAt gives when to remind; nil for never.
func (f calendarFlags) alarmAt() (*calendar.Alarm, error) {
	if f.alarm == "" {
		if f.before != 0 {
			return nil, usagef("--alarm-days goes with --alarm, such as --alarm 18:00")
		}
		return nil, nil
	}
	at, err := time.Parse("15:04", f.alarm)
	if err != nil {
		return nil, usagef("--alarm %q is not a time of day; write hours and minutes, such as 07:30", f.alarm)
	}
	if f.before < 0 || f.before > 30 {
		return nil, usagef("--alarm-days %d is not from 0 to 30", f.before)
	}
	return &calendar.Alarm{DaysBefore: f.before, Hour: at.Hour(), Minute: at.Minute()}, nil
}
