package species

// Food is what animals are fed at each age.
type Food struct{ Tadpole, Froglet, Adult Meal }

// Meal is what one animal gets at a meal: feeders, or dry food.
type Meal struct {
	What      Text
	Feeders   Range // how many
	FeederMM  Range // how long they are
	DryMG     Range // mg of dry food
	EveryDays Range // from one meal to the next
}

func (m *Meal) fields() []field {
	return []field{
		{"what", textValue{&m.What}},
		{"feeders", rangeValue{to: &m.Feeders, measure: feeders}},
		{"feeder_mm", rangeValue{to: &m.FeederMM, measure: feederMM}},
		{"dry_mg", rangeValue{to: &m.DryMG, measure: dryMG}},
		{"every_days", rangeValue{to: &m.EveryDays, measure: mealDays}},
	}
}

func (p *Profile) readFood(s *scope) {
	food := s.sub("food", "the food")
	if food == nil {
		return
	}
	if m := food.sub("tadpole", "the food of tadpoles"); m != nil {
		m.fields(p.Food.Tadpole.fields())
	}
	if m := food.sub("froglet", "the food of froglets"); m != nil {
		m.fields(p.Food.Froglet.fields())
	}
	if m := food.sub("adult", "the food of adults"); m != nil {
		m.fields(p.Food.Adult.fields())
	}
	food.Done()
}
