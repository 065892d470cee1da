package civil

import (
	"fmt"
	"strconv"
	"strings"
)

// cureFor is what to write instead of a text that is no date: the days that it can be,
// with the year first or last, or the form of a date.
func cureFor(s string) string {
	at := strings.IndexAny(s, "-./")
	if at < 0 {
		return wantISO
	}
	parts := strings.Split(s, s[at:at+1])
	if len(parts) != 3 {
		return wantISO
	}
	var n [3]int
	for i, part := range parts {
		v, err := strconv.ParseUint(part, 10, 16)
		if err != nil {
			return wantISO
		}
		n[i] = int(v)
	}
	var days []string
	add := func(year, month, day int) {
		if d, ok := of(year, month, day); ok && (len(days) == 0 || days[0] != d.String()) {
			days = append(days, d.String())
		}
	}
	switch {
	case len(parts[0]) == 4:
		add(n[0], n[1], n[2])
	case len(parts[2]) == 4:
		add(n[2], n[1], n[0])
		add(n[2], n[0], n[1])
	}
	switch len(days) {
	case 1:
		return "write " + days[0]
	case 2:
		return fmt.Sprintf("write %s or %s, whichever is meant", days[0], days[1])
	}
	return wantISO
}
