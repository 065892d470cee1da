package picture

import (
	"fmt"
	"slices"
	"strings"
)

// shortNote is how long a note is that is rather said again than looked up.
const shortNote = 60

// notesOf gives the longer lines that are said of more than one task, in the order
// in which they come first.
func notesOf(weeks []wallWeek) []string {
	var order, again []string
	times := make(map[string]int)
	for _, w := range weeks {
		for _, t := range w.Tasks {
			for line := range strings.SplitSeq(t.Note, "\n") {
				if times[line]++; times[line] == 2 {
					again = append(again, line)
				}
				if times[line] == 1 {
					order = append(order, line)
				}
			}
		}
	}
	return slices.DeleteFunc(order, func(line string) bool {
		return len(line) <= shortNote || !slices.Contains(again, line)
	})
}

// Lines gives a note line by line, with a number in place of what stands among the
// notes below.
func (w wall) Lines(note string) []string {
	lines := strings.Split(note, "\n")
	for i, line := range lines {
		if at := slices.Index(w.Notes, line); at >= 0 {
			lines[i] = fmt.Sprintf("See note %d.", at+1)
		}
	}
	return lines
}
