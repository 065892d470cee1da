package main

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/table"
	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

func (a *app) showPairs(room *frogroom.Room, p breedingplan.Plan) error {
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
func pairsText(b *bytes.Buffer, room *frogroom.Room, p breedingplan.Plan) error {
	fmt.Fprintf(b, "Pairings as judged on %s\n", p.On)
	for _, s := range p.Species {
		fmt.Fprintf(b, "\n%s: %s, %d of %d pairs allowed\n\n", s.Species, counted(len(s.Pairs), "pairing"), s.Allowed, s.Allowed+s.Refused)
		if s.NoPlan != "" {
			fmt.Fprintf(b, "  No pairing: %s.\n", s.NoPlan)
		} else if err := speciesText(b, room, p, s); err != nil {
			return err
		}
	}
	for _, s := range p.Species {
		if err := leftOutText(b, room, s.Species, s.LeftOut); err != nil {
			return err
		}
	}
	fmt.Fprintf(b, "\nLimits: %s.\n", strings.Join(p.Limits, "; "))
	if !p.Proven {
		b.WriteString("Not proven as a whole: other numbers of pairings for the species may do more.\n")
	}
	if p.Apart {
		b.WriteString("Young of kin lose less when they breed, and lines that are apart can be crossed later: plan without --apart every few years.\n")
	} else {
		fmt.Fprintf(b, "A mean inbreeding of 0.01 in the young weighs as much as %.4f of gene diversity.\n", 0.01*p.Weight)
	}
	relaxedText(b, p.Relaxed)
	b.WriteString("The animals' health comes first: a plan knows only of the holds that are recorded.\n")
	return nil
}

// sexText is the sex with the sign by which it is known.
func sexText(l breedingplan.LeftOut) string {
	if l.Sign == "" {
		return l.Sex.String()
	}
	return l.Sex.String() + ", " + l.Sign
}

// leftOutText says who is left out, and why.
func leftOutText(b *bytes.Buffer, room *frogroom.Room, species string, animals []breedingplan.LeftOut) error {
	if len(animals) == 0 {
		return nil
	}
	fmt.Fprintf(b, "\nLeft out, %s:\n\n", species)
	t := &table.Table{Indent: "  ", Columns: []table.Column{{Name: "animal"}, {Name: "sex"}, {Name: "why", Width: 90}, {Name: "until"}}}
	for _, l := range animals {
		t.Add(named(room, []string{l.ID}), sexText(l), l.Reason, dateOrBlank(l.From))
	}
	return t.Text(b)
}

// relaxedText says which rules are set aside, and by what.
func relaxedText(b *bytes.Buffer, rules []breedingplan.RelaxedRule) {
	if len(rules) == 0 {
		return
	}
	out := make([]string, len(rules))
	for i, r := range rules {
		out[i] = string(r.Rule) + " (as asked)"
		if r.By == "file" {
			out[i] = string(r.Rule) + " (rules.relax of the file)"
		}
	}
	fmt.Fprintf(b, "Relaxed, so that they refuse nothing: %s.\n", strings.Join(out, ", "))
}

// promisedText says who is in the room and not counted as the line.
func promisedText(living, promised int) string {
	switch promised {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("  The line is %s; 1 more is promised and does not count.\n", counted(living, "animal"))
	}
	return fmt.Sprintf("  The line is %s; %d more are promised and do not count.\n", counted(living, "animal"), promised)
}

func speciesText(b *bytes.Buffer, room *frogroom.Room, p breedingplan.Plan, s breedingplan.SpeciesPlan) error {
	t := &table.Table{Indent: "  ", Columns: []table.Column{
		{Name: "male"},
		{Name: "female"},
		{Name: "hold back", Right: true},
		{Name: "inbreeding", Right: true},
		{Name: "gene diversity", Right: true},
		{Name: "why", Width: 110},
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
		line := strings.TrimSuffix(promisedText(s.Living, s.Promised), ".\n")
		fmt.Fprintf(b, "%s (kin counts all: gene diversity %.4f).\n", line, s.WithPromised)
	}
	fmt.Fprintf(b, "  Gene diversity of the line: %.4f now, %.4f with the young; their mean inbreeding %.4f.\n", s.GeneDiversity, s.WithYoung, s.YoungInbreeding)
	if s.Proven {
		fmt.Fprintf(b, "  Proven: nothing better can be done with %s.\n", counted(len(s.Pairs), "pairing"))
	} else {
		fmt.Fprintf(b, "  Not proven: the best found so far, at most %.2f %% from the best there is.\n", 100*s.Gap)
	}
	for _, ids := range s.Alike {
		fmt.Fprintf(b, "  Alike, any as good as any other: %s.\n", strings.Join(ids, ", "))
	}
	if len(s.Others) == 0 && s.OthersProven && len(s.Alike) > 0 {
		b.WriteString("  Other plans differ from this one only by animals that are alike.\n")
	}
	for i, o := range s.Others {
		found := ""
		if !s.OthersProven {
			found = ", the best found"
		}
		fmt.Fprintf(b, "  %s%s: %s instead of %s; gene diversity %+.4f, inbreeding %+.4f.\n", [...]string{"Second", "Third"}[i], found,
			couples(o.Instead), couples(o.Without), o.WithYoung-s.WithYoung, o.YoungInbreeding-s.YoungInbreeding)
	}
	if c := s.Ceiling; c != nil {
		fmt.Fprintf(b, "  The limit on inbreeding costs: without it gene diversity %+.4f, inbreeding %+.4f.\n", c.WithYoung-s.WithYoung, c.YoungInbreeding-s.YoungInbreeding)
	} else if !s.CeilingProven {
		b.WriteString("  What the limit on inbreeding costs was not found out: the search was ended.\n")
	} else if !p.Apart && !slices.ContainsFunc(p.Relaxed, func(r breedingplan.RelaxedRule) bool { return r.Rule == pairing.RuleInbreeding }) {
		b.WriteString("  The limit on inbreeding costs nothing here.\n")
	}
	return nil
}

// signs says of each animal of a plan how its sex is known, those of one sign together.
func signs(pairs []breedingplan.ChosenPair) string {
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
func pairsRows(p breedingplan.Plan) *table.Table {
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
