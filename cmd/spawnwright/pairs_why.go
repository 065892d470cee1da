package main

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// rulesTable has a row for what each rule says.
func rulesTable(title string, findings []breedingplan.Finding) *table.Table {
	rules := &table.Table{Title: title, Columns: []table.Column{{Name: "rule"}, {Name: "animals"}, {Name: "says"}, {Name: "value"}, {Name: "limit"}, {Name: "until"}, {Name: "in words", Width: 80}}}
	for _, f := range findings {
		says := f.Severity.String()
		if f.Relaxed {
			says = "relaxed"
		}
		rules.Add(string(f.Rule), strings.Join(f.Animals, " "), says, f.Value, f.Limit, dateOrBlank(f.From), f.Message)
	}
	return rules
}

func (a *app) showWhy(room *frogroom.Room, v breedingplan.PairVerdict) error {
	a.warn(v.Warnings)
	title := fmt.Sprintf("%s × %s on %s: allowed", named(room, []string{v.Male}), named(room, []string{v.Female}), v.On)
	if !v.Allowed {
		title = strings.TrimSuffix(title, "allowed") + "refused"
		if v.From.Known() {
			title += ", until " + v.From.String()
		}
	}
	rules := rulesTable(title, v.Findings)
	effect := &table.Table{Columns: []table.Column{{Name: "effect"}, {Name: "value", Right: true}}}
	effect.Add("inbreeding of the young", coefficient(v.Inbreeding, v.Expected))
	if v.Least != nil && v.Greatest != nil {
		effect.Add("  by who the parents are", fmt.Sprintf("%.4f to %.4f", *v.Least, *v.Greatest))
	}
	for _, s := range v.Shared {
		effect.Add("  through "+strings.TrimSpace(s.ID+" "+s.Name), coefficient(s.Share, false))
	}
	effect.Add("mean kinship of "+v.Male, coefficient(v.MaleKinship, false))
	effect.Add("mean kinship of "+v.Female, coefficient(v.FemaleKinship, false))
	effect.Add("gene diversity of the line", coefficient(v.GeneDiversity, false))
	effect.Add(fmt.Sprintf("the same with %d young of theirs", v.Young), coefficient(v.WithYoung, false))
	if marked(v.Inbreeding, v.Expected) {
		a.warn([]string{kin.ExpectedWarning})
	}
	return a.show("pair", v, rules, effect)
}

// showWhyOne shows what the rules say of one animal, and whom it may be paired with.
func (a *app) showWhyOne(room *frogroom.Room, v breedingplan.AnimalVerdict) error {
	a.warn(v.Warnings)
	rules := rulesTable(fmt.Sprintf("%s on %s", named(room, []string{v.ID}), v.On), v.Findings)
	mates := &table.Table{Title: "Mates", Empty: "There is no mate in the room.", Columns: []table.Column{
		{Name: "mate"}, {Name: "allowed"}, {Name: "until"}, {Name: "inbreeding", Right: true}, {Name: "mean kinship", Right: true}, {Name: "why", Width: 90},
	}}
	for _, m := range v.Mates {
		allowed, why := "yes", m.Warned
		switch {
		case len(m.Refused) > 0:
			allowed, why = "no", m.Refused
		case !m.Allowed:
			allowed, why = "no", []string{"see above"}
		}
		mates.Add(named(room, []string{m.ID}), allowed, dateOrBlank(m.From), coefficient(m.Inbreeding, false), coefficient(m.MeanKinship, false), strings.Join(why, "; "))
	}
	return a.show("animal", v, rules, mates)
}
