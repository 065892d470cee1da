package record

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// doubts are what may be a slip in an edit, though the file is right with it; now is
// what that means.
func (b *Book) doubts(e Edit, now *collection.Collection) strictyaml.Diagnostics {
	return append(b.again(e, now), b.noPairing(e, now)...)
}

// again warns of an entry that says the same as the last one, as when a command was
// given twice.
func (b *Book) again(e Edit, now *collection.Collection) strictyaml.Diagnostics {
	n := len(b.Collection.Diary)
	if n == 0 || !equal(b.Collection.Diary[n-1], e.Entry.Entry) {
		return nil
	}
	return strictyaml.Diagnostics{now.Diagnostic(strictyaml.Warning, now.Diary[len(now.Diary)-1].At,
		fmt.Sprintf("the entry before it, in line %d, says the same", b.Collection.Diary[n-1].At.Line),
		"if it happened once, take it back with `spawnwright record undo`")}
}

// longestRain is for how many days after its rain began a clutch may be of a pairing;
// a rain ends sooner, and eggs may be found later.
const longestRain = 30

// noPairing warns of a clutch without a pairing whose dam is in the rain, in a
// pairing that has none yet: the plan would wait for another.
func (b *Book) noPairing(e Edit, now *collection.Collection) strictyaml.Diagnostics {
	if e.Clutch == nil || e.Clutch.Pairing != "" {
		return nil
	}
	c := b.Collection
	for i := range c.Pairings {
		p := &c.Pairings[i]
		rain := b.rain(p.ID, e.Clutch.Laid)
		hers := slices.ContainsFunc(e.Clutch.Dams, func(id string) bool { return slices.Contains(p.Dams, id) })
		has := slices.ContainsFunc(c.Clutches, func(k collection.Clutch) bool { return k.Pairing == p.ID })
		if rain.Known() && hers && !has {
			return strictyaml.Diagnostics{now.Diagnostic(strictyaml.Warning, now.Clutches[len(now.Clutches)-1].At,
				fmt.Sprintf("its dam is in pairing %s, whose rain began on %s and which has no clutch", p.ID, rain),
				fmt.Sprintf("if it is that one's, take it back and write `spawnwright record laid %s`", p.ID))}
		}
	}
	return nil
}

// rain gives the day on which the last rain of a pairing began before a day, where
// that is not long ago.
func (b *Book) rain(pairing string, on civil.Date) (last civil.Date) {
	for _, began := range b.Collection.Began(pairing) {
		if began.Phase == species.Rain && began.On <= on && on.Sub(began.On) <= longestRain {
			last = max(last, began.On)
		}
	}
	return last
}
