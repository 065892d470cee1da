package departure

import (
	"fmt"
	"slices"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/development"
	"github.com/spawnwright/spawnwright/pkg/parcel"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// Card is what goes with an animal, or with the young of a clutch, when it
// leaves: who its forebears are, what is known of its inbreeding, how it was
// kept. It names no person but for the contact line that the file gives.
type Card struct {
	ID         string         `json:"id"`
	Name       string         `json:"name,omitempty"`
	Clutch     string         `json:"clutch,omitempty"` // it came from
	Species    string         `json:"species"`          // scientific name
	CommonName string         `json:"common_name,omitempty"`
	Line       string         `json:"line,omitempty"`
	Locality   string         `json:"locality,omitempty"`
	Sex        collection.Sex `json:"sex"`
	SexSign    string         `json:"sex_sign,omitempty"` // how the sex is known
	Laid       civil.Date     `json:"laid,omitempty"`
	Hatched    civil.Date     `json:"hatched,omitempty"`
	OutOfWater civil.Date     `json:"out_of_water,omitempty"`
	Sires      []Forebear     `json:"sires"` // one of these; none when not known
	Dams       []Forebear     `json:"dams"`
	// Inbreeding is the coefficient, 0 to 1, or the mean over possible parents
	// when it is Expected. It counts from the founders: with less ancestry known
	// the true one may be higher.
	Inbreeding float64 `json:"inbreeding"`
	Expected   bool    `json:"expected"`
	// Generations of ancestry that are known, in equivalent complete generations
	// (Maignel, Boichard and Verrier 1996).
	Generations float64    `json:"known_generations"`
	Food        string     `json:"food,omitempty"`
	Kept        []string   `json:"kept"`           // how it was kept, as far as it is recorded
	Custom      []string   `json:"custom"`         // how the species is kept and fed, with sources
	Held        []string   `json:"held,omitempty"` // why it should not leave yet
	Ask         []string   `json:"ask,omitempty"`
	Permit      string     `json:"permit"`
	Cautions    []string   `json:"cautions"`
	Contact     string     `json:"contact,omitempty"`
	On          civil.Date `json:"on"` // day of the card
}

// Forebear is a possible parent or grandparent.
type Forebear struct {
	ID    string     `json:"id"`
	Name  string     `json:"name,omitempty"`
	Sires []Forebear `json:"sires,omitempty"` // of a parent
	Dams  []Forebear `json:"dams,omitempty"`
}

// Card gives the card of an animal or of the young of a clutch, as far as is
// known on a day. The error is a *[collection.UnknownError].
func (r *Register) Card(id string, on civil.Date) (Card, error) {
	if a, ok := r.Collection.Animal(id); ok {
		return r.animalCard(a, on), nil
	}
	if c, ok := r.Collection.Clutch(id); ok {
		return r.clutchCard(c, on), nil
	}
	return Card{}, r.Collection.Unknown("animal or clutch", id)
}

func (r *Register) animalCard(a *collection.Animal, on civil.Date) Card {
	i := r.Ancestry.MustNumber(a.ID)
	d := r.animalDeparture(i, on, parcel.Forecast{})
	card := r.card(a.Species, a.Sires, a.Dams, d, on)
	card.ID, card.Name, card.Clutch = a.ID, a.Name, a.Clutch
	card.Line, card.Locality = a.Line, a.Locality
	card.Sex, card.SexSign = a.Sex, a.SexSign
	card.Hatched, card.OutOfWater, card.Food = a.Hatched, a.OutOfWater, a.Food
	p := r.Ancestry.Pedigree
	card.Inbreeding, card.Expected, card.Generations = p.Inbreeding(i), p.Uncertain(i), p.CompleteGenerations(i)
	if c, ok := r.Collection.Clutch(a.Clutch); ok {
		card.Laid = c.Laid
		if card.Food == "" {
			card.Food = c.Food
		}
	}
	card.recorded(r, a.ID, on)
	return card
}

func (r *Register) clutchCard(c *collection.Clutch, on civil.Date) Card {
	d := r.clutchDeparture(c, on, parcel.Forecast{})
	card := r.card(c.Species, c.Sires, c.Dams, d, on)
	card.ID, card.Line, card.Sex, card.Food = c.ID, c.Line, collection.UnknownSex, c.Food
	card.Laid, card.Hatched, card.OutOfWater = c.Laid, r.seenOn(c.ID, development.Hatched, on), d.Sale.OutOfWater
	one := 1
	y := r.withYoung([]Young{{ID: c.ID, Clutch: true, Living: &one}}, 1)
	young := y.candidates[0]
	card.Inbreeding, card.Expected, card.Generations = y.pedigree.Inbreeding(young), y.pedigree.Uncertain(young), y.pedigree.CompleteGenerations(young)
	card.recorded(r, c.ID, on)
	return card
}

// seenOn gives the day on which all of a clutch were seen to reach a stage.
func (r *Register) seenOn(clutch string, stage development.Stage, on civil.Date) civil.Date {
	for _, l := range r.Rearing.Looks(clutch, on) {
		if l.Stage == stage && l.Kind == development.Reached {
			return l.On
		}
	}
	return 0
}

// card has what an animal and a clutch have in common.
func (r *Register) card(kind string, sires, dams []string, d Young, on civil.Date) Card {
	p := r.Collection.MustProfile(kind)
	card := Card{
		Species: p.Name, CommonName: p.CommonName,
		Sires: r.forebears(sires, 1), Dams: r.forebears(dams, 1),
		Kept: []string{}, Custom: append([]string{}, custom(p)...), Held: d.Held, Ask: d.Ask, Permit: d.Permit,
		Cautions: []string{}, Contact: r.Collection.Card.Contact, On: on,
	}
	if p.QuarantineDays.Known() {
		card.Cautions = append(card.Cautions, fmt.Sprintf("keep it apart from other animals for at least %g days, and serve it last (%s)", p.QuarantineDays.Value, p.QuarantineDays.Source))
	}
	for _, c := range p.Cautions {
		card.Cautions = append(card.Cautions, c.Value)
	}
	return card
}

// forebears gives possible parents with theirs, more generations up.
func (r *Register) forebears(ids []string, more int) []Forebear {
	out := make([]Forebear, 0, len(ids))
	for _, id := range ids {
		a, ok := r.Collection.Animal(id)
		if !ok {
			continue
		}
		f := Forebear{ID: a.ID, Name: a.Name}
		if more > 0 {
			f.Sires, f.Dams = r.forebears(a.Sires, more-1), r.forebears(a.Dams, more-1)
		}
		out = append(out, f)
	}
	return out
}

// recorded adds how an animal or a clutch was kept: the last temperatures that
// were measured with it or at its place.
func (c *Card) recorded(r *Register, id string, on civil.Date) {
	entries := r.Collection.DiaryOf(id)
	if place := r.Collection.PlaceOf(id, on); place != "" {
		entries = slices.Concat(r.Collection.DiaryAt(place), entries)
	}
	slices.SortStableFunc(entries, func(a, b *collection.Entry) int { return a.On.Sub(b.On) })
	var air, water string
	for _, e := range entries {
		if e.On <= on && e.AirC.Known {
			air = fmt.Sprintf("air at %g °C, measured on %s", e.AirC.Value, e.On)
		}
		if e.On <= on && e.WaterC.Known {
			water = fmt.Sprintf("water at %g °C, measured on %s", e.WaterC.Value, e.On)
		}
	}
	for _, text := range []string{air, water} {
		if text != "" {
			c.Kept = append(c.Kept, text)
		}
	}
}

// custom is how animals of a species are fed and grown ones are kept.
func custom(p *species.Profile) (lines []string) {
	a := p.Adult
	says := func(what string, t species.Text) {
		if t.Known() {
			lines = append(lines, fmt.Sprintf("%s: %s (%s)", what, t.Value, t.Source))
		}
	}
	add := func(what string, v species.Range, unit string) {
		switch {
		case !v.Known():
		case v.Low == v.High:
			lines = append(lines, fmt.Sprintf("%s: %g%s (%s)", what, v.Low, unit, v.Source))
		default:
			lines = append(lines, fmt.Sprintf("%s: %g to %g%s (%s)", what, v.Low, v.High, unit, v.Source))
		}
	}
	add("grown animals by day", a.DayC, " °C")
	add("at night", a.NightC, " °C")
	add("humidity", a.HumidityPct, " %")
	says("tank", a.Tank)
	says("food of froglets", p.Food.Froglet.What)
	says("food of grown animals", p.Food.Adult.What)
	return lines
}
