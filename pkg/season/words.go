package season

import (
	"fmt"
	"strings"
)

// count puts a number before a noun: "1 day", "2 days".
func count(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// mostNamed is how many pairings or animals a message names.
const mostNamed = 8

// listed joins names for a message: "A, B and C".
func listed(names []string) string {
	if more := len(names) - mostNamed; more > 0 {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:mostNamed], ", "), more)
	}
	if n := len(names); n > 1 {
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
	return strings.Join(names, "")
}
