package development

import "fmt"

const (
	// doubtful is the chance of what was seen below which the model is
	// doubted aloud. A rarer thing than 3 in 100 says more about the step
	// lengths, the temperature or a date than about the frogs.
	doubtful = 0.03

	// impossible is the chance below which the model is no longer followed
	// to the letter: the steps are widened.
	impossible = 1e-6

	// offByOne is by how many days a recorded length may be wrong without
	// anybody's fault: frogs spawn by night, and hatchlings are found in the
	// morning. It keeps steps of two or three days out of needless doubt.
	offByOne = 1
)

// An oddity is something that was seen of one event, and how it compares with
// what was expected.
type oddity struct {
	stage    Stage
	expected Distribution // days from the begin of the stretch
	chance   float64      // of this or something farther out
	saw      string
	looks    []int
}

// doubt says in one line what is unlikely about a stretch that begins with the
// event from; chance is that of all that was seen of it, and who says who expected
// something else.
func (o oddity) doubt(from Stage, who string, chance float64, then string) string {
	text := fmt.Sprintf("%v %s %v, where %s %d to %s (10th to 90th percentile): "+
		"what was seen has a chance %s, so the step lengths, the temperature or a date is in doubt",
		o.stage, o.saw, from, who, o.expected.Quantile(0.1), inDays(o.expected.Quantile(0.9)), percent(chance))
	if chance < impossible {
		text += then
	}
	return text
}

// oddest finds what was seen farthest out in the steps from first on, whose ends
// were expected sums days after day.
func (ev *evidence) oddest(first, day int, b bounds, sums []Distribution) oddity {
	odd := oddity{chance: 2}
	for i, sum := range sums {
		stage, step := links[first+i].end, first+i
		if b.closed && i == len(sums)-1 {
			if c := bothTails(sum, b.end-day); c <= odd.chance {
				odd = oddity{stage, sum, c, "came " + inDays(b.end-day) + " after", []int{ev.dayBy[step]}}
			}
			break
		}
		if lo := b.lo[i] - day; b.lo[i] != ever && lo > 0 {
			if c := 1 - sum.CDF(lo-1); c < odd.chance {
				odd = oddity{stage, sum, c, "did not come within " + inDays(lo-1) + " of", []int{ev.loBy[step]}}
			}
		}
		if hi := b.hi[i] - day; b.hi[i] != never {
			if c := sum.CDF(hi); c <= odd.chance {
				odd = oddity{stage, sum, c, "came within " + inDays(hi) + " of", []int{ev.hiBy[step]}}
			}
		}
	}
	return odd
}

// bothTails is twice the chance of the smaller tail from a day on, or of what is
// within offByOne of it.
func bothTails(d Distribution, day int) float64 {
	return min(1, 2*min(d.CDF(day+offByOne), 1-d.CDF(day-offByOne-1)))
}

// odd compares what was seen of an event within a step with the days after day
// that were expected.
func (v interval) odd(stage Stage, day int, expected Distribution) oddity {
	lo, hi := v.lo-day, v.hi-day
	late, early := oddity{
		stage: stage, expected: expected, chance: 1 - expected.CDF(lo-1),
		saw: "did not come within " + inDays(lo-1) + " of", looks: []int{v.loBy},
	}, oddity{
		stage: stage, expected: expected, chance: expected.CDF(hi),
		saw: "came within " + inDays(hi) + " of", looks: []int{v.hiBy},
	}
	switch {
	case lo == hi:
		early.chance, early.saw = bothTails(expected, lo), "came "+inDays(lo)+" after"
		return early
	case late.chance < early.chance:
		return late
	}
	return early
}

func inDays(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// percent gives a small chance in words.
func percent(chance float64) string {
	if chance < 0.001 {
		return "under 0.1 %"
	}
	return fmt.Sprintf("of %.1f %%", chance*100)
}
