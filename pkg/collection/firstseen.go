package collection

import (
	"cmp"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// FirstSeen gives the first day on which a stage of a clutch was seen: in the
// diary, or because one of its animals has a date of hatching, in which case
// some of it were that far. It is false when none was. Of one day the diary
// comes first.
func (c *Collection) FirstSeen(clutch string) (Look, bool) {
	s := c.subjects[clutch]
	if s.kind != clutchKind {
		return Look{}, false
	}
	first := c.seen[s.index]
	return first, first.On.Known()
}

// LaidOn gives the day on which a clutch was laid; unknown for no clutch, or when nobody
// wrote it down.
func (c *Collection) LaidOn(clutch string) civil.Date {
	if k, ok := c.Clutch(clutch); ok {
		return k.Laid
	}
	return 0
}

// Since gives the day from which a clutch is known of: the one on which it was
// laid, or else that of [Collection.FirstSeen]. It is unknown for an id that is
// not that of a clutch.
func (c *Collection) Since(clutch string) civil.Date {
	s := c.subjects[clutch]
	if s.kind != clutchKind {
		return 0
	}
	return cmp.Or(c.Clutches[s.index].Laid, c.seen[s.index].On)
}

// fillSeen finds the first look of each clutch.
func (r *reader) fillSeen() {
	r.c.seen = make([]Look, len(r.c.Clutches))
	for i := range r.c.Clutches {
		if looks := r.c.Looks(r.c.Clutches[i].ID); len(looks) > 0 {
			r.c.seen[i] = looks[0]
		}
	}
	for i, k := range r.links.clutchOf {
		if k < 0 {
			continue
		}
		a, first := &r.c.Animals[i], &r.c.seen[k]
		if a.Hatched.Known() && (!first.On.Known() || a.Hatched < first.On) {
			*first = Look{On: a.Hatched, Saw: stages[0], Some: true, At: a.At}
		}
	}
	for i := range r.c.Clutches {
		s := subject{clutchKind, i}
		if k := &r.c.Clutches[i]; !k.Laid.Known() && !r.c.seen[i].On.Known() && r.value(s, "laid") == nil && k.ID != "" {
			r.errorAt(k.At, r.called(s)+" has no date of laying, and no stage of it was seen", "add laid:, or a diary entry that says what was seen: saw: or gosner:")
		}
	}
}
