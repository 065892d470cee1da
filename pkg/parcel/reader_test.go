package parcel_test

import (
	"errors"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/parcel"
)

func TestReadForecast(t *testing.T) {
	day := civil.Of(2027, 3, 19)
	for _, row := range []struct{ name, text string }{
		{"commas", "date,low_c,high_c\n2027-03-19,5,10\n"},
		{"semicolons, capitals, blanks and a byte order mark", "\ufeffDate; Low_C ;High_C\r\n2027-03-19; 5 ;10\r\n"},
		{"tabs and another column", "place\tdate\thigh_c\tlow_c\nhub\t2027-03-19\t10\t5"},
		{"Fahrenheit", "date,low_f,high_f\n2027-03-19,41,50\n"},
		{"semicolons, and commas before the fraction", "date;low_c;high_c\n2027-03-19;5,0;10,00\n"},
		{"two places on the way", "date,low_c,high_c\n2027-03-19,5,8\n2027-03-19,7,10\n"},
	} {
		t.Run(row.name, func(t *testing.T) {
			f, err := parcel.ReadForecast(strings.NewReader(row.text))
			require.NoError(t, err)
			got, ok := f.On(day)
			assert.True(t, ok)
			assert.InDelta(t, 5, got.LowC, 1e-12)
			assert.InDelta(t, 10, got.HighC, 1e-12)
			_, ok = f.On(day.Add(1))
			assert.False(t, ok)
		})
	}
}

func TestRefusedForecasts(t *testing.T) {
	for _, row := range []struct{ name, text, want string }{
		{"nothing", "", "line 1: the table is empty; begin with a line date,low_c,high_c"},
		{"no date", "day,low_c,high_c\n", "line 1: there is no column date; write a header: date,low_c,high_c"},
		{"no unit", "date,low,high\n", "line 1: the temperatures have no unit, or two; name the columns low_c and high_c, or low_f and high_f"},
		{"two units", "date,low_c,high_c,low_f\n", "line 1: the temperatures have no unit, or two; name the columns low_c and high_c, or low_f and high_f"},
		{"a column twice", "date,low_c,high_c,Low_C\n", "line 1, low_c: the column stands twice; keep one"},
		{
			"all problems at once", "date,low_c,high_c\n19.3.2027,5,10\n2027-03-20,5\n2027-03-21,12,8\n2027-03-22,41,50\n2027-03-23,NaN,68\n",
			"line 2, date: \"19.3.2027\" is not a date: it is not written YYYY-MM-DD; write 2027-03-19\n" +
				"line 3, high_c: \"\" is not a number; write degrees, with a point\n" +
				"line 4: the lowest temperature is above the highest; change them over\n" +
				"line 6, low_c: \"NaN\" is not a number; write degrees, with a point\n" +
				"line 6, high_c: 68 is not a temperature of the air; look at the unit of the column",
		},
		{"a comma before the fraction between commas", "date,low_c,high_c\n2027-03-19,\"5,1\",10\n", "line 2, low_c: \"5,1\" is not a number; write degrees, with a point"},
		{"a broken quotation", "date,low_c,high_c\n2027-03-19,\"5,10\n", "line 2: extraneous or missing \" in quoted-field; put a text with a quotation mark in it between two"},
		{"too long", "date,low_c,high_c\n" + strings.Repeat("\n", 1<<20), "line 1: the table is larger than 1 MiB; leave only the days of the journey"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := parcel.ReadForecast(strings.NewReader(row.text))
			require.Error(t, err)
			var one *parcel.ForecastError
			assert.ErrorAs(t, err, &one)
			assert.Equal(t, row.want, err.Error())
		})
	}
	broken := errors.New("the disk is gone")
	_, err := parcel.ReadForecast(iotest.ErrReader(broken))
	assert.ErrorIs(t, err, broken)
}

func FuzzReadForecast(f *testing.F) {
	f.Add("date,low_c,high_c\n2027-03-19,5,10\n")
	f.Add("date;low_f;high_f\n\"2027-03-19\";41;50")
	f.Add("date,low_c,high_c\n\",\n")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := parcel.ReadForecast(strings.NewReader(text))
		if err != nil && err.Error() == "" {
			t.Error("an error that says nothing")
		}
		if o, ok := got.On(civil.Of(2027, 3, 19)); ok && (o.LowC > o.HighC || err != nil) {
			t.Errorf("%v, %v", o, err)
		}
	})
}
