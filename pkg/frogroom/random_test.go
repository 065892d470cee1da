package frogroom_test

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// TestRandomRooms asks everything of small collections of all kinds, and holds
// the answers against what has to be true of any.
func TestRandomRooms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := randomFile(t)
		text := f.text(f.diary)
		r, problems := frogroom.Read("room.yaml", []byte(text))
		if r == nil {
			t.Logf("%s", text)
			t.Fatalf("a file that should be good is refused: %v", problems)
		}
		again, _ := frogroom.Read("room.yaml", []byte(text))
		on := civil.Date(rapid.IntRange(int(day("2023-06-01")), int(day("2028-12-31"))).Draw(t, "on"))
		answers := askAll(t, r, on)
		if rapid.IntRange(0, 3).Draw(t, "again") == 0 { // asking for everything takes long
			if diff := cmp.Diff(answers, askAll(t, again, on)); diff != "" {
				t.Fatalf("two runs differ (-first +second):\n%s", diff)
			}
		}
		checkKin(t, r, on)
		checkSeason(t, r, on)
		checkClutches(t, r, on)
		checkEvents(t, r, on)

		known, _ := frogroom.Read("room.yaml", []byte(f.text(f.until(on))))
		if diff := cmp.Diff(unplaced(marshalled(t, "clutches", known.Clutches(on))), unplaced(answers["clutches"])); diff != "" {
			t.Fatalf("the diary after %s counts (-without +with):\n%s", on, diff)
		}
	})
}

// unplaced takes away the lines of the file, which move when others are left out.
func unplaced(text string) string { return places.ReplaceAllString(text, "") }

var places = regexp.MustCompile(`room\.yaml:\d+:\d+|see line \d+`)

// asker is what the checks need of a test, of a fuzz test too.
type asker interface{ Fatalf(string, ...any) }

// askAll calls everything once and gives the answers as JSON, which has no null
// in it.
func askAll(t asker, r *frogroom.Room, on civil.Date) map[string]string {
	answers := make(map[string]string)
	keep := func(name string, v any, err error) {
		var noCycle *frogroom.NoCycleError
		if errors.As(err, &noCycle) {
			answers[name] = err.Error()
			return
		}
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		answers[name] = marshalled(t, name, v)
	}
	keep("check", r.Check(on), nil)
	keep("kin", r.Kin(on), nil)
	keep("clutches", r.Clutches(on), nil)
	s, err := r.Season(on)
	keep("season", s, err)
	keep("agenda", r.Agenda(on, 30), nil)
	keep("events", r.Events(on), nil)
	dot, err := r.Lineage(on, kin.LineageWish{})
	keep("lineage", dot.DOT()+dot.Mermaid(), err)
	keep("profiles", len(r.Profiles()), nil)
	for i, k := range r.Collection.Clutches {
		if i > 0 {
			break // an outlook costs some milliseconds
		}
		one, err := r.ClutchReport(k.ID, on)
		keep("clutch "+k.ID, one, err)
	}
	for _, p := range r.Collection.Pairings {
		one, err := r.Season(on, p.ID)
		keep("season "+p.ID, one, err)
		one, err = r.SeasonOf(on, frogroom.Wish{Dams: p.Dams, Sires: p.Sires, ReadyBy: on.Add(300), CertaintyPct: 80})
		keep("wish like "+p.ID, one, err)
	}
	for i, x := range r.Collection.Animals {
		if i > 20 {
			break // these cost the square
		}
		relatives, err := r.Ancestry.Relatives(x.ID, on)
		keep("relatives of "+x.ID, relatives, err)
		for _, y := range r.Collection.Animals[:i] {
			pair, err := r.Ancestry.Pair(x.ID, y.ID)
			keep(x.ID+" and "+y.ID, pair, err)
		}
		dot, err := r.Lineage(on, kin.LineageWish{Direction: kin.Ancestors, IDs: []string{x.ID}})
		keep("ancestors of "+x.ID, dot.DOT(), err)
	}
	return answers
}

func marshalled(t asker, name string, v any) string {
	var b bytes.Buffer
	if c, ok := v.(calendar.Calendar); ok { // it has no JSON of its own
		for _, e := range c.Events {
			fmt.Fprintf(&b, "%+v\n", e)
		}
		return b.String()
	}
	text := encoded(t, v)
	if strings.Contains(text, ":null") || strings.Contains(text, "[null") || text == "null" {
		t.Fatalf("%s has a null: %s", name, text)
	}
	return text
}

func checkKin(t asker, r *frogroom.Room, on civil.Date) {
	k := r.Kin(on)
	for _, g := range k.Groups {
		if g.Living < 1 || !(g.MeanKinship > 0) || g.MeanKinship > 1 || math.Abs(1-g.MeanKinship-g.GeneDiversity) > 1e-12 {
			t.Fatalf("group %+v", g)
		}
	}
	for i, a := range k.Animals {
		if !(a.Inbreeding >= 0 && a.Inbreeding <= 1 && a.MeanKinship >= 0 && a.MeanKinship <= 1) {
			t.Fatalf("row %+v", a)
		}
		for _, b := range k.Animals[:i+1] {
			ab, _ := r.Ancestry.Pair(a.ID, b.ID)
			ba, _ := r.Ancestry.Pair(b.ID, a.ID)
			sum := 0.0
			for _, s := range ab.Shared {
				sum += s.Share
			}
			if math.Abs(ab.Kinship-ba.Kinship) > 1e-12 || math.Abs(sum-ab.Kinship) > 1e-9 {
				t.Fatalf("%s and %s: %v, %v the other way round, shares %v", a.ID, b.ID, ab.Kinship, ba.Kinship, sum)
			}
			if a.ID == b.ID && math.Abs(ab.Kinship-(1+a.Inbreeding)/2) > 1e-12 {
				t.Fatalf("%s with itself: %v, F %v", a.ID, ab.Kinship, a.Inbreeding)
			}
		}
	}
}

func checkSeason(t asker, r *frogroom.Room, on civil.Date) {
	s, _ := r.Season(on)
	for _, p := range s.Pairings {
		checkYoung(t, r, p.Sires, p.Dams, p.Young)
		if len(p.Phases) == 0 {
			t.Fatalf("%s has no phases", p.ID)
		}
		for i, ph := range p.Phases {
			if ph.Span.First > ph.Span.Last+1 || i > 0 && ph.Span.First != p.Phases[i-1].Span.Last+1 {
				t.Fatalf("%s: phases with gaps: %+v", p.ID, p.Phases)
			}
			if ph.Recorded && ph.Span.First > on {
				t.Fatalf("%s: recorded after today: %+v", p.ID, ph)
			}
		}
		for i, st := range p.Stages {
			checkWindow(t, st.Window)
			if i > 0 && st.Window.Likely < p.Stages[i-1].Window.Likely {
				t.Fatalf("%s: stages out of order: %+v", p.ID, p.Stages)
			}
		}
		if p.Refused && len(p.Findings) == 0 {
			t.Fatalf("%s is refused for no reason", p.ID)
		}
	}
	for _, c := range s.Conflicts {
		if c.Message == "" || len(c.Pairings) == 0 {
			t.Fatalf("conflict %+v", c)
		}
	}
}

// checkYoung holds what is told of the young, which goes by the ancestors of their parents
// alone, against the pedigree of all.
func checkYoung(t asker, r *frogroom.Room, sires, dams []string, told kin.Young) {
	whole := r.Ancestry.Pedigree
	numbers := func(ids []string) (all []int) {
		for _, id := range ids {
			i, _ := whole.Index(id)
			all = append(all, i)
		}
		return all
	}
	var want kin.Young
	if len(sires) > 0 && len(dams) > 0 {
		want.Known, want.Expected = true, len(sires) > 1 || len(dams) > 1 || slices.ContainsFunc(numbers(slices.Concat(sires, dams)), whole.Uncertain)
		want.Inbreeding = whole.ExpectedInbreeding(numbers(sires), numbers(dams))
	}
	if told.Known != want.Known || told.Expected != want.Expected || math.Abs(told.Inbreeding-want.Inbreeding) > 1e-14 {
		t.Fatalf("young of %v and %v: %+v, want %+v", sires, dams, told, want)
	}
}

func checkWindow(t asker, w civil.Window) {
	if !w.Known() || w.Early > w.Likely || w.Likely > w.Late {
		t.Fatalf("window %v", w)
	}
}

func checkClutches(t asker, r *frogroom.Room, on civil.Date) {
	for _, k := range r.Clutches(on) {
		checkYoung(t, r, k.Sires, k.Dams, k.Young)
		if k.Laid > on || k.SeenOn < k.Laid || k.SeenOn > on {
			t.Fatalf("clutch %+v", k)
		}
		for i, s := range k.Stages {
			checkWindow(t, s.Window)
			if s.Recorded && (!s.Window.Certain() || s.Window.Likely > on) || s.Recorded && s.Passed || s.Overdue && (s.Recorded || s.Passed || s.Window.Late >= on) {
				t.Fatalf("%s: stage %+v", k.ID, s)
			}
			if s.Passed && s.Window.Late > k.SeenOn {
				t.Fatalf("%s: passed by %s: %+v", k.ID, k.SeenOn, s)
			}
			if i > 0 && s.Window.Likely < k.Stages[i-1].Window.Likely {
				t.Fatalf("%s: stages out of order: %+v", k.ID, k.Stages)
			}
		}
	}
}

func checkEvents(t asker, r *frogroom.Room, on civil.Date) {
	c := r.Events(on)
	if len(c.Events) == 0 {
		return
	}
	if err := calendar.WriteICS(&bytes.Buffer{}, c); err != nil {
		t.Fatalf("%v", err)
	}
	extent := frogroom.Extent(c)
	for _, e := range c.Events {
		if e.Changed > on || e.Sequence < 0 || e.Span.First < extent.First || e.Span.Last > extent.Last {
			t.Fatalf("event %+v", e)
		}
	}
	a := r.Agenda(on, 400)
	for _, task := range a.Tasks {
		if !a.Days.Contains(task.On) {
			t.Fatalf("task %+v", task)
		}
	}
	if !slices.IsSortedFunc(a.Tasks, func(x, y frogroom.Task) int { return x.On.Sub(y.On) }) {
		t.Fatalf("tasks out of order: %+v", a.Tasks)
	}
}
