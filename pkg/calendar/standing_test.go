package calendar_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/calendar"
)

func TestStanding(t *testing.T) {
	kept := calendar.Event{Key: "rain", Summary: "rain begins"}
	c := calendar.Calendar{ID: "room", Name: "Room", Events: []calendar.Event{{Key: "tubs", Cancelled: true}, kept}}
	assert.Equal(t, calendar.Calendar{ID: "room", Name: "Room", Events: []calendar.Event{kept}}, c.Standing())
	assert.Len(t, c.Events, 2, "as it was")
}
