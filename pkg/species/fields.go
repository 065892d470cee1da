package species

// each calls visit with the fields of every section, in reading order.
func (p *Profile) each(visit func(section string, fields []field)) {
	for i := range p.Cycle {
		visit("cycle: "+string(p.Cycle[i].Name), p.Cycle[i].fields())
	}
	visit("breeding", p.Breeding.fields())
	for i := range p.Development {
		visit("development: "+string(p.Development[i].Name), p.Development[i].fields())
	}
	visit("", p.youngFields())
	visit("maturity: male", p.Maturity.Male.fields())
	visit("maturity: female", p.Maturity.Female.fields())
	visit("sale", p.Sale.fields())
	visit("adult", p.Adult.fields())
	visit("food: tadpole", p.Food.Tadpole.fields())
	visit("food: froglet", p.Food.Froglet.fields())
	visit("food: adult", p.Food.Adult.fields())
	visit("", p.keepFields())
}

func (p *Profile) youngFields() []field {
	return []field{
		{"safe_c", rangeValue{to: &p.Safe, measure: celsius}},
		{"transport_c", rangeValue{to: &p.TransportC, measure: celsius}},
		{"tadpoles_per_litre", numberValue{&p.TadpolesPerLitre, perLitre}},
	}
}

func (ph *Phase) fields() []field {
	unit := " days"
	if ph.Name == Rain {
		unit = nights.unit
	}
	return []field{
		{"days", daysValue{&ph.Days, unit}},
		{"place", placeValue{&ph.Place}},
		{"day_c", rangeValue{to: &ph.DayC, measure: celsius}},
		{"night_c", rangeValue{to: &ph.NightC, measure: celsius}},
		{"humidity_pct", rangeValue{to: &ph.HumidityPct, measure: percent}},
		{"light_h", numberValue{&ph.LightH, hours}},
		{"minutes_a_day", numberValue{&ph.MinutesADay, minutes}},
		{"feeding", textValue{&ph.Feeding}},
		{"note", textValue{&ph.Note}},
	}
}

func (b *Breeding) fields() []field {
	return []field{
		{"males_per_female", rangeValue{to: &b.MalesPerFemale, measure: males}},
		{"clutch_eggs", percentilesValue{&b.ClutchEggs, eggs}},
		{"eggs_after_nights", percentilesValue{&b.EggsAfterNights, nights}},
		{"note", textValue{&b.Note}},
	}
}

func (s *Step) fields() []field {
	return append([]field{
		{"days", percentilesValue{&s.Days, stepDays}},
		{"at_c", rangeValue{to: &s.AtC, measure: celsius}},
		{"law", lawValue{&s.Law}},
		{"covers_c", rangeValue{to: &s.CoversC, measure: celsius}},
		{"minutes_a_day", numberValue{&s.MinutesADay, minutes}},
		{"survival", shareValue{&s.Survival}},
		{"stall", shareValue{&s.Stall}},
		{"note", textValue{&s.Note}},
	}, s.own()...)
}

// own are the fields that only this step has.
func (s *Step) own() []field {
	switch s.Name {
	case Egg:
		return []field{{"hatch_gosner", rangeValue{to: &s.HatchGosner, measure: gosner}}}
	case Tadpole:
		return []field{
			{"siblings", shareValue{&s.Siblings}},
			{"hind_legs_pct", percentilesValue{&s.HindLegsPct, partOfStep}},
			{"toes_pct", percentilesValue{&s.ToesPct, partOfStep}},
		}
	case GrowOut:
		return []field{{"eating_days", percentilesValue{&s.EatingDays, stepDays}}}
	}
	return nil
}

func (m *Maturity) fields() []field {
	return []field{
		{"age_days", numberValue{&m.AgeDays, ageDays}},
		{"length_mm", numberValue{&m.LengthMM, lengthMM}},
		{"weight_g", numberValue{&m.WeightG, weightG}},
		{"note", textValue{&m.Note}},
	}
}

func (s *Sale) fields() []field {
	return []field{
		{"age_days", numberValue{&s.AgeDays, ageDays}},
		{"length_mm", numberValue{&s.LengthMM, lengthMM}},
		{"weight_g", numberValue{&s.WeightG, weightG}},
		{"seen_eating", numberValue{&s.SeenEating, times}},
		{"note", textValue{&s.Note}},
	}
}

func (a *Adult) fields() []field {
	return []field{
		{"day_c", rangeValue{to: &a.DayC, measure: celsius}},
		{"night_c", rangeValue{to: &a.NightC, measure: celsius}},
		{"basking_c", rangeValue{to: &a.BaskingC, measure: celsius}},
		{"humidity_pct", rangeValue{to: &a.HumidityPct, measure: percent}},
		{"length_mm_male", rangeValue{to: &a.LengthMale, measure: lengthMM}},
		{"length_mm_female", rangeValue{to: &a.LengthFemale, measure: lengthMM}},
		{"life_years", rangeValue{to: &a.LifeYears, measure: lifeYears, orMore: true}},
		{"tank", textValue{&a.Tank}},
		{"group", textValue{&a.Group}},
		{"sexing", textValue{&a.Sexing}},
		{"note", textValue{&a.Note}},
	}
}

func (p *Profile) keepFields() []field {
	return []field{
		{"quarantine_days", numberValue{&p.QuarantineDays, held}},
		{"cites", textValue{&p.CITES}},
	}
}
