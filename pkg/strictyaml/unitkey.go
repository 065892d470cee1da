package strictyaml

import (
	"fmt"
	"slices"
	"strings"
)

// written gives the unit of u that a keeper calls by name, in any case and with or
// without the sign of degrees; false when it is none of them.
func (u Unit) written(name string) (Conversion, bool) {
	for _, c := range u.Known {
		if strings.EqualFold(strings.TrimPrefix(c.Name, "°"), strings.TrimPrefix(name, "°")) {
			return c, true
		}
	}
	return Conversion{}, false
}

// labelled shows how a text with a number and a unit is written under the key that has no
// unit in it, or that one without what it has already; nothing when the text is no such thing.
func (u Unit) labelled(key, text string) string {
	match := quantity().FindStringSubmatch(strings.Replace(text, ",", ".", 1))
	if match == nil {
		return ""
	}
	unit, ok := u.written(match[2])
	switch {
	case !ok:
		return ""
	case unit.Name == u.Known[0].Name:
		return fmt.Sprintf("write %s_%s: %s", key, u.Base, match[1])
	}
	return fmt.Sprintf("write %s: %s %s", key, match[1], unit.Name)
}

// unitOfKey is the cure for a key that nobody knows because of the unit at its end, such as
// water_f beside water_c: the nearest key would be that of another unit, and the number
// wrong. It is empty for other keys.
func (m *Mapping) unitOfKey(i int) string {
	at := strings.LastIndexByte(m.pairs[2*i].Value, '_')
	if at < 0 {
		return ""
	}
	key, name := m.pairs[2*i].Value[:at], m.pairs[2*i].Value[at+1:]
	for _, u := range []Unit{grams, mm, degC} {
		if !slices.Contains(m.known, key) || !slices.Contains(m.known, key+"_"+u.Base) {
			continue
		}
		unit, ok := u.written(name)
		if !ok {
			return fmt.Sprintf("units known here: %s; write %s: and the number with its unit", u.names(", "), key)
		}
		number := "12.5"
		if text := m.pairs[2*i+1].Value; plainFloat(text) {
			number = text
		}
		return fmt.Sprintf("write %s: %s %s", key, number, unit.Name)
	}
	return ""
}
