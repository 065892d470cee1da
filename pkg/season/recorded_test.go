package season_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/season"
)

// began reads "rain 2027-04-01, rest 2027-04-08".
func began(t testing.TB, text string) []season.Began {
	t.Helper()
	var records []season.Began
	for _, item := range strings.Split(text, ", ") {
		phase, day, _ := strings.Cut(item, " ")
		records = append(records, season.Began{Phase: phase, On: date(t, day)})
	}
	return records
}

func TestRecorded(t *testing.T) {
	tests := []struct {
		name, began, today, away string
		readyBy                  string // empty: a forward plan from 2027-01-10
		want                     string
		recorded                 string
		warnings                 []string
		conflict                 string
	}{
		{
			name: "what follows is planned from the record", began: "conditioning 2027-01-14", today: "2027-01-20",
			want:     "conditioning 2027-01-14|cooling 2027-02-11|warm-up 2027-03-25|rain 2027-04-04|rest 2027-04-09|end 2027-05-28",
			recorded: "conditioning",
		},
		{
			name: "a record on a day away stands", began: "conditioning 2027-01-10, cooling 2027-02-10", today: "2027-02-12", away: "2027-02-09..2027-02-11",
			want:     "conditioning 2027-01-10|cooling 2027-02-10|warm-up 2027-03-24|rain 2027-04-03|rest 2027-04-08|end 2027-05-27",
			recorded: "conditioning cooling",
		},
		{
			name: "a phase that took too long", began: "conditioning 2027-01-10, cooling 2027-03-01", today: "2027-03-01",
			want:     "conditioning 2027-01-10|cooling 2027-03-01|warm-up 2027-04-12|rain 2027-04-22|rest 2027-04-27|end 2027-06-15",
			recorded: "conditioning cooling",
			warnings: []string{"conditioning took 50 days from 2027-01-10 on, where the profile has 21 to 42"},
		},
		{
			name: "a phase that was cut short", began: "cooling 2027-02-07, warm-up 2027-02-08", today: "2027-02-08",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-02-08|rain 2027-02-18|rest 2027-02-23|end 2027-04-13",
			recorded: "cooling warm-up",
			warnings: []string{
				"cooling took 1 day from 2027-02-07 on, where the profile has 28 to 56",
				"nothing is recorded of the start of conditioning; it is taken to be over",
			},
		},
		{
			// 121 days from 01-10 to the rain on 05-11; the limits allow 112.
			name: "phases between two records that are too far apart", began: "conditioning 2027-01-10, rain 2027-05-11", today: "2027-05-12",
			want:     "conditioning 2027-01-10|cooling 2027-03-20|warm-up 2027-05-01|rain 2027-05-11|rest 2027-05-16|end 2027-07-04",
			recorded: "conditioning rain",
			warnings: []string{
				"conditioning to warm-up took 121 days from 2027-01-10 on, where the profile has 56 to 112",
				"nothing is recorded of the start of cooling; it is taken to be over",
				"nothing is recorded of the start of warm-up; it is taken to be over",
			},
		},
		{
			// The wished start is 2027-01-10, but from there to 2027-06-01 the
			// limits do not reach, so it is not believed.
			name: "earlier phases count as over, with usual lengths", began: "rain 2027-06-01", today: "2027-06-01",
			want:     "conditioning 2027-03-13|cooling 2027-04-10|warm-up 2027-05-22|rain 2027-06-01|rest 2027-06-06|end 2027-07-25",
			recorded: "rain",
			warnings: []string{
				"nothing is recorded of the start of conditioning; it is taken to be over",
				"nothing is recorded of the start of cooling; it is taken to be over",
				"nothing is recorded of the start of warm-up; it is taken to be over",
			},
		},
		{
			name: "two days for one phase: the later", began: "conditioning 2027-01-18, conditioning 2027-01-12", today: "2027-01-20",
			want:     "conditioning 2027-01-18|cooling 2027-02-15|warm-up 2027-03-29|rain 2027-04-08|rest 2027-04-13|end 2027-06-01",
			recorded: "conditioning",
			warnings: []string{"conditioning is recorded to have begun on 2027-01-12 and on 2027-01-18; the later day was taken"},
		},
		{
			name: "a phase after the one that follows it: the record of the later phase counts", began: "conditioning 2027-02-20, cooling 2027-02-07", today: "2027-02-20",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			recorded: "cooling",
			warnings: []string{
				"cooling is recorded to have begun on 2027-02-07, before conditioning on 2027-02-20; the record of conditioning was passed over",
				"nothing is recorded of the start of conditioning; it is taken to be over",
			},
		},
		{
			name: "of two days the one that fits the record of the next phase", began: "rain 2027-03-31, rest 2027-04-05, rain 2027-04-20", today: "2027-04-20",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			recorded: "rain rest",
			warnings: []string{
				"rest is recorded to have begun on 2027-04-05, before rain on 2027-04-20; the record of rain was passed over",
				"nothing is recorded of the start of conditioning; it is taken to be over",
				"nothing is recorded of the start of cooling; it is taken to be over",
				"nothing is recorded of the start of warm-up; it is taken to be over",
			},
		},
		{
			name: "a phase that is not in the cycle", began: "hibernation 2027-01-12, conditioning 2027-01-10", today: "2027-01-20",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			recorded: "conditioning",
			warnings: []string{"hibernation is recorded to have begun on 2027-01-12, but it is not in the cycle of P-1; that was passed over"},
		},
		{
			name: "a record after today", began: "conditioning 2027-01-10", today: "2027-01-05",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			recorded: "conditioning",
			warnings: []string{"conditioning is recorded to have begun on 2027-01-10, which is after today, 2027-01-05"},
		},
		{
			name: "a planned day that has gone by without a record", began: "conditioning 2027-01-10", today: "2027-02-20",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			recorded: "conditioning",
			warnings: []string{"cooling was to begin on 2027-02-07 and nothing is recorded of it: record the day on which it began, or change the pairing"},
		},
		{
			name: "nothing is due any more in a cycle that is over", began: "conditioning 2026-01-10", today: "2027-02-20",
			want:     "conditioning 2026-01-10|cooling 2026-02-07|warm-up 2026-03-21|rain 2026-03-31|rest 2026-04-05|end 2026-05-24",
			recorded: "conditioning",
		},
		{
			// From 02-07 with cooling of 28 to 56 days warm-up starts from 03-07
			// to 04-04.
			name: "days away after the record leave no way", began: "cooling 2027-02-07", today: "2027-02-08", away: "2027-03-01..2027-04-10",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			recorded: "cooling",
			warnings: []string{"nothing is recorded of the start of conditioning; it is taken to be over"},
			conflict: "P-1: the start of warm-up falls on 2027-03-21, in the days away 2027-03-01..2027-04-10, and no lengths of the phases within their limits keep hands-on work off these",
		},
		{
			// The rain by 05-01, 60 days after 03-02: warm-up and cooling as
			// usual leave 8 days, and conditioning takes at least 21.
			name: "backward: in time with shorter phases", readyBy: "2027-09-18", began: "conditioning 2027-03-02", today: "2027-03-03",
			want:     "conditioning 2027-03-02|cooling 2027-03-23|warm-up 2027-04-21|rain 2027-05-01|rest 2027-05-06|end 2027-06-24",
			recorded: "conditioning",
		},
		{
			// 28 + 42 + 10 days from 01-20 is 04-10, before the last day.
			name: "backward: begun early, usual lengths", readyBy: "2027-09-18", began: "conditioning 2027-01-20", today: "2027-01-20",
			want:     "conditioning 2027-01-20|cooling 2027-02-17|warm-up 2027-03-31|rain 2027-04-10|rest 2027-04-15|end 2027-06-03",
			recorded: "conditioning",
		},
		{
			// 28 + 7 days from 04-01 at least is 05-06, and 140 from there 09-23.
			name: "backward: the cooling began too late", readyBy: "2027-09-18", began: "conditioning 2027-03-04, cooling 2027-04-01", today: "2027-04-02",
			want:     "conditioning 2027-03-04|cooling 2027-04-01|warm-up 2027-05-13|rain 2027-05-23|rest 2027-05-28|end 2027-07-16",
			recorded: "conditioning cooling",
			conflict: "P-1: too late for 2027-09-18: the rain would have to begin by 2027-05-01 and can begin on 2027-05-06 at the earliest; young can be ready by 2027-09-23 at the earliest",
		},
		{
			name: "backward: the rain began too late", readyBy: "2027-09-18", began: "rain 2027-05-03", today: "2027-05-04",
			want:     "conditioning 2027-02-12|cooling 2027-03-12|warm-up 2027-04-23|rain 2027-05-03|rest 2027-05-08|end 2027-06-26",
			recorded: "rain",
			warnings: []string{
				"nothing is recorded of the start of conditioning; it is taken to be over",
				"nothing is recorded of the start of cooling; it is taken to be over",
				"nothing is recorded of the start of warm-up; it is taken to be over",
				"the rain began on 2027-05-03 and would have had to by 2027-05-01: at the wished certainty young are ready 2 days after 2027-09-18",
			},
		},
		{
			// Warm-up from 04-26 to 04-29, the rain a week later on 05-03: two
			// days too late, and without the days away it would not be.
			name: "backward: begun, and days away leave no time", readyBy: "2027-09-18", began: "cooling 2027-03-04", today: "2027-03-05", away: "2027-04-01..2027-04-25",
			want:     "conditioning 2027-02-04|cooling 2027-03-04|warm-up 2027-04-15|rain 2027-04-25|rest 2027-04-30|end 2027-06-18",
			recorded: "cooling",
			warnings: []string{"nothing is recorded of the start of conditioning; it is taken to be over"},
			conflict: "P-1: the start of warm-up falls on 2027-04-15, in the days away 2027-04-01..2027-04-25, and no lengths of the phases within their limits keep hands-on work off these; young can be ready by 2027-09-20 at the earliest",
		},
		{
			// Warm-up would start from 04-01 to 04-29.
			name: "backward: begun, and days away leave no way at all", readyBy: "2027-09-18", began: "cooling 2027-03-04", today: "2027-03-05", away: "2027-04-01..2027-05-05",
			want:     "conditioning 2027-02-04|cooling 2027-03-04|warm-up 2027-04-15|rain 2027-04-25|rest 2027-04-30|end 2027-06-18",
			recorded: "cooling",
			warnings: []string{"nothing is recorded of the start of conditioning; it is taken to be over"},
			conflict: "P-1: the start of warm-up falls on 2027-04-15, in the days away 2027-04-01..2027-05-05, and no lengths of the phases within their limits keep hands-on work off these",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := season.Pairing{ID: "P-1", Phases: treeFrog(), Began: began(t, tt.began)}
			if tt.readyBy == "" {
				p.Start = date(t, "2027-01-10")
			} else {
				p.ReadyBy, p.ReadyAfter = date(t, tt.readyBy), 140
			}
			s := season.Plan(season.Room{Away: away(t, tt.away)}, []season.Pairing{p}, date(t, tt.today))
			c := s.Cycles[0]
			assert.Equal(t, tt.want, strings.Join(starts(c), "|"))
			var recorded []string
			for _, p := range c.Phases {
				if p.Recorded {
					recorded = append(recorded, p.Name)
				}
			}
			assert.Equal(t, tt.recorded, strings.Join(recorded, " "))
			assert.Equal(t, tt.warnings, c.Warnings)
			assert.Equal(t, tt.conflict, strings.Join(messages(s), "|"))
		})
	}
}

// A record in the diary that a phase began as planned changes no date of a
// forward plan, whichever phases are recorded.
func TestRecordingThePlanChangesNothing(t *testing.T) {
	room := season.Room{Away: away(t, "2027-02-05..2027-02-09 2027-03-29..2027-04-02")}
	p := season.Pairing{ID: "P-1", Start: date(t, "2027-01-10"), Phases: treeFrog()}
	before := season.Plan(room, []season.Pairing{p}, p.Start).Cycles[0]
	for set := range 1 << len(p.Phases) {
		p.Began = nil
		for k, phase := range before.Phases {
			if set>>k&1 == 1 {
				p.Began = append(p.Began, season.Began{Phase: phase.Name, On: phase.Span.First})
			}
		}
		after := season.Plan(room, []season.Pairing{p}, date(t, "2028-01-01")).Cycles[0]
		assert.Equal(t, starts(before), starts(after), "records %v", p.Began)
	}
}
