package strictyaml

import (
	"slices"
	"strings"
)

// Nearest gives the candidate that is most like name, for "did you mean"; empty
// when none is near. Near is at most two edits and fewer than half the letters,
// without regard to case; an edit is a letter too many, too few or wrong, or two
// that changed places (Damerau 1964). Of equals the first one wins.
// It costs len(name) times the length of all candidates.
func Nearest(name string, candidates []string) string {
	lower := []rune(strings.ToLower(name))
	best, bestDistance := "", 3
	for _, c := range candidates {
		d := distance(lower, []rune(strings.ToLower(c)), bestDistance)
		if d < bestDistance && 2*d < max(len(lower), 2) {
			best, bestDistance = c, d
		}
	}
	return best
}

// distance is the number of edits between a and b, no letter being edited
// twice; limit or more is given as limit.
func distance(a, b []rune, limit int) int {
	if len(a)-len(b) >= limit || len(b)-len(a) >= limit {
		return limit
	}
	var before []int // the row before the last one
	last := make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row := make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			if a[i] == b[j] {
				row[j+1] = last[j]
				continue
			}
			row[j+1] = 1 + min(last[j], last[j+1], row[j])
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], 1+before[j-1])
			}
		}
		before, last = last, row
	}
	return min(last[len(b)], limit)
}

// DidYouMean gives `did you mean "x"?` for the nearest candidate, and nothing
// when none is near.
func DidYouMean(name string, candidates []string) string {
	if c := Nearest(name, candidates); c != "" {
		return `did you mean "` + c + `"?`
	}
	return ""
}

func cureForName(name string, known []string, list string) string {
	if cure := DidYouMean(name, known); cure != "" {
		return cure
	}
	var once []string
	for _, name := range known {
		if !slices.Contains(once, name) { // a key may be asked for twice
			once = append(once, name)
		}
	}
	return list + strings.Join(once, ", ")
}
