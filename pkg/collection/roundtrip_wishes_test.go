package collection_test

import (
	"fmt"
	"strconv"
	"strings"

	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

var holdKinds = []collection.HoldKind{collection.Quarantine, collection.Health}

func drawHolds(t *rapid.T, start civil.Date) []collection.Hold {
	var holds []collection.Hold
	for range rapid.IntRange(0, 2).Draw(t, "holds") {
		h := collection.Hold{Kind: rapid.SampledFrom(holdKinds).Draw(t, "kind"), Note: words.Draw(t, "note")}
		if rapid.Bool().Draw(t, "from") {
			h.From = start.Add(rapid.IntRange(1, 50).Draw(t, "from"))
		}
		if rapid.Bool().Draw(t, "until") {
			h.Until = start.Add(rapid.IntRange(50, 99).Draw(t, "until"))
		}
		holds = append(holds, h)
	}
	return holds
}

func drawPromises(t *rapid.T) []collection.Promise {
	var promises []collection.Promise
	for i := range rapid.IntRange(0, 2).Draw(t, "promises") {
		promises = append(promises, collection.Promise{To: fmt.Sprint("to ", words.Draw(t, "to"), i), Count: 1 + i})
	}
	return promises
}

func drawHeld(t *rapid.T, e *collection.Entry) {
	e.Ate = rapid.Bool().Draw(t, "ate")
	switch rapid.IntRange(0, 2).Draw(t, "hold") {
	case 0:
		e.Hold = collection.Lifted
	case 1:
		e.Hold = rapid.SampledFrom(holdKinds).Draw(t, "kind")
		if rapid.Bool().Draw(t, "until") {
			e.Until = e.On.Add(rapid.IntRange(0, 9).Draw(t, "days"))
		}
	}
}

func drawGiven(t *rapid.T, name string, low, high int) collection.Given[int] {
	if rapid.Bool().Draw(t, name+" is given") {
		return known(rapid.IntRange(low, high).Draw(t, name))
	}
	return collection.Given[int]{}
}

// drawWishes draws what the keeper wants, and the room for it.
func drawWishes(t *rapid.T, c *collection.Collection, on civil.Date) {
	c.Rules.ClutchesASeason = rapid.IntRange(0, 3).Draw(t, "clutches a season")
	c.Rules.PairingsASeason = drawGiven(t, "pairings a season", 1, 9)
	for _, name := range rapid.SliceOfDistinct(rapid.SampledFrom([]string{"rest", "weight", "too-young"}), rapid.ID[string]).Draw(t, "relax") {
		c.Rules.Relax = append(c.Rules.Relax, collection.RelaxedRule{Name: name})
	}
	c.Rules.SpacePct = [2]int{rapid.IntRange(1, 50).Draw(t, "from pct"), rapid.IntRange(50, 99).Draw(t, "to pct")}
	c.Equipment.RetryAfterDays = drawGiven(t, "retry", 0, 365)
	c.Card.Contact = words.Draw(t, "contact")
	for i := range rapid.IntRange(0, 2).Draw(t, "closed") {
		first := on.Add(100 * i)
		c.Shipping.Closed = append(c.Shipping.Closed, civil.Span{First: first, Last: first.Add(rapid.IntRange(0, 9).Draw(t, "closed for"))})
	}
	for i := range rapid.IntRange(0, 2).Draw(t, "targets") {
		c.Targets = append(c.Targets, collection.Target{
			Name: fmt.Sprint("target ", words.Draw(t, "name"), i), On: on.Add(500), Species: drawn, Froglets: 1 + i,
			CertaintyPct: rapid.IntRange(50, 95).Draw(t, "certainty"),
			LateCost:     drawGiven(t, "late", 0, 1000), EarlyCost: drawGiven(t, "early", 0, 1000),
		})
	}
	sires, dams := parents(t, c, collection.Male), parents(t, c, collection.Female)
	if len(sires) == 0 || len(dams) == 0 {
		return
	}
	p := collection.Pairing{
		ID: "P", Species: drawn, Sires: sires, Dams: dams, ReadyBy: on.Add(400), CertaintyPct: 80, Note: words.Draw(t, "note"),
		LeaveOutCost: drawGiven(t, "leave out", 1, 10_000),
	}
	if rapid.Bool().Draw(t, "released") {
		p.NotBefore = on.Add(rapid.IntRange(0, 399).Draw(t, "not before"))
	}
	if len(c.Targets) > 0 && rapid.Bool().Draw(t, "for a target") {
		p.Target, p.ReadyBy, p.CertaintyPct = c.Targets[0].Name, c.Targets[0].On, c.Targets[0].CertaintyPct
	}
	c.Pairings = append(c.Pairings, p)
}

// wishes writes what drawWishes draws.
func (w *writer) wishes(c *collection.Collection) {
	var relaxed, closed []string
	for _, r := range c.Rules.Relax {
		relaxed = append(relaxed, r.Name)
	}
	for _, s := range c.Shipping.Closed {
		closed = append(closed, s.String())
	}
	w.section("rules", func() {
		w.add("clutches_a_season", w.number(float64(c.Rules.ClutchesASeason)))
		w.add("pairings_a_season", w.given(c.Rules.PairingsASeason))
		w.add("relax", "["+strings.Join(relaxed, ", ")+"]")
		w.add("space_pct", fmt.Sprintf("[%d, %d]", c.Rules.SpacePct[0], c.Rules.SpacePct[1]))
	})
	w.section("equipment", func() { w.add("retry_after_days", w.given(c.Equipment.RetryAfterDays)) })
	w.section("card", func() { w.add("contact", w.text(c.Card.Contact)) })
	w.section("shipping", func() { w.add("carrier_closed", "["+strings.Join(closed, ", ")+"]") })
	w.WriteString("targets:\n")
	for _, t := range c.Targets {
		w.add("name", w.text(t.Name))
		w.add("on", w.date(t.On))
		w.add("species", t.Species)
		w.add("froglets", strconv.Itoa(t.Froglets))
		w.add("certainty_pct", strconv.Itoa(t.CertaintyPct))
		w.add("late_cost", w.given(t.LateCost))
		w.add("early_cost", w.given(t.EarlyCost))
		w.end()
	}
	w.WriteString("pairings:\n")
	for _, p := range c.Pairings {
		w.add("id", w.text(p.ID))
		w.add("sire", w.list(p.Sires))
		w.add("dam", w.list(p.Dams))
		if w.add("target", w.text(p.Target)); p.Target == "" {
			w.add("ready_by", w.date(p.ReadyBy))
		}
		w.add("not_before", w.date(p.NotBefore))
		w.add("leave_out_cost", w.given(p.LeaveOutCost))
		w.add("note", w.text(p.Note))
		w.end()
	}
}

// section writes one mapping of the top level.
func (w *writer) section(key string, add func()) {
	add()
	w.WriteString(key + ": {" + strings.Join(w.pairs, ", ") + "}\n")
	w.pairs = nil
}

func (w *writer) given(v collection.Given[int]) string {
	if !v.Known {
		return ""
	}
	return strconv.Itoa(v.Value)
}

func (w *writer) holds(holds []collection.Hold) string {
	return w.flowList(len(holds), func(i int) {
		w.add("kind", string(holds[i].Kind))
		w.add("from", w.date(holds[i].From))
		w.add("until", w.date(holds[i].Until))
		w.add("note", w.text(holds[i].Note))
	})
}

func (w *writer) promises(promises []collection.Promise) string {
	return w.flowList(len(promises), func(i int) {
		w.add("to", w.text(promises[i].To))
		w.add("count", strconv.Itoa(promises[i].Count))
	})
}

// flowList writes a list of small mappings inside an entry.
func (w *writer) flowList(count int, add func(i int)) string {
	outer := w.pairs
	var items []string
	for i := range count {
		w.pairs = nil
		add(i)
		items = append(items, "{"+strings.Join(w.pairs, ", ")+"}")
	}
	w.pairs = outer
	if len(items) == 0 {
		return ""
	}
	return "[" + strings.Join(items, ", ") + "]"
}
