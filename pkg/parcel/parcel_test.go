package parcel_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/calendar"
	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/parcel"
)

// A week with a cold snap: the days on which it goes, with what in the box.
func ExampleNext() {
	forecast, err := parcel.ReadForecast(strings.NewReader("date,place,low_c,high_c\n" +
		"2027-03-01,here,1,8\n2027-03-02,here,4,11\n2027-03-03,here,6,14\n2027-03-03,there,9,16\n2027-03-04,here,8,15\n"))
	if err != nil {
		panic(err)
	}
	plan := parcel.Next(parcel.Journey{Forecast: forecast}, civil.Of(2027, 3, 1), 3)
	for _, d := range plan.Skipped {
		fmt.Println(d.On, "not:", d.Why)
	}
	for _, d := range plan.Days {
		if d.Outside == nil {
			fmt.Println(d.On, "look at the forecast")
			continue
		}
		fmt.Println(d.On, *d.Outside, d.Pack)
	}
	// Output:
	// 2027-03-01 not: 1 °C on the way, and below 3.33 nothing is sent
	// 2027-03-02 4 to 16 °C heat pack
	// 2027-03-03 6 to 16 °C heat pack
	// 2027-03-04 look at the forecast
}

func TestNext(t *testing.T) {
	monday := civil.Of(2027, 3, 1)
	holidays, err := calendar.HolidaysOf("de-by")
	require.NoError(t, err)
	for _, row := range []struct {
		name string
		j    parcel.Journey
		from civil.Date
		want string // days
		none string
	}{
		{"Monday to Thursday, nothing known of the weather", parcel.Journey{}, monday, "03-01 03-02 03-03 03-04 03-08", ""},
		{
			"not over Good Friday and Easter Monday",
			parcel.Journey{Shipping: calendar.Shipping{Holidays: holidays}},
			civil.Of(2027, 3, 25), "03-30 03-31 04-01 04-05 04-06", "",
		},
		{
			"two days on the way, the second is hot", parcel.Journey{
				Shipping: calendar.Shipping{TransitDays: 2},
				Forecast: forecastOf(t, "2027-03-03,20,36"),
			}, monday, "03-04 03-08 03-09 03-10 03-11", "",
		},
		{
			"limits of a species are narrower",
			parcel.Journey{Forecast: parcel.Always(parcel.Outside{LowC: 6, HighC: 20}), Limits: &parcel.Outside{LowC: 7, HighC: 29}},
			monday, "", "6 to 20 °C on the way, and the species travels at 7 to 29 °C",
		},
		{"always too hot", parcel.Journey{Forecast: parcel.Always(parcel.Outside{LowC: 20, HighC: 36})}, monday, "", "36 °C on the way, and above 35 nothing is sent"},
		{
			"a weekday that never goes",
			parcel.Journey{Shipping: calendar.Shipping{Weekdays: []time.Weekday{time.Saturday}}},
			civil.Of(2027, 3, 6), "", "it would be on the way on Sunday 2027-03-07",
		},
		{
			"the reason is that of the weekday that is meant, not of today",
			parcel.Journey{Shipping: calendar.Shipping{Weekdays: []time.Weekday{time.Saturday}}},
			monday, "", "it would be on the way on Sunday 2027-03-07",
		},
		{
			"closed for a year",
			parcel.Journey{Shipping: calendar.Shipping{Closed: []civil.Span{{First: monday, Last: monday.Add(400)}}}},
			civil.Of(2027, 3, 6), "", "the carrier takes nothing on Monday 2027-03-08",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := parcel.Next(row.j, row.from, 5)
			var days []string
			for _, d := range got.Days {
				days = append(days, d.On.String()[5:])
				assert.Equal(t, d.On.Add(max(row.j.Shipping.TransitDays, 1)), d.Arrives)
			}
			assert.Equal(t, row.want, strings.Join(days, " "))
			assert.Equal(t, row.none, got.None)
		})
	}
	assert.Panics(t, func() { parcel.Next(parcel.Journey{}, 0, 1) })
	assert.Panics(t, func() { parcel.Next(parcel.Journey{}, monday, 0) })
	assert.Len(t, parcel.Next(parcel.Journey{Forecast: parcel.Always(parcel.Outside{LowC: 15, HighC: 20})}, civil.Last.Add(-1), 5).Days, 1, "the calendar ends")
}

func forecastOf(t *testing.T, rows string) parcel.Forecast {
	t.Helper()
	f, err := parcel.ReadForecast(strings.NewReader("date,low_c,high_c\n" + rows))
	require.NoError(t, err)
	return f
}
