package rearing_test

import (
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
	"github.com/spawnwright/spawnwright/pkg/kin"
	"github.com/spawnwright/spawnwright/pkg/rearing"
)

// one gives the clutch C of a room in which it was laid on 2027-02-10, with a
// diary of these entries, as it was on a day. It hatches on 02-15, feeds on
// 02-17, has front legs on 03-29, is out of the water on 04-04 and sale-ready on
// 05-24, if nothing is recorded.
func one(t *testing.T, on string, entries ...string) rearing.Clutch {
	t.Helper()
	diary := "diary:\n"
	for _, e := range entries {
		diary += "  - {" + e + "}\n"
	}
	r := room(t, basic+`
clutches:
  - {id: C, laid: 2027-02-10, dam: D, sire: A, eggs: 40, place: tub 1}
`+diary)
	k, err := r.Clutch("C", day(on))
	require.NoError(t, err)
	return k
}

// told writes what is known of each stage that ends a step: "=" recorded, "<" passed,
// "+" some are there, "!" overdue.
func told(k rearing.Clutch) string {
	var out []string
	for _, s := range k.Stages {
		if slices.Contains(midways, s.Stage) {
			continue
		}
		mark := ""
		switch {
		case s.Recorded:
			mark = "="
		case s.Passed:
			mark = "<"
		case s.Some:
			mark = "+"
		case s.Overdue:
			mark = "!"
		}
		out = append(out, mark+s.Window.Likely.String()[5:])
	}
	return strings.Join(out, " ")
}

// midways are the stages that lie within a step.
var midways = []string{"hind-legs", "toes", "eating"}

// stage gives what is known of one stage.
func stage(k rearing.Clutch, name string) rearing.Stage {
	for _, s := range k.Stages {
		if s.Stage == name {
			return s
		}
	}
	return rearing.Stage{}
}

func window(early, likely, late string) civil.Window {
	return civil.Window{Early: day(early), Likely: day(likely), Late: day(late)}
}

func TestClutch(t *testing.T) {
	living := 36
	book := rearing.RestsOn{Looks: 1, Book: 4, Words: "the book and 1 look"}
	want := rearing.Clutch{
		ID: "C", Species: "clockwork", Laid: day("2027-02-10"), Dams: []string{"D"}, Sires: []string{"A"},
		Place: "tub 2", Now: "hatched", SeenOn: day("2027-02-14"), Living: &living,
		Stages: []rearing.Stage{
			{Stage: "hatched", Window: exactly("2027-02-14"), Recorded: true, RestsOn: rearing.RestsOn{Words: "seen"}},
			{Stage: "feeding", Window: exactly("2027-02-16"), RestsOn: book},
			{Stage: "hind-legs", Window: window("2027-02-20", "2027-02-23", "2027-02-27"), RestsOn: book},
			{Stage: "toes", Window: window("2027-03-10", "2027-03-16", "2027-03-22"), RestsOn: book},
			{Stage: "front-legs", Window: exactly("2027-03-28"), RestsOn: book},
			{Stage: "out-of-water", Window: exactly("2027-04-03"), RestsOn: book},
			{Stage: "eating", Window: window("2027-04-06", "2027-04-08", "2027-04-10"), RestsOn: book},
			{Stage: "sale-ready", Window: exactly("2027-05-23"), RestsOn: book},
		},
		Young: kin.Young{Known: true},
	}
	got := one(t, "2027-02-15",
		"on: 2027-02-14, clutch: C, saw: hatched, count: 38",
		"on: 2027-02-15, clutch: C, losses: 2, moved_to: tub 2",
		"on: 2027-02-16, clutch: C, saw: feeding, count: 5, moved_to: tub 3",
	)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("what is recorded the day after does not count (-want +got):\n%s", diff)
	}
}

func TestStages(t *testing.T) {
	for _, row := range []struct {
		name    string
		entries []string
		on      string
		now     string
		want    string // hatched, feeding, front legs, out of water, sale-ready
	}{
		{"before it was laid", nil, "2027-01-01", "laid", "02-15 02-17 03-29 04-04 05-24"},
		{"on the day", nil, "2027-02-15", "laid", "02-15 02-17 03-29 04-04 05-24"},
		{"a day late", nil, "2027-02-16", "laid", "!02-15 02-17 03-29 04-04 05-24"},
		{"centuries late", nil, "2527-02-16", "laid", "!02-15 !02-17 !03-29 !04-04 !05-24"},
		{
			"a stage that was seen moves what follows",
			[]string{"on: 2027-02-16, clutch: C, saw: hatched"},
			"2027-02-16", "hatched", "=02-16 02-18 03-30 04-05 05-25",
		},
		{
			"what was not seen to begin is passed, and neither expected nor overdue",
			[]string{"on: 2027-04-04, clutch: C, saw: out-of-water"},
			"2027-04-10", "out-of-water", "<02-15 <02-17 <03-29 =04-04 05-24",
		},
		{
			"toes lie within a step",
			[]string{"on: 2027-03-20, clutch: C, saw: toes"},
			"2027-03-20", "toes", "<02-15 <02-17 03-29 04-04 05-24",
		},
		{
			"the first few are ahead of the others",
			[]string{"on: 2027-02-16, clutch: C, saw: hatched, some: true, count: 3"},
			"2027-02-16", "hatched", "+02-16 02-18 03-30 04-05 05-25",
		},
		{
			"where some were seen first the day of the rest is not that of all",
			[]string{"on: 2027-02-16, clutch: C, saw: hatched, some: true, count: 3", "on: 2027-02-18, clutch: C, saw: hatched"},
			"2027-02-18", "hatched", "<02-17 02-19 03-31 04-06 05-26", // half of them between the two looks
		},
		{
			"some of a clutch that was seen there whole are no news",
			[]string{"on: 2027-02-16, clutch: C, saw: hatched", "on: 2027-02-17, clutch: C, saw: hatched, some: true"},
			"2027-02-17", "hatched", "=02-16 02-18 03-30 04-05 05-25",
		},
		{
			"some are ahead of the rest",
			[]string{"on: 2027-03-29, clutch: C, saw: front-legs, some: true", "on: 2027-03-30, clutch: C, gosner: 40"},
			"2027-03-30", "front-legs", "<02-15 <02-17 +03-29 04-04 05-24",
		},
		{
			"the order of a day is nothing to go by",
			[]string{"on: 2027-02-17, clutch: C, saw: feeding", "on: 2027-02-17, clutch: C, saw: hatched"},
			"2027-02-17", "feeding", "=02-17 =02-17 03-29 04-04 05-24",
		},
		{
			"Gosner 25 lasts for days: looks at it do not contradict each other",
			[]string{"on: 2027-02-15, clutch: C, saw: hatched", "on: 2027-02-18, clutch: C, gosner: 25", "on: 2027-02-20, clutch: C, gosner: 25"},
			"2027-02-20", "feeding", "=02-15 <02-17 03-29 04-04 05-24",
		},
		{
			"front legs break through at 42, and are no news the day after",
			[]string{"on: 2027-03-29, clutch: C, gosner: 42", "on: 2027-03-30, clutch: C, gosner: 42", "on: 2027-03-30, clutch: C, saw: front-legs"},
			"2027-03-30", "front-legs", "<02-15 <02-17 =03-29 04-04 05-24",
		},
		{
			"at 44 they are out, since when nobody knows",
			[]string{"on: 2027-03-30, clutch: C, gosner: 44", "on: 2027-03-31, clutch: C, saw: front-legs"},
			"2027-03-31", "front-legs", "<02-15 <02-17 <03-29 04-04 05-24",
		},
		{
			"the tail is gone at 46",
			[]string{"on: 2027-04-04, clutch: C, gosner: 46"},
			"2027-04-06", "out-of-water", "<02-15 <02-17 <03-29 <04-04 05-24",
		},
		{
			"nobody waits for a dead clutch",
			[]string{"on: 2027-02-15, clutch: C, saw: hatched, count: 3", "on: 2027-02-16, clutch: C, losses: 3"},
			"2027-12-01", "hatched", "=02-15 02-17 03-29 04-04 05-24",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			k := one(t, row.on, row.entries...)
			assert.Equal(t, row.want, told(k))
			assert.Equal(t, row.now, k.Now)
			assert.NotContains(t, strings.Join(k.Warnings, "\n"), "contradicts")
		})
	}
}

// TestNotYet is about stages that say what has not come.
func TestNotYet(t *testing.T) {
	for _, row := range []struct {
		name, look string
		now        string
		after      []string // stages that come after the look
	}{
		{"an early embryo has not hatched", "gosner: 12", "laid", []string{"hatched", "feeding"}},
		{"leaf frogs hatch as late as 29; but they do not feed before 25", "gosner: 22", "laid", []string{"feeding", "front-legs"}},
		{"from 26 on they feed if they have hatched, of which 28 says nothing", "gosner: 28", "laid", []string{"front-legs", "out-of-water"}},
		{"from 30 on they have hatched", "gosner: 30", "hind-legs", []string{"front-legs", "out-of-water"}},
		{"a tail", "gosner: 43", "front-legs", []string{"out-of-water", "sale-ready"}},
	} {
		r := room(t, `
clutches:
  - {id: C, laid: 2027-02-10, species: agalychnis-callidryas}
diary:
  - {on: 2027-04-20, clutch: C, `+row.look+`}
`)
		k, err := r.Clutch("C", day("2027-04-20"))
		require.NoError(t, err)
		assert.Equal(t, row.now, k.Now, row.name)
		for _, s := range k.Stages {
			if slices.Contains(row.after, s.Stage) {
				assert.Greater(t, s.Window.Early, day("2027-04-20"), "%s: %s", row.name, s.Stage)
			}
			assert.False(t, s.Recorded, "%s: %s", row.name, s.Stage)
		}
	}
}

func TestLiving(t *testing.T) {
	for _, row := range []struct {
		name    string
		entries []string
		want    int // -1 for not known
	}{
		{"never counted", nil, -1},
		{"losses alone do not say how many there were", []string{"on: 2027-02-15, clutch: C, losses: 3"}, -1},
		{"a count of some is no count of all", []string{"on: 2027-02-15, clutch: C, saw: hatched, some: true, count: 3"}, -1},
		{"the last count", []string{"on: 2027-02-20, clutch: C, count: 30", "on: 2027-02-15, clutch: C, count: 38"}, 30},
		{"less what was lost since", []string{"on: 2027-02-15, clutch: C, count: 38", "on: 2027-02-20, clutch: C, losses: 3", "on: 2027-02-21, clutch: C, losses: 1"}, 34},
		{"losses found with the count are not in it", []string{"on: 2027-02-15, clutch: C, count: 38, losses: 2"}, 38},
		{"losses while only some are counted", []string{"on: 2027-02-15, clutch: C, count: 38", "on: 2027-02-16, clutch: C, saw: hatched, some: true, count: 5, losses: 2"}, 36},
		{"not below none", []string{"on: 2027-02-15, clutch: C, count: 2", "on: 2027-02-16, clutch: C, losses: 3"}, 0},
		{"tomorrow's count", []string{"on: 2027-03-02, clutch: C, count: 38"}, -1},
	} {
		k := one(t, "2027-03-01", row.entries...)
		if row.want < 0 {
			assert.Nil(t, k.Living, row.name)
			continue
		}
		require.NotNil(t, k.Living, row.name)
		assert.Equal(t, row.want, *k.Living, row.name)
	}
}

func TestDoubtsHaveTheClutch(t *testing.T) {
	k := one(t, "2027-03-20", "on: 2027-03-20, clutch: C, saw: hatched")
	require.Len(t, k.Warnings, 1)
	assert.Contains(t, k.Warnings[0], "clutch C: hatched came 38 days after laid")
}

// A clutch that is seen at a younger stage has no front legs by then, however the
// word is written, unless they are in the diary for that day too.
func TestStillTadpoles(t *testing.T) {
	for _, row := range []struct {
		name    string
		entries []string
		want    string // front legs, early; none where they are after the look
		looks   int
		warns   bool
	}{
		{"nothing is seen", nil, "03-29", 0, false},
		{"toes, a week after front legs are due", []string{"on: 2027-04-05, clutch: C, saw: toes"}, "", 1, true},
		{"tadpoles that feed, again", []string{"on: 2027-02-17, clutch: C, saw: feeding", "on: 2027-04-05, clutch: C, saw: feeding"}, "", 2, true},
		{"some have hind legs", []string{"on: 2027-04-05, clutch: C, saw: hind-legs, some: true"}, "", 1, true},
		{"toes and front legs on one day", []string{"on: 2027-03-30, clutch: C, saw: toes", "on: 2027-03-30, clutch: C, saw: front-legs"}, "03-30", 1, false},
		{"slow ones, when the others are through", []string{"on: 2027-03-29, clutch: C, saw: front-legs", "on: 2027-04-05, clutch: C, saw: toes, some: true"}, "03-29", 2, false},
	} {
		k := one(t, "2027-04-06", row.entries...)
		if early := stage(k, "front-legs").Window.Early; row.want == "" {
			assert.Greater(t, early, day("2027-04-05"), row.name)
		} else {
			assert.Equal(t, day("2027-"+row.want), early, row.name)
		}
		assert.Equal(t, row.looks, stage(k, "sale-ready").RestsOn.Looks, "%s: days of looks", row.name)
		assert.Equal(t, row.warns, strings.Contains(strings.Join(k.Warnings, "\n"), "front-legs did not come"), row.name)
	}
}

// The warning is where the temperature is written, and at the clutch for a set-point.
func TestUnsafeHasItsLine(t *testing.T) {
	k := one(t, "2027-03-10", "on: 2027-03-01, clutch: C, water_c: 24", "on: 2027-03-02, clutch: C, water_c: 35, air_c: 9")
	measured := regexp.MustCompile(`(?m)^room.yaml:(\d+):\d+: clutch C: the (?:water is at 35|air is at 9) °C, outside the safe range`)
	places := measured.FindAllStringSubmatch(strings.Join(k.Warnings, "\n"), -1)
	require.Len(t, places, 2)
	assert.Equal(t, places[0][1], places[1][1])
}

// TestWarmth: the dates follow the temperature by day where the profile has a
// law, and what is not covered or not safe is said.
func TestWarmth(t *testing.T) {
	lawful := strings.Replace(clockwork.Spelled(basic), "tadpole: {days: [40, 40, 40], at_c: [22, 26]", "tadpole: {days: [40, 40, 40], at_c: 24, law: {kind: thermal_sum, threshold_c: 14}, covers_c: [18, 30]", 1)
	for _, row := range []struct {
		name, equipment string
		entries         []string
		legs            string
		warns           string
	}{
		{"nothing is known", "", nil, "03-29", ""},
		{"the set-point is that of the profile", "{water_c: 24}", nil, "03-29", ""},
		{"twice as far above the threshold is twice as fast", "{water_c: 28}", nil, "03-18", "egg, hatchling and metamorph (known at 22 to 26 °C only, so not moved)"},
		{"the thermometer counts for more", "{water_c: 28}", []string{"on: 2027-02-10, place: tub 1, water_c: 24"}, "03-29", ""},
		{"half of the way warmer", "{water_c: 24}", []string{"on: 2027-03-09, clutch: C, water_c: 28"}, "03-23", ""},
		{"the future is not known", "{water_c: 24}", []string{"on: 2027-03-20, clutch: C, water_c: 28"}, "03-29", ""},
		{"not safe", "{water_c: 24}", []string{"on: 2027-03-01, clutch: C, water_c: 29"}, "03-19", "the water is at 29 °C, outside the safe range of 18 to 28 °C"},
		{"safe again", "{water_c: 24}", []string{"on: 2027-02-28, clutch: C, water_c: 29", "on: 2027-03-01, clutch: C, water_c: 24"}, "03-29", ""},
		{"froglets on land do not mind the water", "{water_c: 24}", []string{"on: 2027-02-28, clutch: C, gosner: 46", "on: 2027-03-01, clutch: C, water_c: 29"}, "", ""},
	} {
		equipment := ""
		if row.equipment != "" {
			equipment = "equipment: {tadpole_tubs: " + row.equipment + "}\n"
		}
		diary := "diary:\n"
		for _, e := range row.entries {
			diary += "  - {" + e + "}\n"
		}
		r := room(t, lawful+"\n"+equipment+"clutches:\n  - {id: C, laid: 2027-02-10, dam: D, sire: A, place: tub 1}\n"+diary)
		k, err := r.Clutch("C", day("2027-03-10"))
		require.NoError(t, err)
		if row.legs != "" {
			assert.Equal(t, day("2027-"+row.legs), stage(k, "front-legs").Window.Likely, row.name)
		}
		warnings := strings.Join(k.Warnings, "\n")
		if row.warns == "" {
			assert.NotContains(t, warnings, "safe", row.name)
		}
		assert.Contains(t, warnings, row.warns, row.name)
	}
}

// TestLearnedFromOthers: what a clutch of the room took counts for the others of
// its species, running or ended, and never for itself.
func TestLearnedFromOthers(t *testing.T) {
	const text = basic + `
clutches:
  - {id: old, laid: 2026-02-10, dam: D, sire: A, ended: 2026-11-01}
  - {id: C, laid: 2027-02-10, dam: D, sire: A}
  - {id: other, laid: 2027-02-10, species: hyla-cinerea}
diary:
`
	const slow = "  - {on: 2026-02-17, clutch: old, saw: feeding}\n  - {on: 2026-04-02, clutch: old, saw: front-legs}\n"
	of := func(id, diary string) rearing.Clutch {
		k, err := room(t, text+diary).Clutch(id, day("2027-02-12"))
		require.NoError(t, err)
		return k
	}
	alone, taught := of("C", ""), of("C", slow)
	assert.Equal(t, "the book", stage(alone, "front-legs").RestsOn.Words)
	assert.Equal(t, rearing.RestsOn{Finished: 1, Book: 4, Words: "your 1 clutch and the book (counts as 4 clutches)"}, stage(taught, "front-legs").RestsOn)
	assert.Greater(t, stage(taught, "front-legs").Window.Late, stage(alone, "front-legs").Window.Late)
	assert.Equal(t, of("other", ""), of("other", slow), "species do not teach each other")
	assert.Equal(t, "the book and 2 looks", stage(of("old", slow), "sale-ready").RestsOn.Words, "nobody learns from himself")
}

// TestLearnsByTheDay: a room that was asked about one day answers about another
// as one that was not, from several goroutines too.
func TestLearnsByTheDay(t *testing.T) {
	const text = basic + `
clutches:
  - {id: old, laid: 2026-02-10, dam: D, sire: A}
  - {id: C, laid: 2026-03-10, dam: D, sire: A}
diary:
  - {on: 2026-02-18, clutch: old, saw: feeding}
  - {on: 2026-04-04, clutch: old, saw: front-legs}
  - {on: 2026-03-18, clutch: C, saw: feeding}
`
	r := room(t, text)
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			on := day("2026-03-12").Add(i * 6)
			assert.Equal(t, room(t, text).Clutches(on), r.Clutches(on), "%s", on)
		})
	}
	all.Wait()
}

func TestRunningClutches(t *testing.T) {
	r := room(t, basic+`
clutches:
  - {id: ended, laid: 2026-02-10, dam: D, sire: A, ended: 2026-09-01}
  - {id: runs, laid: 2026-12-10, dam: D}
  - {id: later, laid: 2027-01-10, species: clockwork}
`)
	for _, row := range []struct{ on, want string }{
		{"2020-01-01", ""},
		{"2026-08-31", "ended"},
		{"2026-09-01", ""},
		{"2026-12-10", "runs"},
		{"2027-01-10", "runs later"},
	} {
		var ids []string
		for _, k := range r.Clutches(day(row.on)) {
			ids = append(ids, k.ID)
			assert.NotContains(t, asJSON(t, k), "null", "unknown parents are an empty list")
		}
		assert.Equal(t, row.want, strings.Join(ids, " "), row.on)
	}
	k, err := r.Clutch("ended", day("2027-01-01"))
	require.NoError(t, err, "asked for by its id it is told all the same")
	assert.Equal(t, day("2026-02-10"), k.Laid)
	_, err = r.Clutch("endet", day("2027-01-01"))
	var unknown *collection.UnknownError
	require.ErrorAs(t, err, &unknown)
	assert.EqualError(t, err, `there is no clutch "endet"; did you mean "ended"?`)
}

// TestPoorClutch is of a species of which nothing is known.
func TestPoorClutch(t *testing.T) {
	r := room(t, `
species:
  - {id: poor, name: Rana pauper}
clutches:
  - {id: C, laid: 2027-02-10, species: poor}
diary:
  - {on: 2027-02-12, clutch: C, saw: hatched}
`)
	k, err := r.Clutch("C", day("2027-03-01"))
	require.NoError(t, err)
	assert.Equal(t, []rearing.Stage{{Stage: "hatched", Window: exactly("2027-02-12"), Recorded: true, RestsOn: rearing.RestsOn{Words: "seen"}}}, k.Stages)
	k, err = r.Clutch("C", day("2027-02-11"))
	require.NoError(t, err)
	assert.Contains(t, asJSON(t, k), `"stages":[]`)
}
