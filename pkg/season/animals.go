package season

import (
	"fmt"
	"slices"
)

// cyclesOf gives for each animal the pairings that it is in, ascending, and on
// which days; and the animals in the order in which the pairings name them.
func cyclesOf(jobs []*job) (names []string, cycles map[string][]hold) {
	cycles = map[string][]hold{}
	for i, j := range jobs {
		whole := hold{i, j.whole()}
		if whole.last < whole.first {
			continue
		}
		for _, a := range distinct(j.Animals) {
			if cycles[a] == nil {
				names = append(names, a)
			}
			cycles[a] = append(cycles[a], whole)
		}
	}
	return names, cycles
}

// distinct gives the names in their order, each once.
func distinct(names []string) []string {
	var once []string
	for _, name := range names {
		if !slices.Contains(once, name) {
			once = append(once, name)
		}
	}
	return once
}

// both is two pairings, the one given first first.
type both struct{ a, b int }

// animals gives the conflicts over animals that are in two cycles at once, one
// for each two pairings.
func (y *yard) animals() []Conflict {
	shared := map[both][]string{}
	var order []both
	for _, animal := range y.animalNames {
		for _, two := range meetings(y.cycles[animal], y.today) {
			if shared[two] == nil {
				order = append(order, two)
			}
			shared[two] = append(shared[two], animal)
		}
	}
	var conflicts []Conflict
	for _, two := range order {
		conflicts = append(conflicts, y.twice(two, shared[two]))
	}
	return conflicts
}

// meetings gives each two cycles of an animal that share a day from first on.
func meetings(cycles []hold, first int) []both {
	var found []both
	for i, a := range cycles {
		for _, b := range cycles[i+1:] {
			if meet := a.meet(b.run); meet.last >= max(meet.first, first) {
				found = append(found, both{a.pairing, b.pairing})
			}
		}
	}
	return found
}

// meet gives the days that two runs share; it ends before it begins when there
// are none.
func (r run) meet(s run) run { return run{max(r.first, s.first), min(r.last, s.last)} }

func (y *yard) twice(two both, animals []string) Conflict {
	a, b := y.jobs[two.a], y.jobs[two.b]
	meet := a.whole().meet(b.whole()).meet(run{y.today, far})
	verb := "is"
	if len(animals) > 1 {
		verb = "are"
	}
	message := fmt.Sprintf("%s %s in %s and %s at once on %s", listed(animals), verb, a.ID, b.ID, meet.span())
	if move := y.cure([]int{two.a, two.b}); move != "" {
		message += "; " + move
	}
	return Conflict{
		Kind: AnimalTwice, Pairings: []string{a.ID, b.ID}, Animals: animals,
		Days: meet.span(), Message: message,
	}
}
