// Package species holds what a species of frog needs and how long things take:
// the phases of its breeding cycle, its development from egg to sale-ready, and
// its keeping, each value with the source it was taken from.
//
// [Builtin] and [Find] give the profiles that are part of this package.
// [FromMapping] reads an entry of a keeper's file, which adapts one of them or
// brings one of the keeper's own. [Profile.Rows] lists every value with its
// unit and its source.
//
// What is not known is left out: the Source of a value that a profile does not
// have is empty, and its Known method is false. The defaults are husbandry
// custom where nobody has published better; local codes and a veterinarian
// come first.
package species

import "slices"

// Profile is what is known of one species.
type Profile struct {
	ID         string // small letters, digits and hyphens, such as "agalychnis-callidryas"
	Name       string // scientific name
	CommonName string // common English name, empty when there is none

	Cycle            []Phase // what an adult pairing goes through, in order
	Breeding         Breeding
	Development      []Step // from egg to sale-ready, in order
	Safe             Range  // °C of water and air that eggs, tadpoles and froglets may be kept at
	TransportC       Range  // °C outside at which young travel
	TadpolesPerLitre Number // most tadpoles in a litre of an ordinary tub
	Maturity         struct{ Male, Female Maturity }
	Sale             Sale
	Adult            Adult
	Food             Food
	QuarantineDays   Number // days that a new animal is kept apart
	CITES            Text   // appendix, or that none is known
	Cautions         []Text
}

// Breeding is how the species is put together and what comes of it.
type Breeding struct {
	MalesPerFemale  Range
	ClutchEggs      Percentiles // eggs of one clutch
	EggsAfterNights Percentiles // nights of rain until there are eggs
	Note            Text
}

// Maturity is the least at which an animal is bred, of one sex.
type Maturity struct {
	AgeDays  Number // days after leaving the water
	LengthMM Number // snout to vent
	WeightG  Number
	Note     Text
}

// Sale is the least at which young leave the breeder: old enough, and long or
// heavy enough, and seen eating.
type Sale struct {
	AgeDays    Number // days after leaving the water
	LengthMM   Number // snout to vent
	WeightG    Number
	SeenEating Number // times; 1 where it is not known
	Note       Text
}

// Adult is how grown animals are kept and what they become.
type Adult struct {
	DayC, NightC, BaskingC Range // °C
	HumidityPct            Range
	LengthMale             Range // mm, snout to vent
	LengthFemale           Range // mm, snout to vent
	LifeYears              Range // equal ends mean that many or more
	Tank, Group            Text
	Sexing                 Text // how the sexes are told apart
	Note                   Text
}

// Phase gives the phase of that name, and false when the species has none.
func (p *Profile) Phase(name PhaseName) (Phase, bool) {
	i := slices.IndexFunc(p.Cycle, func(ph Phase) bool { return ph.Name == name })
	if i < 0 {
		return Phase{}, false
	}
	return p.Cycle[i], true
}

// Step gives the development step of that name, and false when it is not known.
func (p *Profile) Step(name StepName) (Step, bool) {
	i := slices.IndexFunc(p.Development, func(s Step) bool { return s.Name == name })
	if i < 0 {
		return Step{}, false
	}
	return p.Development[i], true
}

// Clone gives a copy of p that shares nothing with it.
func (p *Profile) Clone() *Profile {
	c := *p
	c.Cycle = slices.Clone(p.Cycle)
	c.Development = slices.Clone(p.Development)
	for i := range c.Development {
		c.Development[i].Law.At = slices.Clone(c.Development[i].Law.At)
	}
	c.Cautions = slices.Clone(p.Cautions)
	return &c
}
