package main

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

func (a *app) showPairs(room *frogroom.Room, p frogroom.Pairs) error {
	a.warn(p.Warnings)
	if a.format != "table" {
		return a.show("pairs", p, pairsRows(p))
	}
	var b bytes.Buffer
	if err := pairsText(&b, room, p); err != nil {
		return err
	}
	return a.write(b.Bytes())
}

// pairsText is the plan for people: the pairings first, then who is left out.
func pairsText(b *bytes.Buffer, room *frogroom.Room, p frogroom.Pairs) error {
	fmt.Fprintf(b, "Pairings as judged on %s\n", p.On)
	for _, s := range p.Species {
		fmt.Fprintf(b, "\n%s: %s, %d of %d pairs allowed\n\n", s.Species, counted(len(s.Pairs), "pairing"), s.Allowed, s.Allowed+s.Refused)
		if s.NoPlan != "" {
			fmt.Fprintf(b, "  No pairing: %s.\n", s.NoPlan)
		} else if err := speciesText(b, room, s, p.Relaxed); err != nil {
			return err
		}
	}
	for _, s := range p.Species {
		if len(s.LeftOut) == 0 {
			continue
		}
		fmt.Fprintf(b, "\nLeft out, %s:\n\n", s.Species)
		t := &table.Table{Indent: "  ", Columns: []table.Column{{Name: "animal"}, {Name: "sex"}, {Name: "why", Width: 90}, {Name: "until"}}}
		for _, l := range s.LeftOut {
			t.Add(named(room, []string{l.ID}), sexText(l), l.Reason, dateOrBlank(l.From))
		}
		if err := t.Text(b); err != nil {
			return err
		}
	}
	fmt.Fprintf(b, "\nLimits: %s.\n", strings.Join(p.Limits, "; "))
	if !p.Proven {
		b.WriteString("Not proven as a whole: other numbers of pairings for the species may do more.\n")
	}
	fmt.Fprintf(b, "A mean inbreeding of 0.01 in the young weighs as much as %.4f of gene diversity.\n", 0.01*p.Weight)
	if len(p.Relaxed) > 0 {
		fmt.Fprintf(b, "Relaxed, so that they refuse nothing: %s.\n", relaxedText(p.Relaxed))
	}
	b.WriteString("The animals' health comes first: a plan knows only of the holds that are recorded.\n")
	return nil
}

// sexText is the sex with the sign by which it is known.
func sexText(l frogroom.LeftOut) string {
	if l.Sign == "" {
		return string(l.Sex)
	}
	return string(l.Sex) + ", " + l.Sign
}

// relaxedText says which rules are set aside, and by what.
func relaxedText(rules []frogroom.RelaxedRule) string {
	out := make([]string, len(rules))
	for i, r := range rules {
		out[i] = string(r.Rule) + " (as asked)"
		if r.By == "file" {
			out[i] = string(r.Rule) + " (rules.relax of the file)"
		}
	}
	return strings.Join(out, ", ")
}

func speciesText(b *bytes.Buffer, room *frogroom.Room, s frogroom.SpeciesPairs, relaxed []frogroom.RelaxedRule) error {
	t := &table.Table{Indent: "  ", Columns: []table.Column{
		{Name: "male"},
		{Name: "female"},
		{Name: "hold back", Right: true},
		{Name: "inbreeding", Right: true},
		{Name: "gene diversity", Right: true},
		{Name: "why", Width: 70},
	}}
	for _, c := range s.Pairs {
		t.Add(named(room, []string{c.Male}), named(room, []string{c.Female}), fmt.Sprint(c.Young),
			coefficient(c.Inbreeding, c.Expected), fmt.Sprintf("%+.4f", c.Change), c.Reason)
	}
	if err := t.Text(b); err != nil {
		return err
	}
	b.WriteString("\n")
	for _, c := range s.Pairs {
		for _, f := range c.Findings {
			fmt.Fprintf(b, "  ! %s × %s: %s\n", c.Male, c.Female, f)
		}
	}
	fmt.Fprintf(b, "  How the sex is known: %s.\n", signs(s.Pairs))
	if s.Promised > 0 {
		are, them := "are promised and do", "them"
		if s.Promised == 1 {
			are, them = "is promised and does", "it"
		}
		fmt.Fprintf(b, "  The line is %s; %d more %s not count (kin counts %s: gene diversity %.4f).\n", counted(s.Living, "animal"), s.Promised, are, them, s.WithPromised)
	}
	fmt.Fprintf(b, "  Gene diversity of the line: %.4f now, %.4f with the young; their mean inbreeding %.4f.\n", s.GeneDiversity, s.WithYoung, s.YoungInbreeding)
	if s.Proven {
		fmt.Fprintf(b, "  Proven: nothing better can be done with %s.\n", counted(len(s.Pairs), "pairing"))
	} else {
		fmt.Fprintf(b, "  Not proven: the best found so far, at most %.2f %% from the best there is.\n", 100*s.Gap)
	}
	for i, o := range s.Others {
		fmt.Fprintf(b, "  %s: %s instead of %s; gene diversity %+.4f, inbreeding %+.4f.\n", [...]string{"Second", "Third"}[i],
			couples(o.Instead), couples(o.Without), o.WithYoung-s.WithYoung, o.YoungInbreeding-s.YoungInbreeding)
	}
	if c := s.Ceiling; c != nil {
		fmt.Fprintf(b, "  The limit on inbreeding costs: without it gene diversity %+.4f, inbreeding %+.4f.\n", c.WithYoung-s.WithYoung, c.YoungInbreeding-s.YoungInbreeding)
	} else if !slices.ContainsFunc(relaxed, func(r frogroom.RelaxedRule) bool { return r.Rule == pairing.RuleInbreeding }) {
		b.WriteString("  The limit on inbreeding costs nothing here.\n")
	}
	return nil
}

// signs says of each animal of a plan how its sex is known, those of one sign together.
func signs(pairs []frogroom.ChosenPair) string {
	var order []string
	of := make(map[string][]string)
	add := func(id, sign string) {
		sign = cmp.Or(sign, "no sign recorded")
		if of[sign] == nil {
			order = append(order, sign)
		}
		if !slices.Contains(of[sign], id) {
			of[sign] = append(of[sign], id)
		}
	}
	for _, p := range pairs {
		add(p.Male, p.MaleSign)
		add(p.Female, p.FemaleSign)
	}
	parts := make([]string, len(order))
	for i, sign := range order {
		parts[i] = sign + " (" + strings.Join(of[sign], ", ") + ")"
	}
	return strings.Join(parts, "; ")
}

func couples(pairs [][2]string) string {
	out := make([]string, len(pairs))
	for i, p := range pairs {
		out[i] = p[0] + " × " + p[1]
	}
	if len(out) == 0 {
		return "nothing"
	}
	return strings.Join(out, ", ")
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// pairsRows is the plan for a spreadsheet: the pairings, then who is left out.
func pairsRows(p frogroom.Pairs) *table.Table {
	t := &table.Table{Columns: []table.Column{
		{Name: "species"}, {Name: "male"}, {Name: "female"}, {Name: "hold back"}, {Name: "inbreeding"}, {Name: "gene diversity change"}, {Name: "left out"}, {Name: "reason"}, {Name: "until"},
	}}
	for _, s := range p.Species {
		for _, c := range s.Pairs {
			t.Add(s.Species, c.Male, c.Female, fmt.Sprint(c.Young), fmt.Sprintf("%.4f", c.Inbreeding), fmt.Sprintf("%.4f", c.Change), "", c.Reason, "")
		}
		for _, l := range s.LeftOut {
			t.Add(s.Species, "", "", "", "", "", l.ID, l.Reason, dateOrBlank(l.From))
		}
	}
	return t
}

func (a *app) showWhy(room *frogroom.Room, v frogroom.PairVerdict) error {
	a.warn(v.Warnings)
	title := fmt.Sprintf("%s × %s on %s: allowed", named(room, []string{v.Male}), named(room, []string{v.Female}), v.On)
	if !v.Allowed {
		title = strings.TrimSuffix(title, "allowed") + "refused"
		if v.From.Known() {
			title += ", until " + v.From.String()
		}
	}
	rules := &table.Table{Title: title, Columns: []table.Column{{Name: "rule"}, {Name: "animals"}, {Name: "says"}, {Name: "value"}, {Name: "limit"}, {Name: "until"}, {Name: "in words", Width: 80}}}
	for _, f := range v.Findings {
		says := f.Severity.String()
		if f.Relaxed {
			says = "relaxed"
		}
		rules.Add(string(f.Rule), strings.Join(f.Animals, " "), says, f.Value, f.Limit, dateOrBlank(f.From), f.Message)
	}
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
		a.warn([]string{markWarning})
	}
	if slices.Contains([]string{"json", "csv"}, a.format) {
		return a.show("pair", v, rules)
	}
	return a.show("pair", v, rules, effect)
}
