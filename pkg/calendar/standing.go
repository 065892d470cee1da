package calendar

// Standing gives c without what is cancelled, for readers who were told nothing before.
func (c Calendar) Standing() Calendar {
	out := Calendar{ID: c.ID, Name: c.Name}
	for _, e := range c.Events {
		if !e.Cancelled {
			out.Events = append(out.Events, e)
		}
	}
	return out
}
