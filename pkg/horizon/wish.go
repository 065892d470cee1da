package horizon

import "fmt"

// Wish says how far to look ahead and how a line goes on. The zero value of a number
// stands for what is usual.
type Wish struct {
	Species string  // only this one, for those who hold several; all when empty
	Years   int     // 0 is 10
	Runs    int     // 0 is 1,000
	Seed    uint64  // the same seed gives the same result
	Workers int     // goroutines; makes no difference to the result
	Goal    float64 // gene diversity to keep; 0 is 0.9
	Weight  float64 // of the inbreeding of the young, see [Future.Weight]
	// CrossEvery adds a way: lines are kept apart, and crossed by the plan in each
	// CrossEvery-th year, see [Future.CrossEvery]; 0 does not.
	CrossEvery int
	Pairings   int                // a year; 0 is what [Keeping.Pairings] says
	Lives      int                // age in years at which an animal breeds for the last time; 0 is 8
	Death      float64            // chance to die within a year
	Stop       func() bool        // true ends it, see [Future.Stop]. May be nil
	Progress   func(done, of int) // may be nil
}

// WishError is a wish that makes no sense.
type WishError struct{ Message string }

func (e *WishError) Error() string { return e.Message }

// Complete gives the wish with what is usual in the place of zeros. The error is a
// *[WishError].
func (w Wish) Complete() (Wish, error) {
	orElse(&w.Years, 10)
	orElse(&w.Runs, 1000)
	orElse(&w.Lives, 8)
	orElse(&w.Goal, 0.9)
	for _, n := range []struct {
		what      string
		value     int
		low, high int
	}{{"years", w.Years, 1, 200}, {"runs", w.Runs, 1, 1_000_000}, {"pairings", w.Pairings, 0, 100_000}, {"years from one crossing to the next", w.CrossEvery, 0, 200}, {"the greatest age", w.Lives, 1, 100}} {
		if n.value < n.low || n.value > n.high {
			return w, &WishError{fmt.Sprintf("%s: write %d to %d", n.what, n.low, n.high)}
		}
	}
	for _, x := range []struct {
		what        string
		value, high float64
	}{{"the goal", w.Goal, 1}, {"the weight of inbreeding", w.Weight, 1000}, {"the chance to die", w.Death, 0.99}} {
		if !(x.value >= 0 && x.value <= x.high) {
			return w, &WishError{fmt.Sprintf("%s: write 0 to %v", x.what, x.high)}
		}
	}
	return w, nil
}

func orElse[T int | float64](n *T, usual T) {
	if *n == 0 {
		*n = usual
	}
}
