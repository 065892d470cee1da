package record

import (
	"bytes"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/collection"
)

// kept are the records that an edit has to do with.
type kept struct {
	animals, clutches map[string]bool
	stubs             map[string]bool // animals of which only the ends of a life are of interest
	tail              map[string]int  // of each list, how many entries stay at its end
}

// around gives the records that e names, the young and the clutches of these
// and theirs, as far as an order of dates reaches, with records whose ids look
// like new ones. What these come from is kept as well, as stubs, and the ends of
// the lists, with the entry before those that are taken away.
func (b *Book) around(e Edit, taken map[string]int) kept {
	k := kept{make(map[string]bool), make(map[string]bool), make(map[string]bool), make(map[string]int)}
	for _, list := range [...]string{"animals", "clutches", "diary"} {
		k.tail[list] = taken[list] + 1
	}
	k.animals[e.Entry.Animal], k.clutches[e.Entry.Clutch] = true, true
	if e.Clutch != nil {
		k.add(e.Clutch.Dams, e.Clutch.Sires)
		b.lookalikes(k, e.Clutch.ID)
	}
	for i := range e.Animals {
		k.clutches[e.Animals[i].Clutch] = true
		b.lookalikes(k, e.Animals[i].ID)
	}
	const generations = 2 // the young of a clutch, and what was laid by these
	for range generations {
		b.descend(k)
	}
	b.ascend(k)
	return k
}

func (k kept) add(lists ...[]string) {
	for _, ids := range lists {
		for _, id := range ids {
			k.animals[id] = true
		}
	}
}

// lookalikes keeps the records whose ids differ from id in case only.
func (b *Book) lookalikes(k kept, id string) {
	c := b.Collection
	for i := range c.Animals {
		if strings.EqualFold(c.Animals[i].ID, id) {
			k.animals[c.Animals[i].ID] = true
		}
	}
	for i := range c.Clutches {
		if strings.EqualFold(c.Clutches[i].ID, id) {
			k.clutches[c.Clutches[i].ID] = true
		}
	}
}

// descend adds the clutches and the young of what is kept.
func (b *Book) descend(k kept) {
	c := b.Collection
	is := func(id string) bool { return k.animals[id] }
	var animals, clutches []string
	for i := range c.Clutches {
		if l := &c.Clutches[i]; slices.ContainsFunc(l.Dams, is) || slices.ContainsFunc(l.Sires, is) {
			clutches = append(clutches, l.ID)
		}
	}
	for i := range c.Animals {
		a := &c.Animals[i]
		if k.clutches[a.Clutch] || slices.ContainsFunc(a.Dams, is) || slices.ContainsFunc(a.Sires, is) {
			animals = append(animals, a.ID)
		}
	}
	k.add(animals)
	for _, id := range clutches {
		k.clutches[id] = true
	}
}

// ascend adds the clutches that the animals come from, and as stubs all parents
// that are not there yet.
func (b *Book) ascend(k kept) {
	c := b.Collection
	stub := func(lists ...[]string) {
		for _, ids := range lists {
			for _, id := range ids {
				k.stubs[id] = true
			}
		}
	}
	for i := range c.Animals {
		if a := &c.Animals[i]; k.animals[a.ID] || len(c.Animals)-i <= k.tail["animals"] {
			k.clutches[a.Clutch] = true
			stub(a.Dams, a.Sires)
		}
	}
	for _, e := range c.Diary[max(len(c.Diary)-k.tail["diary"], 0):] {
		k.clutches[e.Clutch], k.stubs[e.Animal] = true, true
	}
	for i := range c.Clutches {
		if l := &c.Clutches[i]; k.clutches[l.ID] || len(c.Clutches)-i <= k.tail["clutches"] {
			stub(l.Dams, l.Sires)
		}
	}
	for i := range c.Pairings {
		stub(c.Pairings[i].Dams, c.Pairings[i].Sires)
	}
}

// cuts turns the entries of lists with dashes that are not kept into empty
// lines, so that all others keep their lines, and animals of which only a stub
// is kept into one line. The end of each list stays, for what is added comes
// right behind it.
func (b *Book) cuts(k kept) []change {
	c := b.Collection
	var cuts []change
	for _, s := range b.outline.Sections {
		if s.Form != collection.Dashed {
			continue
		}
		none := func(int) string { return "" }
		switch s.Key {
		case "animals":
			cuts = b.cut(cuts, s, k.tail[s.Key], func(i int) bool { return k.animals[c.Animals[i].ID] }, func(i int) string {
				if !k.stubs[c.Animals[i].ID] {
					return ""
				}
				return strings.Repeat(" ", s.Value.Column-1) + "- " + braces(stubItem(&c.Animals[i]), false)
			})
		case "clutches":
			cuts = b.cut(cuts, s, k.tail[s.Key], func(i int) bool { return k.clutches[c.Clutches[i].ID] }, none)
		case "diary":
			cuts = b.cut(cuts, s, k.tail[s.Key], func(i int) bool {
				e := &c.Diary[i]
				return e.Place == "" && (e.Pairing != "" || k.animals[e.Animal] && e.Animal != "" || k.clutches[e.Clutch] && e.Clutch != "")
			}, none)
		}
	}
	return cuts
}

// cut adds the entries of a list but its last ones that are not kept to cuts,
// neighbours as one, with what stands in their place.
func (b *Book) cut(cuts []change, s collection.Section, tail int, keep func(i int) bool, instead func(i int) string) []change {
	end := len(s.Items) - tail
	for i := 0; i < end; i++ {
		if keep(i) {
			continue
		}
		var place strings.Builder
		line := b.dash(s, i)
		c := change{from: b.text.start(line)}
		for ; i < end && !keep(i); i++ {
			next := b.dash(s, i+1)
			place.WriteString(instead(i) + strings.Repeat("\n", next-line))
			line = next
		}
		c.to, c.text = b.text.start(line), place.String()
		cuts = append(cuts, c)
	}
	return cuts
}

// dash gives the line in which the dash of an entry stands, which can be above
// the entry itself.
func (b *Book) dash(s collection.Section, i int) int {
	line := s.Items[i].Line
	for line > 1 && !strings.HasPrefix(string(bytes.TrimLeft(b.text.line(line), " ")), "-") {
		line--
	}
	return line
}
