package spreadsheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// The limits of the collection file.
const (
	maxID     = 64
	maxPhrase = 200
)

// rows takes the animals.
func (c *converter) rows() {
	first := make(map[string]cell)
	for _, r := range c.table[1:] {
		if blank(r) {
			continue
		}
		c.result.Rows++
		a := &animal{row: r, values: make(map[string]string)}
		for i, at := range r.cells {
			switch {
			case i >= len(c.columns):
				if at.text != "" {
					c.warn(at, fmt.Sprintf("%q stands behind the last column", shown(at.text)), "give it a header, or look for a delimiter too many")
				}
			case c.columns[i].key != "":
				c.take(a, c.columns[i], at)
			}
		}
		if !c.known(a, first) {
			continue
		}
		c.animals = append(c.animals, a)
	}
}

func blank(r row) bool {
	for _, c := range r.cells {
		if c.text != "" {
			return false
		}
	}
	return true
}

// known reports whether a row has what an animal needs.
func (c *converter) known(a *animal, first map[string]cell) bool {
	at := cell{line: a.row.line, column: a.row.column}
	if before, twice := first[a.id]; a.id != "" && twice {
		c.warn(at, fmt.Sprintf("id %q stands twice, first in line %d: the row is left out", a.id, before.line), "give one of them another id")
		return false
	}
	if a.id == "" {
		c.warn(at, "there is no id: the row is left out", "write one")
		return false
	}
	if a.values["species"] == "" {
		id, ok := c.speciesOf(c.Species)
		if !ok || a.alien {
			c.warn(at, fmt.Sprintf("the species of %q is not known: the row is left out", a.id), "write it, or say --species for all rows without one")
			return false
		}
		a.values["species"] = id
	}
	first[a.id] = at
	return true
}

// take takes one cell.
func (c *converter) take(a *animal, col column, at cell) {
	if (at.text == "" || col.key != "id" && col.key != "name" && empty(at.text)) && col.key != "species" {
		return
	}
	var why, cure string
	switch {
	case formula(at.text):
		why, cure = "is a formula", "save the values of the table, not its formulae"
	case hasControl(at.text):
		why, cure = "has a character that is not seen", "remove it"
	case strings.Contains(at.text, "\n") && col.key != "note":
		why, cure = "has more than one line", "write it in one line"
	default:
		why, cure = c.value(a, col, at)
	}
	if why != "" {
		c.warn(at, fmt.Sprintf("%s %q %s: it is left out", col.name, shown(at.text), why), cure)
	}
}

// value enters the value of a cell, or says what is wrong with it.
func (c *converter) value(a *animal, col column, at cell) (why, cure string) {
	switch col.key {
	case "id":
		if utf8.RuneCountInString(at.text) > maxID || strings.Contains(at.text, ",") {
			return "is no id", "write a short text without a comma"
		}
		a.id = at.text
		a.values["id"] = quoted(at.text)
	case "species":
		return c.species(a, at)
	case "sex":
		sex, ok := sexes[strings.ToLower(at.text)]
		if !ok {
			return "is no sex", "write male, female or unknown"
		}
		a.sex = sex
		a.values["sex"] = sex
	case "hatched", "out_of_water", "acquired", "died", "left":
		d, why, cure := dateOf(at.text, c.Dates)
		if why != "" {
			return why, cure
		}
		a.values[col.key] = d.String()
	case "weight", "length":
		text, why, cure := quantityOf(col.key, at.text, col.unit)
		if why != "" {
			return why, cure
		}
		a.values[col.key] = text
	case "sire":
		a.sire = at
	case "dam":
		a.dam = at
	case "note":
		a.values["note"] = quoted(at.text)
	default:
		if utf8.RuneCountInString(at.text) > maxPhrase {
			return fmt.Sprintf("has more than %d characters", maxPhrase), "shorten it"
		}
		if col.key == "name" {
			a.name = at.text
		}
		a.values[col.key] = quoted(at.text)
	}
	return "", ""
}

// species enters the species of a row. One without a built-in profile becomes
// one of the keeper's own when it is written as a scientific name and is like
// no other.
func (c *converter) species(a *animal, at cell) (why, cure string) {
	if empty(at.text) {
		return "", ""
	}
	id, ok := c.speciesOf(at.text)
	if ok {
		a.values["species"] = id
		return "", ""
	}
	a.alien = true
	if cure := strictyaml.DidYouMean(at.text, speciesNames()); cure != "" {
		return "is no species that is built in", cure
	}
	if id = idOf(at.text); id == "" {
		return "is no species that is built in", "write its scientific name, or one that `spawnwright species list` shows"
	}
	if c.own[id] == "" {
		c.own[id] = at.text
		c.warn(at, fmt.Sprintf("%q is not built in: an empty profile %s is written", shown(at.text), id), "fill it in under species:, or correct the name")
	}
	a.alien = false
	a.values["species"] = id
	return "", ""
}

func shown(text string) string {
	if runes := []rune(text); len(runes) > 40 {
		return string(runes[:39]) + "…"
	}
	return text
}
