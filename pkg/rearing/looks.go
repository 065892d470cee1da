package rearing

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// The Gosner (1960) stages between which a clutch can hatch: the earliest is as
// the reader of the file has it, the latest is before the one at which tadpoles
// feed, where the profile says nothing else. Between the two a stage does not say
// whether the eggs have hatched.
const (
	firstHatching     = 15
	usualLastHatching = 24
)

// lastHatching gives the latest stage at which eggs of a species may not have hatched.
func (r *Rearing) lastHatching(kind string) int {
	egg, _ := r.Collection.MustProfile(kind).Step(species.Egg)
	if egg.HatchGosner.Known() {
		return int(egg.HatchGosner.High)
	}
	return usualLastHatching
}

// Looks turns the diary's looks at a clutch up to a day into those of the model. There
// are none of a clutch that the collection does not have.
func (r *Rearing) Looks(clutch string, on civil.Date) []development.Look {
	c, ok := r.Collection.Clutch(clutch)
	if !ok {
		return nil
	}
	return r.sightings(c, on).looks
}

// sightings gives these with their places. A stage at which a clutch was seen counts
// as begun on that day, unless some or all of it had reached it before, or it is one
// that lies within a step: of these the first day is seldom seen. A clutch whose day
// of laying is not known has hatched by the day on which the first of its animals
// did.
func (r *Rearing) sightings(c *collection.Clutch, on civil.Date) sightings {
	all := r.Collection.Looks(c.ID)
	// Within a day the order of the diary says nothing.
	slices.SortStableFunc(all, func(a, b collection.Look) int {
		return cmp.Or(cmp.Compare(a.On, b.On), cmp.Compare(stageOf(a), stageOf(b)), cmp.Compare(a.Gosner, b.Gosner), wholeFirst(a, b))
	})
	s := sightings{lastHatching: r.lastHatching(c.Species)}
	if first, ok := r.Collection.FirstSeen(c.ID); ok && !c.Laid.Known() && first.On <= on && (len(all) == 0 || first.On < all[0].On) {
		s.line = first.At
		s.reached(first.On, stageOf(first), first.Some)
	}
	for _, l := range all {
		s.line = l.At
		switch {
		case l.On > on:
		case l.Gosner > 0:
			s.gosner(l)
		default:
			s.reached(l.On, stageOf(l), l.Some)
			s.stillTadpoles(l, all)
		}
	}
	return s
}

// stillTadpoles takes hind legs, toes, and a stage that was there before for what they
// also say: there are no front legs yet, unless they were seen by that day.
func (s *sightings) stillTadpoles(l collection.Look, all []collection.Look) {
	grown := func(o collection.Look) bool {
		return o.On <= l.On && !o.Some && stageOf(o) >= development.FrontLegs
	}
	last := s.looks[len(s.looks)-1]
	if last.Stage < development.FrontLegs && last.Kind != development.Reached && s.farthest < development.FrontLegs && !slices.ContainsFunc(all, grown) {
		s.add(l.On, development.FrontLegs, development.NotYet)
	}
}

func wholeFirst(a, b collection.Look) int {
	switch {
	case a.Some == b.Some:
		return 0
	case a.Some:
		return 1
	}
	return -1
}

// stageOf gives the stage of a look, of a Gosner stage the one that is reached
// by then.
func stageOf(l collection.Look) development.Stage {
	if l.Gosner > 0 {
		return development.FromGosner(l.Gosner)
	}
	stage, ok := development.ParseStage(l.Saw)
	if !ok {
		panic(fmt.Sprintf("rearing: the diary has an unknown stage %q", l.Saw))
	}
	return stage
}

// sightings are the looks at one clutch, taken by date.
type sightings struct {
	looks    []development.Look
	at       []strictyaml.Position // of each
	line     strictyaml.Position   // of the one that is taken
	farthest development.Stage     // that any of the clutch was seen at
	whole    development.Stage     // that the clutch was seen at, and not only some of it

	lastHatching int // Gosner stage
}

func (s *sightings) add(on civil.Date, stage development.Stage, kind development.LookKind) {
	s.looks = append(s.looks, development.Look{Stage: stage, On: on, Kind: kind})
	s.at = append(s.at, s.line)
}

// reached takes a stage that was seen: it began on that day, if nothing was
// seen of it before, and since the look at which only some were there if that was
// all. One that some were seen at is ahead of the others.
func (s *sightings) reached(on civil.Date, stage development.Stage, some bool) {
	if !some && stage == s.farthest && stage > s.whole && !lasting(stage) {
		s.notHalf(stage)
	}
	switch {
	case stage <= s.whole || stage <= s.farthest && !some:
		s.add(on, stage, development.By)
	case some:
		s.add(on, stage, development.Some)
	case lasting(stage):
		s.add(on, stage, development.By)
	default:
		s.add(on, stage, development.Reached)
	}
	s.saw(stage, some)
}

// notHalf takes the looks at which some had reached a stage for days on which half of
// them had not, once the others have reached it too: that half did so in between.
func (s *sightings) notHalf(stage development.Stage) {
	for i := range s.looks {
		if l := &s.looks[i]; l.Stage == stage && l.Kind == development.Some {
			l.Kind = development.NotYet
		}
	}
}

// lasting reports whether a stage lies within a step.
func lasting(stage development.Stage) bool {
	return stage == development.HindLegs || stage == development.Toes || stage == development.Eating
}

func (s *sightings) saw(stage development.Stage, some bool) {
	s.farthest = max(s.farthest, stage)
	if !some {
		s.whole = max(s.whole, stage)
	}
}

// gosner takes a Gosner stage: what has been reached by then, and that the next
// event has not come. Front legs break through at the beginning of stage 42,
// which is short, so that they came on that day; all others last.
func (s *sightings) gosner(l collection.Look) {
	stage := development.FromGosner(l.Gosner)
	switch {
	case l.Gosner <= s.lastHatching && s.farthest < development.Hatched:
		if l.Gosner < firstHatching {
			s.add(l.On, development.Hatched, development.NotYet)
			return
		}
	case l.Gosner == 42:
		s.reached(l.On, stage, l.Some)
	case stage > development.Laid:
		kind := development.By
		if l.Some && stage > s.whole {
			kind = development.Some
		}
		s.add(l.On, stage, kind)
		s.saw(stage, l.Some)
	}
	for _, next := range []development.Stage{development.Feeding, development.HindLegs, development.Toes, development.FrontLegs, development.OutOfWater} {
		if next > stage {
			if next > s.farthest {
				s.add(l.On, next, development.NotYet)
			}
			return
		}
	}
}
