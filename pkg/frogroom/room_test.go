package frogroom_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// clockwork is an invented species in which nothing varies, so that every date
// can be worked out by counting: eggs after 2 nights of rain, and from there 5,
// 2, 40, 6 and 50 days. Counted from the first night of rain young hatch on day
// 7, feed on day 9, have front legs on day 49, are out of the water on day 55
// and sale-ready on day 105. Half of 40 eggs become froglets.
const clockwork = `
  - id: clockwork
    name: Rana horologia
    source: invented
    cycle:
      conditioning: {days: [10, 10, 10]}
      cooling: {days: [20, 20, 20]}
      warm_up: {days: [5, 5, 5]}
      rain: {days: [3, 3, 3]}
      rest: {days: [20, 20, 20]}
    breeding: {males_per_female: [1, 2], clutch_eggs: [40, 40, 40], eggs_after_nights: [2, 2, 2]}
    development:
      egg: {days: [5, 5, 5], at_c: [22, 26], survival: 1}
      hatchling: {days: [2, 2, 2], at_c: [22, 26], survival: 1}
      tadpole: {days: [40, 40, 40], at_c: [22, 26], survival: 0.5}
      metamorph: {days: [6, 6, 6], at_c: [22, 26], survival: 1}
      grow_out: {days: [50, 50, 50], at_c: [22, 26], survival: 1}
    safe_c: [18, 28]
    maturity: {male: {age_days: 300}, female: {age_days: 400}}
`

// founders are two males and two females, bought grown and related to nobody.
const founders = `
  - {id: A, name: Anton, species: clockwork, sex: male, acquired: 2020-01-01}
  - {id: B, species: clockwork, sex: male, acquired: 2020-01-01}
  - {id: D, name: Dora, species: clockwork, sex: female, acquired: 2020-01-01}
  - {id: E, species: clockwork, sex: female, acquired: 2020-01-01}
`

// room opens text that has to be good; a line with the clockwork species or the
// founders stands for them.
func room(t testing.TB, text string) *frogroom.Room {
	t.Helper()
	r, problems := frogroom.Read("room.yaml", []byte(spelled(text)))
	require.NotNil(t, r, "%v", problems)
	return r
}

func spelled(text string) string {
	text = strings.ReplaceAll(text, "\n  - CLOCKWORK\n", clockwork)
	return strings.ReplaceAll(text, "\n  - FOUNDERS\n", founders)
}

// basic is the species and the founders, with more below.
const basic = `
species:
  - CLOCKWORK
animals:
  - FOUNDERS
`

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func exactly(text string) civil.Window { return civil.Exactly(day(text)) }

func days(first, last string) civil.Span { return civil.Span{First: day(first), Last: day(last)} }

// messages gives the problems of a severity as one text a line.
func messages(ds strictyaml.Diagnostics, severity strictyaml.Severity) string {
	var lines []string
	for _, d := range ds {
		if d.Severity == severity {
			lines = append(lines, d.String())
		}
	}
	return strings.Join(lines, "\n")
}

func asJSON(t testing.TB, v any) string {
	t.Helper()
	data, err := json.Marshal(v)
	require.NoError(t, err)
	return string(data)
}
