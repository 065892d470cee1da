package strictyaml

import "strings"

// Nearest gives the candidate that is most like name, for "did you mean"; empty
// when none is near. Near is at most two edits (Levenshtein 1966, without
// regard to case) and fewer than half the letters; of equals the first one wins.
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

// distance is the edit distance of a and b; limit or more is given as limit.
func distance(a, b []rune, limit int) int {
	if len(a)-len(b) >= limit || len(b)-len(a) >= limit {
		return limit
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i, ra := range a {
		diagonal := row[0]
		row[0] = i + 1
		for j, rb := range b {
			cost := diagonal
			if ra != rb {
				cost = 1 + min(diagonal, row[j], row[j+1])
			}
			diagonal = row[j+1]
			row[j+1] = cost
		}
	}
	return min(row[len(b)], limit)
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
	return list + strings.Join(known, ", ")
}
