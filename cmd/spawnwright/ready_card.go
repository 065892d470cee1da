package main

import (
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/departure"
)

func (a *app) showCard(id string) error {
	room, on, err := a.today()
	if err != nil {
		return err
	}
	card, err := room.Card(id, on)
	if err != nil {
		return readyError(err)
	}
	switch a.format {
	case "json":
		return a.show("card", card)
	case "markdown":
		return a.write([]byte(cardMarkdown(card)))
	}
	return a.write([]byte(cardText(card)))
}

// A cardPart is a heading of a card with its lines; without a heading they are
// the first thing to read.
type cardPart struct {
	title string
	lines [][2]string // what, and its value; or a line alone in the second
}

// cardParts gives what is known, and leaves out what is not.
func cardParts(c departure.Card) []cardPart {
	first := cardPart{}
	first.add("species", strings.TrimSpace(c.Species+" "+inBrackets(c.CommonName)))
	first.add("sex", strings.TrimSpace(string(c.Sex)+" "+inBrackets(c.SexSign)))
	first.add("line", c.Line)
	first.add("locality", c.Locality)
	first.add("clutch", c.Clutch)
	first.addDay("laid", c.Laid)
	first.addDay("hatched", c.Hatched)
	first.addDay("out of water", c.OutOfWater)
	descent := cardPart{title: "Descent"}
	descent.add("sire", forebearText(c.Sires))
	descent.add("dam", forebearText(c.Dams))
	descent.add("inbreeding", inbreedingText(c))
	kept := cardPart{title: "How it was kept"}
	kept.add("food", c.Food)
	for _, text := range c.Kept {
		kept.add("", text)
	}
	if len(kept.lines) == 0 {
		kept.add("", "nothing is recorded")
	}
	parts := []cardPart{first, descent, kept, list("The species, as it is usually kept", c.Custom)}
	stays := list("Not ready to leave on "+c.On.String(), c.Held)
	for _, text := range c.Ask {
		stays.add("", "not recorded: "+text)
	}
	parts = append(parts, stays)
	cautions := list("Cautions", c.Cautions)
	cautions.add("CITES", c.Permit)
	cautions.add("", "An animal that looks ill is for a veterinarian; local codes come first.")
	parts = append(parts, cautions)
	if c.Contact != "" {
		parts = append(parts, list("Contact", []string{c.Contact}))
	}
	return parts
}

func list(title string, lines []string) cardPart {
	p := cardPart{title: title}
	for _, text := range lines {
		p.add("", text)
	}
	return p
}

// add adds a line, unless there is nothing to say.
func (p *cardPart) add(what, value string) {
	if value != "" {
		p.lines = append(p.lines, [2]string{what, value})
	}
}

func (p *cardPart) addDay(what string, d civil.Date) {
	if d.Known() {
		p.add(what, d.String())
	}
}

func inBrackets(text string) string {
	if text == "" {
		return ""
	}
	return "(" + text + ")"
}

// forebearText gives possible parents, each with its own.
func forebearText(list []departure.Forebear) string {
	if len(list) == 0 {
		return "not known"
	}
	texts := make([]string, len(list))
	for i, f := range list {
		texts[i] = strings.TrimSpace(f.ID + " " + f.Name)
		if len(f.Sires) > 0 || len(f.Dams) > 0 {
			texts[i] += fmt.Sprintf(" (sire: %s; dam: %s)", forebearText(f.Sires), forebearText(f.Dams))
		}
	}
	return strings.Join(texts, ", or ")
}

// inbreedingText gives the coefficient and says how much it rests on.
func inbreedingText(c departure.Card) string {
	if c.Generations == 0 {
		return "not known, for no parent is recorded"
	}
	text := fmt.Sprintf("%s, with %.1f generations of ancestry known", coefficient(c.Inbreeding, c.Expected), c.Generations)
	if c.Expected {
		text += "; a mean, for a parent or ancestor is one of several"
	}
	return text
}

func cardTitle(c departure.Card) string { return strings.TrimSpace(c.ID + " " + c.Name) }

// cardText is the card to be read as it is.
func cardText(c departure.Card) string {
	var b strings.Builder
	b.WriteString(cardTitle(c) + "\n")
	for _, p := range cardParts(c) {
		if len(p.lines) == 0 {
			continue
		}
		b.WriteString("\n")
		if p.title != "" {
			b.WriteString(p.title + "\n")
		}
		for _, l := range p.lines {
			if l[0] != "" {
				l[0] += ": "
			}
			fmt.Fprintf(&b, "  %s%s\n", l[0], l[1])
		}
	}
	return b.String()
}

// cardMarkdown is the card as CommonMark.
func cardMarkdown(c departure.Card) string {
	var b strings.Builder
	fmt.Fprintf(&b, "# %s\n", inMarkdown(cardTitle(c)))
	for _, p := range cardParts(c) {
		if len(p.lines) == 0 {
			continue
		}
		if p.title != "" {
			fmt.Fprintf(&b, "\n## %s\n", inMarkdown(p.title))
		}
		b.WriteString("\n")
		for _, l := range p.lines {
			if l[0] != "" {
				l[0] = "**" + inMarkdown(l[0]) + "**: "
			}
			fmt.Fprintf(&b, "- %s%s\n", l[0], inMarkdown(l[1]))
		}
	}
	return b.String()
}

// inMarkdown writes text so that nothing in it is a mark: CommonMark lets a
// backslash stand before any sign of ASCII.
func inMarkdown(text string) string {
	var b strings.Builder
	for _, r := range text {
		if strings.ContainsRune("\\`*_{}[]<>#+!|~&", r) {
			b.WriteByte('\\')
		}
		b.WriteRune(r)
	}
	return b.String()
}
