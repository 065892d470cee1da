package frogroom_test

import (
	"encoding/json"
	"fmt"
	"strings"

	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
)

// file is a collection file that a reader accepts, in parts.
type file struct {
	head, animals, clutches, pairings []string
	diary                             []dated
}

// dated is an entry of a diary.
type dated struct {
	on   civil.Date
	text string
}

func (f *file) text(diary []dated) string {
	var b strings.Builder
	b.WriteString("species:\n  - CLOCKWORK\n  - {id: poor, name: Rana pauper}\n")
	b.WriteString(strings.Join(f.head, "\n") + "\n")
	for _, part := range []struct {
		name string
		rows []string
	}{{"animals", f.animals}, {"clutches", f.clutches}, {"pairings", f.pairings}} {
		b.WriteString(part.name + ":\n")
		for _, row := range part.rows {
			b.WriteString("  - {" + row + "}\n")
		}
	}
	b.WriteString("diary:\n")
	for _, e := range diary {
		fmt.Fprintf(&b, "  - {on: %s, %s}\n", e.on, e.text)
	}
	return clockwork.Spelled(b.String())
}

// until gives the entries up to a day.
func (f *file) until(on civil.Date) []dated {
	var early []dated
	for _, e := range f.diary {
		if e.on <= on {
			early = append(early, e)
		}
	}
	return early
}

// kinds are a species in which nothing varies, one with windows, and one of
// which nothing is known.
var kinds = []string{"clockwork", "hyla-cinerea", "agalychnis-callidryas", "poor"}

// maker draws a file. Animals come in generations a year apart, so that parents
// are older than their young.
type maker struct {
	*rapid.T
	file
	males, females map[string][]string // by species
	count          int
}

func randomFile(t *rapid.T) *file {
	m := &maker{T: t, males: make(map[string][]string), females: make(map[string][]string)}
	m.room()
	generations := rapid.IntRange(0, 3).Draw(t, "generations")
	for g := range generations {
		m.generation(g)
	}
	for range rapid.IntRange(0, 3).Draw(t, "pairings") {
		m.pairing()
	}
	return &m.file
}

func (m *maker) flip(what string) bool { return rapid.Bool().Draw(m.T, what) }

func (m *maker) number(what string, low, high int) int {
	return rapid.IntRange(low, high).Draw(m.T, what)
}

func (m *maker) pick(what string, from []string) string {
	return rapid.SampledFrom(from).Draw(m.T, what)
}

func (m *maker) day(what, first string, within int) civil.Date {
	return day(first).Add(m.number(what, 0, within))
}

// some draws one id or a list of them.
func (m *maker) some(what string, from []string) (text string, several bool) {
	n := m.number("how many "+what, 1, min(3, len(from)))
	ids := rapid.Permutation(from).Draw(m.T, what)[:n]
	if n == 1 {
		return ids[0], false
	}
	return "[" + strings.Join(ids, ", ") + "]", true
}

func (m *maker) room() {
	if m.flip("holidays") {
		m.head = append(m.head, "holidays: de-by")
	}
	if m.flip("capacities") {
		m.head = append(m.head, "equipment: {rain_chambers: 1, cooling_places: 2, tadpole_tubs: {water_c: 25}}")
	} else if m.flip("space") {
		m.head = append(m.head, fmt.Sprintf("equipment: {tadpole_tubs: {count: %d, litres: 12}, froglet_bins: {count: %d, froglets: 10}, minutes_a_day: %d, retry_after_days: 10}",
			m.number("tubs", 1, 30), m.number("bins", 1, 30), m.number("minutes", 1, 300)))
	}
	if m.flip("limit") {
		m.head = append(m.head, "rules: {pairings_a_season: 1}")
	}
	if m.flip("away") {
		first := m.day("away", "2027-01-01", 300)
		m.head = append(m.head, fmt.Sprintf("away: [%s..%s]", first, first.Add(m.number("for", 0, 20))))
	}
	m.head = append(m.head, "targets:")
	for _, kind := range kinds {
		late := ""
		if m.flip("late") {
			late = fmt.Sprintf(", late_cost: %d, early_cost: %d", m.number("late cost", 0, 50), m.number("early cost", 0, 5))
		}
		m.head = append(m.head, fmt.Sprintf("  - {name: show/%s, on: %s, species: %s, froglets: 25%s}", kind, m.day("show", "2026-06-01", 700), kind, late))
	}
}

func (m *maker) generation(g int) {
	from := fmt.Sprintf("%d-02-01", 2023+g)
	for range m.number("founders", 0, 3) {
		m.animal("species: "+m.pick("species", kinds)+fmt.Sprintf(", acquired: %d-01-01", 2023+g), "")
	}
	for _, kind := range kinds {
		if m.flip("clutch of " + kind) {
			m.clutch(kind, m.day("laid", from, 60))
		}
	}
}

// animal adds one whose origin is told, and sometimes ends it.
func (m *maker) animal(origin, kind string) {
	m.count++
	id := fmt.Sprintf("A/%d", m.count)
	if kind == "" {
		kind, _, _ = strings.Cut(strings.TrimPrefix(origin, "species: "), ",")
	}
	sex := m.pick("sex", []string{"male", "female", "unknown"})
	row := fmt.Sprintf("id: %s, sex: %s, %s", id, sex, origin)
	if m.flip("dies") {
		row += fmt.Sprintf(", died: %s", m.day("death", "2027-01-01", 700))
	}
	m.animals = append(m.animals, row)
	switch sex {
	case "male":
		m.males[kind] = append(m.males[kind], id)
	case "female":
		m.females[kind] = append(m.females[kind], id)
	}
	if m.flip("weighed") {
		m.diary = append(m.diary, dated{m.day("weighed", "2026-12-01", 30), fmt.Sprintf("animal: %s, weight_g: 9", id)})
	}
}

func (m *maker) clutch(kind string, laid civil.Date) {
	m.count++
	id := fmt.Sprintf("C/%d", m.count)
	row := fmt.Sprintf("id: %s, laid: %s, species: %s", id, laid, kind)
	for _, side := range []struct {
		key string
		ids []string
	}{{"sire", m.males[kind]}, {"dam", m.females[kind]}} {
		if len(side.ids) > 0 && m.flip(side.key+" known") {
			ids, several := m.some(side.key, side.ids)
			row += fmt.Sprintf(", %s: %s", side.key, ids)
			if several && m.flip("mixed") {
				row += fmt.Sprintf(", %s_mix: several", side.key)
			}
		}
	}
	if m.flip("ends") {
		row += fmt.Sprintf(", ended: %s", laid.Add(m.number("end", 200, 400)))
	}
	m.clutches = append(m.clutches, row)
	m.looks(id, laid)
	for range m.number("young", 0, 3) {
		m.animal("clutch: "+id, kind)
	}
}

// looks adds a diary of stages in order, some of them by Gosner.
func (m *maker) looks(clutch string, laid civil.Date) {
	on := laid
	for _, saw := range []string{
		"gosner: 12", "saw: hatched, count: 30", "gosner: 25", "saw: feeding, some: true", "gosner: 30, losses: 2", "saw: toes",
		"gosner: 42", "saw: front-legs", "gosner: 46", "saw: out-of-water", "saw: eating", "saw: sale-ready",
	} {
		if m.flip("saw") {
			on = on.Add(m.number("days later", 1, 20))
			m.diary = append(m.diary, dated{on, fmt.Sprintf("clutch: %s, %s", clutch, saw)})
		}
	}
}

func (m *maker) pairing() {
	kind := m.pick("species of the pairing", kinds)
	if len(m.males[kind]) == 0 || len(m.females[kind]) == 0 {
		return
	}
	m.count++
	id := fmt.Sprintf("P/%d", m.count)
	dams, _ := m.some("dams", m.females[kind])
	sires, _ := m.some("sires", m.males[kind])
	when := "target: show/" + kind
	switch m.number("when", 0, 2) {
	case 0:
		when = fmt.Sprintf("start: %s", m.day("start", "2026-06-01", 500))
	case 1:
		when = fmt.Sprintf("ready_by: %s, certainty_pct: %d", m.day("ready", "2026-12-01", 700), m.number("certainty", 50, 95))
	}
	if m.flip("raised") {
		when += fmt.Sprintf(", raise: %d", m.number("raise", 1, 90))
	}
	if m.flip("may be left out") {
		when += fmt.Sprintf(", leave_out_cost: %d", m.number("leave out", 1, 400))
	}
	m.pairings = append(m.pairings, fmt.Sprintf("id: %s, dam: %s, sire: %s, %s", id, dams, sires, when))
	on := m.day("began", "2026-10-01", 200)
	for _, phase := range []string{"conditioning", "cooling", "warm-up", "rain", "rest"} {
		if m.flip("began") {
			m.diary = append(m.diary, dated{on, fmt.Sprintf("pairing: %s, began: %s", id, phase)})
			on = on.Add(m.number("lasts", 0, 60))
		}
	}
	if m.flip("eggs") {
		m.count++
		m.clutches = append(m.clutches, fmt.Sprintf("id: C/%d, laid: %s, pairing: %s", m.count, m.day("eggs", "2026-10-01", 90), id))
	}
}

func encoded(t asker, v any) string {
	data, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return string(data)
}
