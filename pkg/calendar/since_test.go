package calendar_test

import (
	"bytes"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
)

// published writes c and reads it.
func published(t testing.TB, c calendar.Calendar) calendar.Published {
	t.Helper()
	p, err := calendar.ReadICS(written(t, c))
	require.NoError(t, err)
	return p
}

func TestSince(t *testing.T) {
	rain := calendar.Event{
		Key: "pairing/P/rain", Span: span("2027-03-10..2027-03-12"), Summary: "rain", Description: "two nights", Category: "pairing",
		Sequence: 2, Changed: date("2027-01-05"),
	}
	changed := func(change func(*calendar.Event)) *calendar.Event {
		e := rain
		e.Sequence, e.Changed = 7, date("2027-01-20") // what the diary has said since
		change(&e)
		return &e
	}
	gone := rain
	gone.Key, gone.UID = "", calendar.UID("room", rain.Key)
	for _, row := range []struct {
		name     string
		before   func(*calendar.Event)
		now      *calendar.Event // nil when it fell away
		on       string
		want     *calendar.Event // nil when it is dropped
		sequence int
		stamp    string
		changes  calendar.Changes
	}{
		{"as it was", nil, changed(func(*calendar.Event) {}), "2027-02-01", &rain, 2, "2027-01-05", calendar.Changes{Same: 1}},
		{"moved", nil, changed(func(e *calendar.Event) { e.Span = span("2027-03-11..2027-03-13") }), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"longer", nil, changed(func(e *calendar.Event) { e.Span.Last++ }), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"renamed", nil, changed(func(e *calendar.Event) { e.Summary = "rain!" }), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"told otherwise", nil, changed(func(e *calendar.Event) { e.Description = "" }), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"other category", nil, changed(func(e *calendar.Event) { e.Category = "seen" }), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"called off", nil, changed(func(e *calendar.Event) { e.Cancelled = true }), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"on again", func(e *calendar.Event) { e.Cancelled = true }, changed(func(*calendar.Event) {}), "2027-02-01", nil, 3, "2027-02-01", calendar.Changes{Changed: 1}},
		{"still off", func(e *calendar.Event) { e.Cancelled = true }, changed(func(e *calendar.Event) { e.Cancelled = true }), "2027-02-01", nil, 2, "2027-01-05", calendar.Changes{Same: 1}},
		{"a day that is before the stamp", nil, changed(func(e *calendar.Event) { e.Span.First++ }), "2027-01-01", nil, 3, "2027-01-05", calendar.Changes{Changed: 1}},
		{"no room for a higher sequence", func(e *calendar.Event) { e.Sequence = math.MaxInt32 }, changed(func(e *calendar.Event) { e.Span.First++ }), "2027-02-01", nil, math.MaxInt32, "2027-02-01", calendar.Changes{Changed: 1}},
		{"fell away", nil, nil, "2027-02-01", &gone, 3, "2027-02-01", calendar.Changes{Cancelled: 1}},
		{"fell away on its last day", nil, nil, "2027-03-12", &gone, 3, "2027-03-12", calendar.Changes{Cancelled: 1}},
		{"fell away when it was past", nil, nil, "2027-03-13", nil, 0, "", calendar.Changes{}},
		{"fell away some time ago", func(e *calendar.Event) { e.Cancelled = true }, nil, "2027-02-01", &gone, 2, "2027-01-05", calendar.Changes{Same: 1}},
	} {
		t.Run(row.name, func(t *testing.T) {
			other := calendar.Event{Key: "new", Span: span("2027-03-10"), Summary: "new", Sequence: 1, Changed: date("2027-01-31")}
			before := rain
			if row.before != nil {
				row.before(&before)
			}
			earlier := published(t, calendar.Calendar{ID: "room", Name: "Room", Events: []calendar.Event{before}})
			now := calendar.Calendar{ID: "room", Name: "Room, renamed", Events: []calendar.Event{other}}
			if row.now != nil {
				now.Events = append(now.Events, *row.now)
			}
			want := calendar.Calendar{ID: "room", Name: "Room, renamed", Events: []calendar.Event{other}}
			if row.stamp != "" {
				e := row.want
				if e == nil {
					e = row.now
				}
				last := *e
				last.Cancelled = row.now == nil || row.now.Cancelled
				last.Sequence, last.Changed = row.sequence, date(row.stamp)
				want.Events = append(want.Events, last)
			}
			got, changes := now.Since(earlier, date(row.on))
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
			row.changes.New = 1
			assert.Equal(t, row.changes, changes)
		})
	}
	assert.Panics(t, func() { calendar.Calendar{}.Since(calendar.Published{}, 0) })
}

// TestSinceTwin: going on from what was just written changes nothing, sequences
// never fall, and whatever was told for a day to come is told again.
func TestSinceTwin(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		first, second := anyCalendar(t), anyCalendar(t)
		second.ID, second.Name = first.ID, first.Name
		for i, e := range second.Events { // some stay as they were
			if i < len(first.Events) && rapid.Bool().Draw(t, "stays") {
				second.Events[i] = first.Events[i]
				second.Events[i].Sequence = e.Sequence
			}
		}
		on := date("2027-01-01").Add(rapid.IntRange(0, 70).Draw(t, "on"))
		var file bytes.Buffer
		require.NoError(t, calendar.WriteICS(&file, first))
		earlier, err := calendar.ReadICS(file.Bytes())
		require.NoError(t, err)

		next, _ := second.Since(earlier, on)
		var once bytes.Buffer
		require.NoError(t, calendar.WriteICS(&once, next))
		again, err := calendar.ReadICS(once.Bytes())
		require.NoError(t, err)
		same, changes := second.Since(again, on)
		require.Equal(t, calendar.Changes{Same: len(same.Events)}, changes)
		var twice bytes.Buffer
		require.NoError(t, calendar.WriteICS(&twice, same))
		require.Equal(t, once.String(), twice.String())

		later := make(map[string]calendar.Event)
		for _, e := range again.Events {
			later[e.UID] = e
		}
		for _, e := range earlier.Events {
			is, there := later[e.UID]
			require.True(t, there || e.Span.Last < on)
			if there {
				require.GreaterOrEqual(t, is.Sequence, e.Sequence)
				require.LessOrEqual(t, is.Sequence, e.Sequence+1)
				require.GreaterOrEqual(t, is.Changed, e.Changed)
			}
		}
	})
}

func TestOf(t *testing.T) {
	c := room()
	ours := calendar.UID(c.ID, "")
	for _, row := range []struct {
		name   string
		change func(*calendar.Published)
		want   string
	}{
		{"ours", func(*calendar.Published) {}, ""},
		{"rewritten by a phone", func(p *calendar.Published) { p.Product = "-//Some phone//EN" }, ""},
		{"renamed", func(p *calendar.Published) { p.Name = "other" }, ""},
		{"from before calendars had a UID", func(p *calendar.Published) { p.UID = "" }, ""},
		{"the same of another room", func(p *calendar.Published) { p.UID, p.Name = "", "Kellerbach" }, `it is the calendar of "Kellerbach", not of "Lindenhof frog room"`},
		{"another room", func(p *calendar.Published) { p.UID, p.Name = calendar.UID("x", ""), "Kellerbach" }, `it is the calendar of "Kellerbach", not of "Lindenhof frog room"`},
		{"another program", func(p *calendar.Published) { p.UID, p.Product = "", "-//Some phone//EN" }, "it was written by another program"},
		{"another UID", func(p *calendar.Published) { p.UID = ours + "x" }, "it was written by another program"},
		{"with an appointment", func(p *calendar.Published) {
			p.Events = append(p.Events, calendar.Event{UID: "1@phone", Summary: "den\ntist", Span: span("2027-03-04")})
		}, `it has events of others, such as "den tist" on 2027-03-04`},
	} {
		t.Run(row.name, func(t *testing.T) {
			p := published(t, c)
			row.change(&p)
			err := p.Of(c)
			if row.want == "" {
				require.NoError(t, err)
				return
			}
			var not *calendar.NotOursError
			require.ErrorAs(t, err, &not)
			assert.EqualError(t, err, row.want)
		})
	}
}

func TestAnnounced(t *testing.T) {
	c := room()
	days := published(t, c).Announced()
	for _, e := range c.Events {
		day, ok := days.Day(calendar.UID(c.ID, e.Key))
		assert.Equal(t, !e.Cancelled, ok, e.Key)
		if ok {
			assert.Equal(t, e.Span.First, day)
		}
	}
	day, ok := days.Day("unknown")
	assert.False(t, ok)
	assert.Equal(t, civil.Date(0), day)
}
