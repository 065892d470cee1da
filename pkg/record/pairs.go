package record

import (
	"strconv"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
)

// item is an entry of a list as it is written: keys with values in YAML.
type item []pair

type pair struct{ key, value string }

func (it *item) add(key, value string) {
	if value != "" {
		*it = append(*it, pair{key, value})
	}
}

func (it *item) text(key, value string) {
	if value != "" {
		it.add(key, scalar(value))
	}
}

func (it *item) count(key string, n int) {
	if n != 0 {
		it.add(key, strconv.Itoa(n))
	}
}

func (it *item) date(key string, d civil.Date) {
	if d.Known() {
		it.add(key, d.String())
	}
}

func (it *item) yes(key string, is bool) {
	if is {
		it.add(key, "true")
	}
}

func (it *item) ids(key string, ids []string) {
	switch len(ids) {
	case 0:
	case 1:
		it.text(key, ids[0])
	default:
		quoted := make([]string, len(ids))
		for i, id := range ids {
			quoted[i] = scalar(id)
		}
		it.add(key, "["+strings.Join(quoted, ", ")+"]")
	}
}

// measure adds a value in the unit of the key, or as it was measured.
func (it *item) measure(key, unit string, value float64, as string) {
	if as != "" {
		it.text(key, as)
		return
	}
	it.add(key+"_"+unit, strconv.FormatFloat(value, 'f', -1, 64))
}

func entryItem(e *Entry) item {
	var it item
	it.date("on", e.On)
	it.text("clutch", e.Clutch)
	it.text("animal", e.Animal)
	it.text("pairing", e.Pairing)
	it.text("place", e.Place)
	it.text("saw", e.Saw)
	it.count("gosner", e.Gosner)
	if e.Count.Known {
		it.add("count", strconv.Itoa(e.Count.Value))
	}
	it.yes("some", e.Some)
	it.count("losses", e.Losses)
	it.count("sold", e.Sold)
	it.count("held_back", e.HeldBack)
	it.text("began", string(e.Began))
	if e.WeightG != 0 {
		it.measure("weight", "g", e.WeightG, e.Weight)
	}
	if e.LengthMM != 0 {
		it.measure("length", "mm", e.LengthMM, e.Length)
	}
	it.yes("ate", e.Ate)
	it.text("hold", string(e.Hold))
	it.date("until", e.Until)
	it.text("status", string(e.Status))
	it.text("to", e.To)
	it.text("moved_to", e.MovedTo)
	if e.WaterC.Known {
		it.measure("water", "c", e.WaterC.Value, e.Water)
	}
	if e.AirC.Known {
		it.measure("air", "c", e.AirC.Value, e.Air)
	}
	it.text("note", e.Note)
	return it
}

func clutchItem(k *collection.Clutch) item {
	var it item
	it.text("id", k.ID)
	it.date("laid", k.Laid)
	it.text("pairing", k.Pairing)
	it.ids("dam", k.Dams)
	it.ids("sire", k.Sires)
	if k.DamMix == collection.Several {
		it.text("dam_mix", string(k.DamMix))
	}
	if k.SireMix == collection.Several {
		it.text("sire_mix", string(k.SireMix))
	}
	it.text("species", k.Species)
	it.count("eggs", k.Eggs)
	it.text("line", k.Line)
	it.text("place", k.Place)
	it.text("note", k.Note)
	return it
}

func animalItem(a *collection.Animal) item {
	var it item
	it.text("id", a.ID)
	it.text("name", a.Name)
	if a.Sex != collection.UnknownSex {
		it.text("sex", string(a.Sex))
	}
	it.text("clutch", a.Clutch)
	it.text("place", a.Place)
	it.text("note", a.Note)
	return it
}

// stubItem is what of an animal counts for its young and for their dates.
func stubItem(a *collection.Animal) item {
	var it item
	it.text("id", a.ID)
	it.text("species", a.Species)
	it.text("sex", string(a.Sex))
	it.text("line", a.Line)
	it.text("locality", a.Locality)
	it.date("hatched", a.Hatched)
	it.date("out_of_water", a.OutOfWater)
	it.date("acquired", a.Acquired)
	it.date("died", a.Died)
	it.date("left", a.Left)
	return it
}
