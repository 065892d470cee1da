package collection

import "github.com/spawnwright/spawnwright/pkg/civil"

// PlaceOf gives the place of an animal or a clutch on a day: the newest
// moved_to of the diary, or else the place in its list. It is empty when no
// place is known. An unknown day stands for the end of the diary.
func (c *Collection) PlaceOf(id string, on civil.Date) string {
	var place string
	if a, ok := c.Animal(id); ok {
		place = a.Place
	} else if k, ok := c.Clutch(id); ok {
		place = k.Place
	}
	for _, e := range c.DiaryOf(id) {
		if e.MovedTo != "" && past(e.On, on) {
			place = e.MovedTo
		}
	}
	return place
}
