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
	step     int          // place in the stretch of the step that the event ends
	expected Distribution // days from the begin of the stretch
	chance   float64      // of this or something farther out
	saw      string
}

// doubt says in one line what is unlikely about a stretch that begins with the
// event from. events are the ends of its steps, chance that of all that was
// seen.
func (s stretch) doubt(from Stage, events []Stage, chance float64) string {
	sums := make([]Distribution, len(s.steps))
	sum := Point(0)
	for i, step := range s.steps {
		sum = sum.Plus(step)
		sums[i] = sum
	}
	return s.bounds.doubt(from, events, sums, "the profile expects", chance)
}

// doubt is the same for events that were expected after sums days; who says
// who expected them.
func (b bounds) doubt(from Stage, events []Stage, sums []Distribution, who string, chance float64) string {
	odd := b.oddest(sums)
	text := fmt.Sprintf("%v %s %v, where %s %d to %s (10th to 90th percentile): "+
		"what was seen has a chance %s, so the step lengths, the temperature or a date is in doubt",
		events[odd.step], odd.saw, from, who, odd.expected.Quantile(0.1), inDays(odd.expected.Quantile(0.9)), percent(chance))
	switch {
	case chance >= impossible:
		return text
	case !b.closed:
		return text + ", and the dates that follow are rough"
	case len(b.lo) > 1:
		return text + ", and the dates between are rough"
	}
	return text
}

// oddest finds what was seen farthest out.
func (b bounds) oddest(sums []Distribution) oddity {
	odd := oddity{chance: 2}
	for i, sum := range sums {
		if b.closed && i == len(sums)-1 {
			if c := 2 * min(sum.CDF(b.end+offByOne), 1-sum.CDF(b.end-offByOne-1)); c <= odd.chance {
				odd = oddity{i, sum, c, "came " + inDays(b.end) + " after"}
			}
			break
		}
		if c := 1 - sum.CDF(b.lo[i]-1); b.lo[i] > 0 && c < odd.chance {
			odd = oddity{i, sum, c, "did not come within " + inDays(b.lo[i]-1) + " of"}
		}
		if c := sum.CDF(b.hi[i]); b.hi[i] != never && c <= odd.chance {
			odd = oddity{i, sum, c, "came within " + inDays(b.hi[i]) + " of"}
		}
	}
	return odd
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
