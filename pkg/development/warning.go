package development

import "fmt"

// Warning is a doubt about an outlook, to be shown with its dates.
type Warning struct {
	Text string // one line, without a full stop
	// Looks are the places in [Clutch.Looks] of those that it is about, the one
	// in doubt first. There are none where it is about something else.
	Looks []int
	// Reading is the temperature that it is about, as it was given; its day is
	// not known where it is about none.
	Reading Reading
	// Count is the head-count that it is about, which grew; its day is not known
	// where it is about none.
	Count Count
}

// warnings collects them.
type warnings []Warning

// warn adds one about looks, of which those below 0 do not stand in a list.
func (w *warnings) warn(looks []int, format string, args ...any) {
	next := Warning{Text: fmt.Sprintf(format, args...)}
	for _, at := range looks {
		if at >= 0 {
			next.Looks = append(next.Looks, at)
		}
	}
	*w = append(*w, next)
}
