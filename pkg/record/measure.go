package record

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Forms are put together when one is first asked for: most commands need none.
var (
	measure      = form(`^(-?[0-9]{1,15}(?:\.[0-9]{1,15})?) ?(\p{L}+|°[CF])$`)
	unlabelled   = form(`^-?[0-9]+([.,][0-9]+)?$`)
	commaMeasure = form(`^-?[0-9]+,[0-9]+ ?[^0-9,.\s]{1,9}$`)
)

func form(of string) func() *regexp.Regexp {
	return sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(of) })
}

// parse reads a number with its unit, such as 12.4g or 0.44 oz. It gives the
// value in the base unit and, when another one was written, what is to stand in
// the file.
func parse(what, text string, u strictyaml.Unit, example string) (value float64, as string, err error) {
	names := make([]string, len(u.Known))
	for i, c := range u.Known {
		names[i] = c.Name
	}
	m := measure().FindStringSubmatch(text)
	switch {
	case m != nil:
	case unlabelled().MatchString(text):
		number := strings.Replace(text, ",", ".", 1)
		cure := "write its unit: " + number + u.Known[0].Name
		if u.Base == "c" { // both scales are in use, and 50 is a night in one and a death in the other
			cure = "write its unit: " + number + "C or " + number + "F"
		}
		return 0, "", refuse(cure, "the %s %s has no unit", what, text)
	case commaMeasure().MatchString(text):
		return 0, "", refuse("write a point: "+strings.Replace(text, ",", ".", 1), "the %s is %q", what, text)
	default:
		return 0, "", refuse("write a number and its unit, such as "+example, "the %s is %q", what, text)
	}
	for i, c := range u.Known {
		if c.Name != m[2] {
			continue
		}
		written, err := strconv.ParseFloat(m[1], 64)
		if i == 0 || c.Times == u.Known[0].Times && c.Per == u.Known[0].Per {
			return written, "", err
		}
		return (written - c.Zero) * c.Times / c.Per, m[1] + " " + m[2], err
	}
	return 0, "", refuse("units known here: "+strings.Join(names, ", "), "the %s has the unknown unit %q", what, m[2])
}
