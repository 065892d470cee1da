// Package clockwork has an invented species and its frogs, in which every date can be
// worked out by counting. It is for tests.
package clockwork

import "strings"

// profile is an invented species in which nothing varies, so that every date
// can be worked out by counting: eggs after 2 nights of rain, and from there 5,
// 2, 40, 6 and 50 days. Counted from the first night of rain young hatch on day
// 7, feed on day 9, have front legs on day 49, are out of the water on day 55
// and sale-ready on day 105. Half of 40 eggs become froglets.
const profile = `
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
      tadpole: {days: [40, 40, 40], at_c: [22, 26], survival: 0.5, stall: 0}
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

// Basic is the species and the founders, with more animals below.
const Basic = `
species:
  - CLOCKWORK
animals:
  - FOUNDERS
`

// Spelled gives the text of a collection in which a line with CLOCKWORK stands for the
// species, clockwork, and one with FOUNDERS for two males and two females of it, A, B, D
// and E.
func Spelled(text string) string {
	text = strings.ReplaceAll(text, "\n  - CLOCKWORK\n", profile)
	return strings.ReplaceAll(text, "\n  - FOUNDERS\n", founders)
}
