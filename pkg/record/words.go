package record

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// String says in one line what happened, on which day and to whom.
func (e *Edit) String() string {
	n := &e.Entry
	what := n.Place
	switch {
	case n.Clutch != "":
		what = "clutch " + n.Clutch
	case n.Animal != "":
		what = "animal " + n.Animal
	case n.Pairing != "":
		what = "pairing " + n.Pairing
	}
	return fmt.Sprintf("%s, %s: %s", n.On, what, strings.Join(e.facts(), ", "))
}

// facts gives the words for what was seen or done.
func (e *Edit) facts() []string {
	n := &e.Entry
	var words []string
	say := func(is bool, format string, args ...any) {
		if is {
			words = append(words, fmt.Sprintf(format, args...))
		}
	}
	some := ""
	if n.Some {
		some = "some "
	}
	note := n.Note != "" && len(e.Animals) == 0 && e.Clutch == nil
	if k := e.Clutch; k != nil {
		say(k.Eggs > 0, "laid, %d eggs", k.Eggs)
		say(k.Eggs == 0, "laid")
	}
	say(n.Saw != "", "%sseen %s", some, n.Saw)
	say(n.Gosner > 0, "%sseen at Gosner stage %d", some, n.Gosner)
	say(n.Count.Known, "%d counted", n.Count.Value)
	say(n.Losses > 0, "%d found dead", n.Losses)
	say(n.Sold > 0, "%d sold%s", n.Sold, toWhom(n.To))
	say(n.HeldBack > 0, "%d held back %s", n.HeldBack, n.Note)
	say(n.Began != "", "%s began", n.Began)
	say(n.WeightG > 0, "weighs %s", measured(n.Weight, n.WeightG, "g"))
	say(n.LengthMM > 0, "is %s long", measured(n.Length, n.LengthMM, "mm"))
	say(n.Ate, "seen eating")
	say(n.Hold != "" && n.Hold != "lifted", "%s hold begins", n.Hold)
	say(n.Hold == "lifted", "holds lifted")
	say(n.Until.Known(), "until %s", n.Until)
	say(n.Status != "", "%s%s", n.Status, toWhom(n.To))
	say(n.MovedTo != "", "moved to %s", n.MovedTo)
	say(n.WaterC.Known, "water %s", measured(n.Water, n.WaterC.Value, "°C"))
	say(n.AirC.Known, "air %s", measured(n.Air, n.AirC.Value, "°C"))
	say(note, "%q", n.Note)
	return words
}

func toWhom(name string) string {
	if name == "" {
		return ""
	}
	return " to " + name
}

func measured(as string, value float64, unit string) string {
	if as != "" {
		return as
	}
	return strconv.FormatFloat(math.Round(value*1000)/1000, 'f', -1, 64) + " " + unit
}
