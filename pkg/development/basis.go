package development

import (
	"fmt"
	"strings"
)

// Basis is what a date rests on.
type Basis struct {
	Seen     bool    // the event itself was seen
	Looks    int     // days on which this clutch was looked at
	Finished int     // the keeper's clutches that are known to have gone through the step that counts most
	Running  int     // those that were seen not to be through it yet
	Book     float64 // clutches that the profile counts as; 0 when the date does not rest on it
}

// String says it in words, such as "your 3 clutches, 1 still on its way, the book
// (counts as 4 clutches) and 2 looks".
func (b Basis) String() string {
	if b.Seen {
		return "seen"
	}
	var words []string
	if b.Finished > 0 {
		words = append(words, "your "+count(b.Finished, "clutch", "clutches"))
	}
	if b.Running > 0 {
		words = append(words, fmt.Sprintf("%d still on the way", b.Running))
	}
	switch {
	case b.Book > 0 && len(words) > 0:
		words = append(words, fmt.Sprintf("the book (counts as %g clutches)", b.Book))
	case b.Book > 0:
		words = append(words, "the book")
	}
	if b.Looks > 0 {
		words = append(words, count(b.Looks, "look", "looks"))
	}
	if n := len(words); n > 1 {
		return strings.Join(words[:n-1], ", ") + " and " + words[n-1]
	}
	return strings.Join(words, "")
}

func count(n int, one, more string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, more)
}
