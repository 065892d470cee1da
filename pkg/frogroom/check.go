package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/internal/words"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Check looks at everything that can be wrong with a file that could be read:
// the warnings of the reading, pairings that break a rule or do not fit into
// the season, targets that fall short, temperatures outside the safe range of a
// species, clutches that do not fit what is known of it. It also says, as notes,
// what it could not check. The worst comes first. What is over is not checked.
func (r *Room) Check(on civil.Date) strictyaml.Diagnostics {
	mustKnow(on)
	c := &check{room: r, on: on, found: append(strictyaml.Diagnostics{}, r.problems...)}
	p := r.plan(on, r.allPairings()).current()
	c.pairings(p)
	c.over(p)
	c.conflicts(p)
	c.targets(p)
	c.temperatures()
	c.clutches(p)
	c.unchecked()
	c.found.Sort()
	return c.found
}

// check collects what is found.
type check struct {
	room  *Room
	on    civil.Date
	found strictyaml.Diagnostics
}

func (c *check) warn(at strictyaml.Position, message, cure string) {
	c.found = append(c.found, c.room.Collection.Diagnostic(strictyaml.Warning, at, message, cure))
}

func (c *check) note(at strictyaml.Position, message, cure string) {
	c.found = append(c.found, c.room.Collection.Diagnostic(strictyaml.Note, at, message, cure))
}

func (c *check) pairings(p *plan) {
	for _, one := range p.planned {
		unknown := newGaps(len(one.Sires) + len(one.Dams))
		for _, f := range one.verdict.Findings {
			switch f.Severity {
			case pairing.Refuse:
				c.warn(one.At, "pairing "+one.ID+" should not be made: "+f.Message, untilWhen(f))
			case pairing.Warn:
				c.warn(one.At, "pairing "+one.ID+": "+f.Message, untilWhen(f))
			case pairing.Unknown:
				unknown.add(f)
			}
		}
		for _, w := range one.cycle.Warnings {
			c.warn(one.At, "pairing "+one.ID+": "+w, "")
		}
		if _, text := c.room.noEggs(one, c.on); text != "" {
			c.warn(one.At, "pairing "+one.ID+": "+text, "record the clutch, or plan another attempt")
		}
		if k := c.room.unnamed(one, c.on); k != nil {
			c.warn(k.At, unnamedText(k, one), "if it is that one's, write pairing: "+one.ID+" beside it")
		}
		if text := unknown.String(); text != "" {
			c.note(one.At, "pairing "+one.ID+": not known, and so not checked or not exact: "+text, "")
		}
	}
}

func untilWhen(f pairing.Finding) string {
	if f.From.Known() {
		return fmt.Sprintf("this passes on %s", f.From)
	}
	return ""
}

// over reports pairings whose dates have passed without a trace: a slip of the
// year would make them vanish.
func (c *check) over(p *plan) {
	for _, one := range p.over {
		clutches, _ := upTo(c.on, c.room.laid[one.ID])
		if clutches == 0 && len(c.room.Collection.Began(one.ID)) == 0 {
			c.warn(one.At, fmt.Sprintf("pairing %s ended on %s by its dates, and nothing is recorded of it", one.ID, one.cycle.Span().Last),
				"correct its date, record what began or the clutch, or remove it")
		}
	}
}

// conflicts reports why the season does not work as it stands, each reason at
// the first of its pairings.
func (c *check) conflicts(p *plan) {
	for _, conflict := range p.clashes() {
		first, _ := c.room.Collection.Pairing(conflict.Pairings[0])
		c.warn(first.At, conflict.Message, "")
	}
}

// targets reports targets to come for which too little is planned.
func (c *check) targets(p *plan) {
	planned := make(map[string]TargetOutlook)
	for _, o := range p.outlooks() {
		planned[o.Name] = o
	}
	for _, t := range c.room.Collection.Targets {
		o, ok := planned[t.Name]
		switch {
		case t.On < c.on:
		case !ok:
			c.warn(t.At, fmt.Sprintf("no pairing is planned for target %q", t.Name), "name it in a pairing: target: "+t.Name)
		case o.FromEach > 0 && o.Outlook < o.Wanted:
			c.warn(t.At, fmt.Sprintf("target %q wants %d froglets, and its pairings usually bring about %d%s", t.Name, o.Wanted, o.Outlook, without(o.LeftOut)),
				fmt.Sprintf("a usual clutch brings about %d; plan more of them", o.FromEach))
		case o.FromEach == 0:
			c.note(t.At, fmt.Sprintf("whether target %q is met was not checked: the profile of %s does not say what comes of a clutch", t.Name, t.Species), "")
		}
	}
}

// without names pairings that were not counted.
func without(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	return ", not counting " + words.And(ids) + " (in trouble, as said elsewhere)"
}

func (c *check) clutches(p *plan) {
	for _, k := range p.clutches {
		clutch, _ := c.room.Collection.Clutch(k.ID)
		for _, d := range k.Doubts {
			c.warn(d.At, d.Text, "")
		}
		if k.Died() {
			c.warn(clutch.At, fmt.Sprintf("clutch %s: none of it is alive by the last count", k.ID), "end it with ended: DATE")
		}
		for _, s := range k.Stages {
			if !s.Ahead() || s.Window.Late < c.on {
				continue
			}
			for _, doubt := range awayAt(c.room.Collection.Away, s.Stage, s.Window) {
				c.warn(clutch.At, "clutch "+k.ID+": "+doubt, "")
			}
		}
		for _, s := range k.Stages {
			if s.Overdue {
				c.warn(clutch.At, fmt.Sprintf("clutch %s: %s expected by %s, and nothing is recorded", k.ID, words.Stage(s.Stage), s.Window.Late),
					"look, and record what you see; end a clutch that is over with ended: DATE")
				break
			}
		}
	}
}

// unchecked says what no check looked at.
func (c *check) unchecked() {
	if c.room.holidays == nil {
		c.note(strictyaml.Position{}, "public holidays are not known, so shipping days are checked for weekdays only", "add holidays: with a code such as de-by or us")
	}
	if !c.room.Collection.Equipment.TadpoleTubs.WaterC.Known {
		c.note(strictyaml.Position{}, "the temperature of the tubs is not known, so only measured temperatures are checked", "add equipment.tadpole_tubs.water_c")
	}
	for i := range c.room.Collection.Diary {
		if e := &c.room.Collection.Diary[i]; e.Animal != "" && (e.WaterC.Known || e.AirC.Known) {
			c.note(e.At, "temperatures of grown animals are not checked: only those of clutches are", "compare them with `spawnwright species show`, part adult")
			break
		}
	}
}
