package collection_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// must reads a file in which nothing is wrong.
func must(t *testing.T, text string) *collection.Collection {
	t.Helper()
	c, problems := collection.Read("f", []byte(text))
	require.Empty(t, problems)
	return c
}

func full(t *testing.T) *collection.Collection {
	t.Helper()
	c, problems, err := collection.Load(filepath.Join("testdata", "full.yaml"))
	require.NoError(t, err)
	require.Empty(t, problems)
	return c
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func at(line, column int) strictyaml.Position { return strictyaml.Position{Line: line, Column: column} }

func known[T any](v T) collection.Given[T] { return collection.Given[T]{Value: v, Known: true} }

// compare leaves profiles to their own package.
var compare = cmp.Options{
	cmpopts.IgnoreUnexported(collection.Collection{}),
	cmpopts.IgnoreFields(collection.Collection{}, "Species"),
	cmpopts.EquateEmpty(),
	cmpopts.EquateApprox(0, 1e-9),
}

func TestReadMinimal(t *testing.T) {
	c := must(t, "animals: []\n")
	want := &collection.Collection{
		Shipping: collection.Shipping{
			Weekdays:    []time.Weekday{time.Monday, time.Tuesday, time.Wednesday, time.Thursday},
			TransitDays: 1,
		},
		Rules: collection.Rules{WarnInbreeding: 0.0625, MaxInbreeding: 0.125, SpacePct: [2]int{10, 90}},
	}
	if diff := cmp.Diff(want, c, compare); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestReadFullRoom(t *testing.T) {
	c := full(t)
	want := &collection.Collection{
		Keeper:     "Lindenhof frog room",
		Holidays:   "de-by",
		HolidaysAt: strictyaml.Position{Line: 3, Column: 11},
		Away:       []civil.Span{{First: day("2027-02-13"), Last: day("2027-02-13")}, {First: day("2027-05-08"), Last: day("2027-05-16")}},
		Shipping:   collection.Shipping{Weekdays: []time.Weekday{time.Monday, time.Wednesday}, TransitDays: 2, Closed: []civil.Span{{First: day("2027-12-20"), Last: day("2027-12-24")}}},
		Targets: []collection.Target{
			{Name: "autumn show", On: day("2027-09-18"), Species: "agalychnis-callidryas", Froglets: 60, CertaintyPct: 90, LateCost: known(20), EarlyCost: known(0), At: at(7, 12)},
			{Name: "club day", On: day("2027-10-02"), Species: "hyperolius-sp", Froglets: 5, CertaintyPct: 80, At: at(8, 12)},
		},
		Equipment: collection.Equipment{
			RainChambers:  known(2),
			CoolingPlaces: known(3),
			TadpoleTubs:   collection.Tubs{Count: known(24), Litres: known(12.5), WaterC: known(25.0)},
			FrogletBins:   collection.Bins{Count: known(30), Froglets: known(10)},
			MinutesADay:   known(120),

			RetryAfterDays: known(14),
		},
		Rules: collection.Rules{
			WarnInbreeding: 0.05, MaxInbreeding: 0.1, PairingsASeason: known(8), ClutchesASeason: 2,
			Relax: []collection.RelaxedRule{{Name: "rest", At: at(16, 105)}, {Name: "weight", At: at(16, 111)}}, SpacePct: [2]int{20, 75},
		},
		Card: collection.Card{Contact: "lindenhof@example.org"},
	}
	c.Animals, c.Clutches, c.Pairings, c.Diary = nil, nil, nil, nil
	if diff := cmp.Diff(want, c, compare); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestReadFullAnimals(t *testing.T) {
	const frog = "agalychnis-callidryas"
	males := []string{"007", "no"}
	want := []collection.Animal{
		{
			ID: "007", Name: "Otto", Species: frog, Sex: collection.Male, Line: "Tarcoles", Locality: "Costa Rica",
			Acquired: day("2019-04-10"), Died: day("2024-09-02"), WeightG: 0.25 * 28.349523125, At: at(25, 10),
		},
		{
			ID: "7", Species: frog, Sex: collection.Female, Line: "Tarcoles", Locality: "Costa Rica",
			Hatched: day("2018-01-02"), OutOfWater: day("2018-03-04"), LengthMM: 65, Place: "tank-1", Promised: "nobody", SexSign: "laid eggs", Food: "crickets",
			Holds: []collection.Hold{
				{Kind: collection.Health, Until: day("2027-03-01"), Note: "thin", At: at(26, 237)},
				{Kind: collection.Quarantine, From: day("2027-01-01"), At: at(26, 284)},
			},
			Note: "old\nand kept", At: at(26, 10),
		},
		{ID: "no", Species: frog, Sex: collection.Male, Left: day("2026-01-01"), At: at(27, 10)},
		{
			ID: "1e3", Species: frog, Sex: collection.Female, Line: "Tarcoles", // the dam's; the sires' localities differ
			Hatched: day("2021-05-07"), OutOfWater: day("2021-07-11"), Sires: males, Dams: []string{"7"}, Clutch: "C-21", At: at(28, 10),
		},
		{
			ID: "Y", Species: frog, Sex: collection.UnknownSex, Sires: males, Dams: []string{"7"},
			Died: day("2026-04-30"), WeightG: 5.5, LengthMM: 50, At: at(29, 10),
		},
		{
			ID: "Z", Species: frog, Sex: collection.UnknownSex, Line: "new", Locality: "garden",
			Hatched: day("2021-05-09"), OutOfWater: day("2021-07-30"), Sires: males, Dams: []string{"7"}, Clutch: "C-21", At: at(30, 10),
		},
		{ // it died as a tadpole, before all of its clutch had left the water
			ID: "T", Species: frog, Sex: collection.UnknownSex, Line: "Tarcoles",
			Hatched: day("2021-05-07"), Died: day("2021-06-30"), Sires: males, Dams: []string{"7"}, Clutch: "C-21", At: at(31, 10),
		},
		{ID: "R1", Species: "hyperolius-sp", Sex: collection.Male, At: at(32, 10)},
		{ID: "R2", Species: "hyperolius-sp", Sex: collection.Female, At: at(33, 10)},
	}
	if diff := cmp.Diff(want, full(t).Animals, compare); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestReadFullClutchesAndPairings(t *testing.T) {
	c := full(t)
	clutches := []collection.Clutch{
		{
			ID: "C-21", Species: "agalychnis-callidryas", Laid: day("2021-05-01"), Sires: []string{"007", "no"}, Dams: []string{"7"},
			SireMix: collection.Several, DamMix: collection.One, Eggs: 40, Line: "Tarcoles", Place: "tub-3",
			Ended: day("2021-09-30"), Food: "nettle", Note: "first",
			Promised: []collection.Promise{{To: "Anna", Count: 4, At: at(35, 146)}, {To: "the zoo", Count: 2, At: at(35, 168)}}, At: at(35, 10),
		},
		{
			ID: "C-27", Species: "hyperolius-sp", Laid: day("2027-03-01"), Sires: []string{"R1"}, Dams: []string{"R2"},
			SireMix: collection.One, DamMix: collection.One, Pairing: "P-27", Line: "reds", At: at(36, 10),
		},
		{
			ID: "C-x", Species: "theloderma-corticale",
			SireMix: collection.One, DamMix: collection.One, At: at(37, 10),
		},
	}
	if diff := cmp.Diff(clutches, c.Clutches, compare); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	reds := collection.Pairing{Species: "agalychnis-callidryas", Sires: []string{"no"}, Dams: []string{"1e3"}}
	p28, p29, p30 := reds, reds, reds
	p28.ID, p28.ReadyBy, p28.CertaintyPct, p28.At = "P-28", day("2028-10-01"), 70, at(40, 10)
	p28.NotBefore, p28.LeaveOutCost, p28.Raise = day("2028-01-05"), known(300), known(60)
	p29.ID, p29.ReadyBy, p29.CertaintyPct, p29.At = "P-29", day("2028-10-01"), 80, at(41, 10)
	p30.ID, p30.Start, p30.At = "P-30", day("2027-01-09"), at(42, 10)
	pairings := []collection.Pairing{
		{
			ID: "P-27", Species: "hyperolius-sp", Sires: []string{"R1"}, Dams: []string{"R2"}, Target: "club day",
			ReadyBy: day("2027-10-02"), CertaintyPct: 80, Note: "again", At: at(39, 10),
		},
		p28, p29, p30,
	}
	if diff := cmp.Diff(pairings, c.Pairings, compare); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestReadFullDiary(t *testing.T) {
	want := []collection.Entry{
		{On: day("2021-07-01"), Clutch: "C-21", Saw: "out-of-water", Some: true, Count: known(3), Losses: 2, At: at(44, 5)},
		{On: day("2021-05-07"), Clutch: "C-21", Saw: "hatched", Count: known(38), At: at(45, 5)},
		{On: day("2021-07-11"), Clutch: "C-21", Gosner: 46, MovedTo: "bin-1", WaterC: known(0.0), AirC: known(20.0), At: at(46, 5)},
		{On: day("2026-03-30"), Animal: "1e3", WeightG: 12.4, LengthMM: 61, MovedTo: "tank-2", At: at(47, 5)},
		{On: day("2026-04-30"), Animal: "1e3", WeightG: 13, At: at(48, 5)},
		{On: day("2026-04-30"), Animal: "Y", Status: collection.Died, Note: "old age", At: at(49, 5)},
		{On: day("2027-02-01"), Pairing: "P-27", Began: species.WarmUp, At: at(50, 5)},
		{On: day("2027-01-01"), Pairing: "P-27", Began: species.Conditioning, At: at(51, 5)},
		{On: day("2021-06-01"), Place: "tub-3", WaterC: known(24.5), At: at(52, 5)},
		{On: day("2021-08-01"), Place: "tub-3", WaterC: known(20.0), At: at(53, 5)},
		{On: day("2021-08-01"), Place: "bin-1", AirC: known(23.0), At: at(54, 5)},
		{On: day("2021-04-30"), Place: "tub-3", WaterC: known(22.0), At: at(55, 5)},
		{On: day("2021-10-01"), Place: "bin-1", AirC: known(19.0), At: at(56, 5)},
		{On: day("2021-09-01"), Clutch: "C-21", Sold: 3, To: "Anna", HeldBack: 2, At: at(57, 5)},
		{On: day("2027-02-01"), Animal: "7", Hold: collection.Quarantine, Until: day("2027-02-20"), Ate: true, At: at(58, 5)},
		{On: day("2027-02-10"), Animal: "7", Hold: collection.Lifted, At: at(59, 5)},
		{On: day("2026-01-01"), Animal: "no", Status: collection.Left, To: "Bernd", At: at(60, 5)},
		{On: day("2022-05-03"), Clutch: "C-x", Saw: "hatched", At: at(61, 5)},
	}
	if diff := cmp.Diff(want, full(t).Diary, compare); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestProfiles(t *testing.T) {
	c := full(t)
	var ids []string
	for _, p := range c.Species {
		ids = append(ids, p.ID)
	}
	assert.Equal(t, []string{"agalychnis-callidryas", "hyperolius-sp", "theloderma-corticale"}, ids, "those that are used or brought, sorted")
	own, ok := c.Profile("theloderma-corticale")
	require.True(t, ok)
	assert.Equal(t, 0.5, own.TadpolesPerLitre.Value, "the keeper's change")
	_, ok = c.Profile("hyla-cinerea")
	assert.False(t, ok, "built in, but nobody in the file is one")
}

func TestReadSameForAnyLineEndsAndMark(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("testdata", "full.yaml"))
	require.NoError(t, err)
	want := full(t)
	for name, text := range map[string]string{
		"CRLF": strings.ReplaceAll(string(data), "\n", "\r\n"),
		"BOM":  "\ufeff" + string(data),
	} {
		t.Run(name, func(t *testing.T) {
			if diff := cmp.Diff(want, must(t, text), compare); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
	_, problems := collection.Read("f", []byte("\ufeffkeeper: a\r\nanimals:\r\n  - {id: A}\r\n"))
	require.Len(t, problems, 1)
	assert.Equal(t, at(3, 10), at(problems[0].Line, problems[0].Column))
	assert.Equal(t, "  - {id: A}", problems[0].Excerpt)
}

func TestRulesThatAreHalfGiven(t *testing.T) {
	for _, row := range []struct {
		text       string
		warn, most float64
		reason     string
	}{
		{"{}", 0.0625, 0.125, "defaults"},
		{"{max_inbreeding: 0.03}", 0.03, 0.03, "the warning does not come after the refusal"},
		{"{max_inbreeding: 0.25}", 0.0625, 0.25, "the default of the other"},
		{"{warn_inbreeding: 0.2}", 0.2, 0.2, "the refusal does not come before the warning"},
		{"{warn_inbreeding: 0}", 0, 0.125, "zero is a value"},
	} {
		c := must(t, "rules: "+row.text+"\n")
		assert.Equal(t, row.warn, c.Rules.WarnInbreeding, row.reason)
		assert.Equal(t, row.most, c.Rules.MaxInbreeding, row.reason)
	}
}

func TestLoad(t *testing.T) {
	_, _, err := collection.Load(filepath.Join(t.TempDir(), "none.yaml"))
	var missing *fs.PathError
	require.True(t, errors.As(err, &missing))
	require.ErrorIs(t, err, fs.ErrNotExist)

	path := filepath.Join(t.TempDir(), "f.yaml")
	require.NoError(t, os.WriteFile(path, []byte("keeper: Kellerbach\nanimals: 7\n"), 0o600))
	c, problems, err := collection.Load(path)
	require.NoError(t, err)
	assert.Nil(t, c)
	require.Len(t, problems, 1)
	assert.Equal(t, path, problems[0].File)

	large, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, large.Truncate(10*strictyaml.MaxBytes))
	require.NoError(t, large.Close())
	_, problems, err = collection.Load(path)
	require.NoError(t, err)
	require.Len(t, problems, 1)
	assert.Contains(t, problems[0].Message, fmt.Sprint(strictyaml.MaxBytes+1), "no more was read")
}
