package season_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/season"
)

// treeFrog is a cycle of usual length 28 + 42 + 10 + 5 + 49 days; the numbers
// are made up to be easy to add.
func treeFrog() []season.Phase {
	return []season.Phase{
		{Name: "conditioning", Min: 21, Usual: 28, Max: 42},
		{Name: "cooling", Min: 28, Usual: 42, Max: 56, Place: "cooling place"},
		{Name: "warm-up", Min: 7, Usual: 10, Max: 14},
		{Name: "rain", Min: 3, Usual: 5, Max: 10, Place: "rain chamber"},
		{Name: "rest", Min: 42, Usual: 49, Max: 70},
	}
}

func date(t testing.TB, text string) civil.Date {
	t.Helper()
	d, err := civil.Parse(text)
	require.NoError(t, err)
	return d
}

// away reads spans with blanks between.
func away(t testing.TB, text string) []civil.Span {
	t.Helper()
	var spans []civil.Span
	for _, field := range strings.Fields(text) {
		s, err := civil.ParseSpan(field)
		require.NoError(t, err)
		spans = append(spans, s)
	}
	return spans
}

// starts writes when each phase begins, and last the day after the chain.
func starts(c season.Cycle) []string {
	var out []string
	for _, p := range c.Phases {
		out = append(out, p.Name+" "+p.Span.First.String())
	}
	return append(out, "end "+c.Span().Last.Add(1).String())
}

func messages(s season.Season) []string {
	var out []string
	for _, c := range s.Conflicts {
		out = append(out, c.Message)
	}
	return out
}

func TestForward(t *testing.T) {
	tests := []struct {
		name, start, away string
		phases            []season.Phase
		want              string
		conflict          string
	}{
		{
			name: "nothing in the way: the usual lengths", start: "2027-01-10",
			want: "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
		},
		{
			name: "phases run through days away, as long as no move falls on them", start: "2027-01-10", away: "2027-02-08..2027-03-20",
			want: "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
		},
		{
			// The rain could start 3 days early or late. Early, it would end on
			// 04-02, away again, so it would need a sixth night: 4 days in all.
			name:  "the rain falls on days away: 3 days later is the least change, and conditioning bears it",
			start: "2027-01-10", away: "2027-03-29..2027-04-02",
			want: "conditioning 2027-01-10|cooling 2027-02-10|warm-up 2027-03-24|rain 2027-04-03|rest 2027-04-08|end 2027-05-27",
		},
		{
			name:  "of a day earlier and a day later the longer phase is taken",
			start: "2027-01-10", away: "2027-02-07",
			want: "conditioning 2027-01-10|cooling 2027-02-08|warm-up 2027-03-22|rain 2027-04-01|rest 2027-04-06|end 2027-05-25",
		},
		{
			name:  "the end of the rain is hands-on too: a day later costs less than two earlier",
			start: "2027-01-10", away: "2027-04-04..2027-04-05",
			want: "conditioning 2027-01-10|cooling 2027-02-08|warm-up 2027-03-22|rain 2027-04-01|rest 2027-04-06|end 2027-05-25",
		},
		{
			name:  "the end of rest is not hands-on, nor is the start of conditioning",
			start: "2027-01-10", away: "2027-01-10 2027-05-23..2027-05-25",
			want: "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
		},
		{
			name: "28 days from 1 February of a leap year end on the 28th", start: "2028-02-01",
			want: "conditioning 2028-02-01|cooling 2028-02-29|warm-up 2028-04-11|rain 2028-04-21|rest 2028-04-26|end 2028-06-14",
		},
		{
			name: "across the end of the year", start: "2027-12-20",
			want: "conditioning 2027-12-20|cooling 2028-01-17|warm-up 2028-02-28|rain 2028-03-09|rest 2028-03-14|end 2028-05-02",
		},
		{
			// Cooling can start on 01-31, but then warm-up cannot before 02-28
			// nor after 03-28. With 42 days of conditioning, cooling starts on
			// 05-01 when the cycle begins on 03-20.
			name: "months away: the usual dates, and the next start that works", start: "2027-01-10", away: "2027-02-01..2027-04-30",
			want:     "conditioning 2027-01-10|cooling 2027-02-07|warm-up 2027-03-21|rain 2027-03-31|rest 2027-04-05|end 2027-05-24",
			conflict: "P-1: the start of cooling falls on 2027-02-07, in the days away 2027-02-01..2027-04-30, and no lengths of the phases within their limits keep hands-on work off these; starting 69 days later, on 2027-03-20, avoids it",
		},
		{
			// Cooling starts from 01-31 to 02-21, and so warm-up from 02-28 to
			// 04-18. The dates given still go round the other absence.
			name: "of two absences the one in the way is named", start: "2027-01-10", away: "2027-02-07 2027-02-28..2027-04-18",
			want:     "conditioning 2027-01-10|cooling 2027-02-08|warm-up 2027-03-22|rain 2027-04-01|rest 2027-04-06|end 2027-05-25",
			conflict: "P-1: the start of warm-up falls on 2027-03-22, in the days away 2027-02-28..2027-04-18, and no lengths of the phases within their limits keep hands-on work off these; starting 1 day later, on 2027-01-11, avoids it",
		},
		{
			name: "a start that moves animals into a place on a day away", start: "2027-01-10", away: "2027-01-09..2027-01-11",
			phases:   treeFrog()[1:],
			want:     "cooling 2027-01-10|warm-up 2027-02-21|rain 2027-03-03|rest 2027-03-08|end 2027-04-26",
			conflict: "P-1: the start of cooling falls on 2027-01-10, in the days away 2027-01-09..2027-01-11, and no lengths of the phases within their limits keep hands-on work off these; starting 2 days later, on 2027-01-12, avoids it",
		},
		{
			name: "rain without rest: the adults are taken out on a day away", start: "2027-01-01", away: "2027-01-06",
			phases: []season.Phase{{Name: "rain", Min: 3, Usual: 5, Max: 10}},
			want:   "rain 2027-01-01|end 2027-01-07",
		},
		{
			name: "a phase that may be passed over", start: "2027-01-01", away: "2027-01-06..2027-01-20",
			phases: []season.Phase{{Name: "conditioning", Min: 4, Usual: 4, Max: 4}, {Name: "cooling", Min: 0, Usual: 1, Max: 1}, {Name: "rest", Min: 1, Usual: 2, Max: 2}},
			want:   "conditioning 2027-01-01|cooling 2027-01-05|rest 2027-01-05|end 2027-01-07",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := season.Pairing{ID: "P-1", Start: date(t, tt.start), Phases: tt.phases}
			if p.Phases == nil {
				p.Phases = treeFrog()
			}
			s := season.Plan(season.Room{Away: away(t, tt.away)}, []season.Pairing{p}, p.Start)
			assert.Equal(t, tt.want, strings.Join(starts(s.Cycles[0]), "|"))
			assert.Equal(t, tt.conflict, strings.Join(messages(s), "|"))
		})
	}
}

func TestBackward(t *testing.T) {
	// 140 days before 2027-09-18 is 2027-05-01.
	const usual = "conditioning 2027-02-10|cooling 2027-03-10|warm-up 2027-04-21|rain 2027-05-01|rest 2027-05-06|end 2027-06-24"
	const latest = "2027-03-06|2027-03-27|2027-04-24|2027-05-01|unknown"
	tests := []struct {
		name, today, away       string
		want, latest            string
		warning, conflict, days string
		earliest                string
	}{
		{name: "the rain on the last day, usual lengths before it", today: "2027-01-15", want: usual, latest: latest},
		{name: "today is the day on which the usual plan begins", today: "2027-02-10", want: usual, latest: latest},
		{
			// 70 days to the rain where 80 are usual: conditioning gives the 7
			// that it can, cooling the other 3.
			name: "less time than usual", today: "2027-02-20",
			want:    "conditioning 2027-02-20|cooling 2027-03-13|warm-up 2027-04-21|rain 2027-05-01|rest 2027-05-06|end 2027-06-24",
			latest:  latest,
			warning: "to be ready by 2027-09-18 the phases before the rain are cut by 10 days; with more time conditioning would begin on 2027-02-10",
		},
		{
			name: "the last day on which it can begin", today: "2027-03-06",
			want:    "conditioning 2027-03-06|cooling 2027-03-27|warm-up 2027-04-24|rain 2027-05-01|rest 2027-05-06|end 2027-06-24",
			latest:  latest,
			warning: "to be ready by 2027-09-18 the phases before the rain are cut by 24 days; with more time conditioning would begin on 2027-02-10",
		},
		{
			// 56 days from 03-10 is 05-05, and 140 from there 09-22.
			name: "four days too late", today: "2027-03-10", want: usual, latest: latest,
			conflict: "P-1: too late for autumn show (2027-09-18): conditioning would have had to begin by 2027-03-06, and today is 2027-03-10; young can be ready by 2027-09-22 at the earliest",
			days:     "2027-03-06..2027-03-09", earliest: "2027-09-22",
		},
		{
			name: "a rain that cannot start on the last day starts before it", today: "2027-01-15", away: "2027-04-30..2027-05-02",
			want:   "conditioning 2027-02-08|cooling 2027-03-08|warm-up 2027-04-19|rain 2027-04-29|rest 2027-05-04|end 2027-06-22",
			latest: "2027-03-04|2027-03-25|2027-04-22|2027-04-29|unknown",
		},
		{
			// The rain takes 3 to 10 nights, so it would have to end on 05-04 to
			// 05-11: on 05-11 it can.
			name: "the adults can be taken out at the last moment", today: "2027-01-15", away: "2027-05-04..2027-05-10",
			want:   "conditioning 2027-02-10|cooling 2027-03-10|warm-up 2027-04-21|rain 2027-05-01|rest 2027-05-11|end 2027-06-29",
			latest: latest,
		},
		{
			name: "a day more away, and the rain is three nights earlier", today: "2027-01-15", away: "2027-05-04..2027-05-11",
			want:   "conditioning 2027-02-09|cooling 2027-03-09|warm-up 2027-04-20|rain 2027-04-30|rest 2027-05-03|end 2027-06-21",
			latest: "2027-03-05|2027-03-26|2027-04-23|2027-04-30|unknown",
		},
		{
			// Cooling at the latest on 03-27 is away; on 03-19 it is not, and
			// conditioning before that begins on 02-26.
			name: "latest starts keep off the days away", today: "2027-01-15", away: "2027-03-20..2027-03-31",
			want: usual, latest: "2027-02-26|2027-03-19|2027-04-24|2027-05-01|unknown",
		},
		{
			// Cooling has to start by 03-27 and cannot, as nobody is there from
			// today on; the earliest is cooling on 04-01 and rain on 05-06.
			name: "time enough, but for days away", today: "2027-03-01", away: "2027-03-02..2027-03-31",
			want:     "conditioning 2027-03-01|cooling 2027-03-22|warm-up 2027-04-21|rain 2027-05-01|rest 2027-05-06|end 2027-06-24",
			latest:   "2027-02-08|2027-03-01|2027-04-24|2027-05-01|unknown",
			conflict: "P-1: the start of cooling falls on 2027-03-22, in the days away 2027-03-02..2027-03-31, and no lengths of the phases within their limits keep hands-on work off these; young can be ready by 2027-09-23 at the earliest",
			days:     "2027-03-02..2027-03-31", earliest: "2027-09-23",
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p := season.Pairing{
				ID: "P-1", ReadyBy: date(t, "2027-09-18"), ReadyAfter: 140, Phases: treeFrog(),
				Stages: []season.StageOffset{{Stage: "out-of-water", Early: 60, Likely: 75, Late: 95}},
			}
			if tt.conflict != "" {
				p.Target = "autumn show"
			}
			s := season.Plan(season.Room{Away: away(t, tt.away)}, []season.Pairing{p}, date(t, tt.today))
			c := s.Cycles[0]
			assert.Equal(t, tt.want, strings.Join(starts(c), "|"))
			assert.Equal(t, tt.latest, strings.Join(latestStarts(c), "|"))
			assert.Equal(t, tt.warning, strings.Join(c.Warnings, "|"))
			assert.Equal(t, tt.conflict, strings.Join(messages(s), "|"))
			if tt.conflict != "" {
				assert.Equal(t, tt.days, s.Conflicts[0].Days.String())
				assert.Equal(t, tt.earliest, s.Conflicts[0].Earliest.String())
			}
			assert.Equal(t, c.RainStart, c.Phases[3].Span.First)
			want := civil.Window{Early: c.RainStart.Add(60), Likely: c.RainStart.Add(75), Late: c.RainStart.Add(95)}
			assert.Equal(t, []season.StageWindow{{Stage: "out-of-water", Window: want}}, c.Stages)
		})
	}
}

func latestStarts(c season.Cycle) []string {
	var out []string
	for _, p := range c.Phases {
		out = append(out, p.LatestStart.String())
	}
	return out
}

func TestChainsThatLackPhases(t *testing.T) {
	tests := []struct {
		name   string
		phases []season.Phase
		rain   string
	}{
		{"without rain the start of rest counts", []season.Phase{{Name: "conditioning", Min: 5, Usual: 10, Max: 15}, {Name: "rest", Min: 5, Usual: 5, Max: 5}}, "2027-01-11"},
		{"without rain and rest the day after the chain counts", []season.Phase{{Name: "conditioning", Min: 5, Usual: 10, Max: 15}}, "2027-01-11"},
		{"without any phase the start counts", nil, "2027-01-01"},
		{"rain alone", []season.Phase{{Name: "rain", Min: 3, Usual: 5, Max: 7}}, "2027-01-01"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			start, rain := date(t, "2027-01-01"), date(t, tt.rain)
			forward := season.Pairing{ID: "P-1", Start: start, Phases: tt.phases}
			backward := season.Pairing{ID: "P-2", ReadyBy: rain.Add(100), ReadyAfter: 100, Phases: tt.phases}
			s := season.Plan(season.Room{}, []season.Pairing{forward, backward}, start)
			assert.Empty(t, s.Conflicts)
			assert.Equal(t, rain, s.Cycles[0].RainStart)
			assert.Equal(t, rain, s.Cycles[1].RainStart)
			assert.Equal(t, s.Cycles[0].Phases, forgetLatest(s.Cycles[1].Phases))
		})
	}
}

func TestTooLateWithoutPhases(t *testing.T) {
	p := season.Pairing{ID: "P-1", ReadyBy: date(t, "2027-01-09"), ReadyAfter: 8}
	s := season.Plan(season.Room{}, []season.Pairing{p}, date(t, "2027-01-10"))
	assert.Equal(t, []string{"P-1: too late for 2027-01-09: the cycle would have had to begin by 2027-01-01, and today is 2027-01-10; young can be ready by 2027-01-18 at the earliest"}, messages(s))
}

func forgetLatest(phases []season.Dated) []season.Dated {
	var out []season.Dated
	for _, p := range phases {
		p.LatestStart = 0
		out = append(out, p)
	}
	return out
}
