package main

import (
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// outsiders reads the animals of --outside.
func (f *pairsFlags) outsiders() ([]breedingplan.Outsider, error) {
	var out []breedingplan.Outsider
	for _, text := range f.outside {
		o, err := outsider(text)
		if err != nil {
			return nil, err
		}
		out = append(out, o)
	}
	return out, nil
}

var sexes = map[string]pairing.Sex{"male": pairing.Male, "female": pairing.Female, "unknown": pairing.SexUnknown}

// outsider reads an animal as key=value,key=value. No id has a comma.
func outsider(text string) (breedingplan.Outsider, error) {
	var o breedingplan.Outsider
	seen := make(map[string]bool)
	for part := range strings.SplitSeq(text, ",") {
		key, value, ok := strings.Cut(part, "=")
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		switch {
		case !ok || key == "" || value == "":
			return o, usagef("--outside %q: write key=value, as in --outside sex=female,line=Limón,sire=AC-05", text)
		case seen[key]:
			return o, usagef("--outside %q: %s stands twice", text, key)
		}
		seen[key] = true
		switch key {
		case "sex":
			sex, ok := sexes[value]
			if !ok {
				return o, usagef("--outside %q: sex %q is not male, female or unknown", text, value)
			}
			o.Sex = sex
		case "line":
			o.Line = value
		case "sire":
			o.Sire = value
		case "dam":
			o.Dam = value
		case "name":
			o.Name = value
		case "species":
			o.Species = value
		case "inbreeding":
			x, err := strconv.ParseFloat(value, 64)
			if err != nil {
				return o, usagef("--outside %q: inbreeding is a number from 0 to 1", text)
			}
			o.Inbreeding = x
		default:
			return o, usagef("--outside %q: %q is not known; the keys are sex, line, sire, dam, inbreeding, name and species", text, key)
		}
	}
	return o, nil
}
