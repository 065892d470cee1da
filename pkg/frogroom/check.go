package frogroom

import (
	"fmt"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/pairing"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Check looks at everything that can be wrong with a file that could be read:
// the warnings of the reading, pairings that break a rule, temperatures outside
// the safe range of a species, clutches that do not fit what is known of it. It
// also says, as notes, what it could not check. The worst comes first.
func (r *Room) Check(on civil.Date) strictyaml.Diagnostics {
	ds := append(strictyaml.Diagnostics(nil), r.problems...)
	ds = append(ds, r.checkPairings(on)...)
	ds = append(ds, r.checkTemperatures(on)...)
	ds = append(ds, r.checkClutches(on)...)
	ds = append(ds, r.notChecked()...)
	ds.Sort()
	return ds
}

func (r *Room) checkPairings(on civil.Date) strictyaml.Diagnostics {
	var ds strictyaml.Diagnostics
	c := r.Collection
	plan, err := r.Season(on)
	if err != nil {
		return strictyaml.Diagnostics{c.Diagnostic(strictyaml.Error, strictyaml.Position{}, err.Error(), "")}
	}
	for i := range c.Pairings {
		p := &c.Pairings[i]
		rain := rainStart(plan.Pairings[i])
		unknown := newGaps(len(p.Sires) + len(p.Dams))
		for _, f := range r.judge(p, rain).Findings {
			switch f.Severity {
			case pairing.Refuse:
				ds = append(ds, c.Diagnostic(strictyaml.Warning, p.At, "pairing "+p.ID+" should not be made: "+f.Message, untilWhen(f)))
			case pairing.Warn:
				ds = append(ds, c.Diagnostic(strictyaml.Warning, p.At, "pairing "+p.ID+": "+f.Message, untilWhen(f)))
			case pairing.Unknown:
				unknown.add(f)
			}
		}
		if text := unknown.String(); text != "" {
			ds = append(ds, c.Diagnostic(strictyaml.Note, p.At, "pairing "+p.ID+": not known, and so not checked or not exact: "+text, ""))
		}
	}
	return ds
}

// rainStart gives the day on which a planned pairing is put together.
func rainStart(p PlannedPairing) civil.Date {
	for _, ph := range p.Phases {
		if ph.Name == "rain" {
			return ph.Span.First
		}
	}
	return p.Phases[0].Span.First
}

func untilWhen(f pairing.Finding) string {
	if f.From.Known() {
		return fmt.Sprintf("this passes on %s", f.From)
	}
	return ""
}

// checkTemperatures compares what was measured, and the set-point of the tubs,
// with the safe range of the species.
func (r *Room) checkTemperatures(on civil.Date) strictyaml.Diagnostics {
	var ds strictyaml.Diagnostics
	c := r.Collection
	set := c.Equipment.TadpoleTubs.WaterC
	warnedSet := make(map[string]bool)
	for i := range c.Clutches {
		clutch := &c.Clutches[i]
		safe := r.profile(clutch.Species).Safe
		running := clutch.Laid <= on && !(clutch.Ended.Known() && clutch.Ended <= on)
		if !safe.Known() || !running {
			continue
		}
		outside := func(v collection.Given[float64]) bool {
			return v.Known && (v.Value < safe.Low || v.Value > safe.High)
		}
		for _, t := range c.Temperatures(clutch.ID) {
			for _, m := range []struct {
				what  string
				value collection.Given[float64]
			}{{"water", t.WaterC}, {"air", t.AirC}} {
				if t.On <= on && outside(m.value) {
					ds = append(ds, c.Diagnostic(strictyaml.Warning, t.At,
						fmt.Sprintf("%s at %.3g °C on %s is outside the safe range of %s for %s (clutch %s)", m.what, m.value.Value, t.On, degrees(safe.Low, safe.High), clutch.Species, clutch.ID),
						"bring it back slowly, and ask a veterinarian when animals look unwell"))
				}
			}
		}
		if outside(set) && !warnedSet[clutch.Species] {
			warnedSet[clutch.Species] = true
			ds = append(ds, c.Diagnostic(strictyaml.Warning, clutch.At,
				fmt.Sprintf("the tadpole tubs are set to %.3g °C, outside the safe range of %s for %s", set.Value, degrees(safe.Low, safe.High), clutch.Species),
				"give these clutches a place of their own, or change equipment.tadpole_tubs.water_c"))
		}
	}
	return ds
}

func (r *Room) checkClutches(on civil.Date) strictyaml.Diagnostics {
	var ds strictyaml.Diagnostics
	for _, k := range r.Clutches(on) {
		clutch, _ := r.Collection.Clutch(k.ID)
		for _, w := range k.Warnings {
			ds = append(ds, r.Collection.Diagnostic(strictyaml.Warning, clutch.At, w, ""))
		}
		for _, s := range k.Stages {
			if s.Overdue {
				ds = append(ds, r.Collection.Diagnostic(strictyaml.Warning, clutch.At,
					fmt.Sprintf("clutch %s: %s expected by %s, and nothing is recorded", k.ID, stageWords(s.Stage), s.Window.Late),
					"look, and record what you see; end a clutch that is over with ended: DATE"))
				break
			}
		}
	}
	return ds
}

// notChecked says what no check looked at.
func (r *Room) notChecked() strictyaml.Diagnostics {
	var ds strictyaml.Diagnostics
	note := func(message, cure string) {
		ds = append(ds, r.Collection.Diagnostic(strictyaml.Note, strictyaml.Position{}, message, cure))
	}
	if r.holidays == nil {
		note("public holidays are not known, so shipping days are checked for weekdays only", "add holidays: with a code such as de-by or us")
	}
	if !r.Collection.Equipment.TadpoleTubs.WaterC.Known {
		note("the temperature of the tubs is not known, so only measured temperatures are checked", "add equipment.tadpole_tubs.water_c")
	}
	return ds
}
