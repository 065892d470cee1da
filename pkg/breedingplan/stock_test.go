package breedingplan_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/breedingplan"
	"github.com/spawnwright/spawnwright/pkg/pairing"
)

// TestWishesThatMakeNoSense are bad data, and give an error with the reason.
func TestWishesThatMakeNoSense(t *testing.T) {
	s := small()
	plan := func(w breedingplan.Wish) func() error {
		return func() error { _, err := s.Plan(w); return err }
	}
	outsider := func(o breedingplan.Outsider) func() error {
		return func() error { _, err := s.Exchange(breedingplan.Wish{}, o); return err }
	}
	for _, row := range []struct {
		why  string
		ask  func() error
		want string
	}{
		{"an animal that is not there", func() error { _, err := s.WhyPair("Quill", "Nobody", breedingplan.Wish{}); return err }, `there is no animal "Nobody"`},
		{"a species that is not there", plan(breedingplan.Wish{Species: "rana"}), `there is no species "rana"`},
		{"less than no pairing", plan(breedingplan.Wish{Pairings: -1}), "the number of pairings is -1, below 0"},
		{"less than no use of a female", plan(breedingplan.Wish{FemaleUses: -2}), "the number of pairings of one female is -2, below 0"},
		{
			"a rule that protects the animals", plan(breedingplan.Wish{Relax: []pairing.Rule{pairing.RuleHealth}}),
			`the rule "health" cannot be relaxed; these can: promised, age, length, weight, rest, clutches and inbreeding`,
		},
		{"a goal of nothing", plan(breedingplan.Wish{Goals: []breedingplan.Goal{{Of: "Ocala", Pairings: 1}}}), `there is no species or line "Ocala"`},
		{"an outsider that is more than inbred", outsider(breedingplan.Outsider{Inbreeding: 1.5}), "an animal from outside: an inbreeding coefficient is from 0 to 1"},
		{"an outsider of a species that is not there", outsider(breedingplan.Outsider{Species: "rana"}), `there is no species "rana"`},
	} {
		t.Run(row.why, func(t *testing.T) {
			err := row.ask()
			var wrong *breedingplan.WishError
			require.True(t, errors.As(err, &wrong), "%v", err)
			assert.EqualError(t, err, row.want)
		})
	}
}

// TestRelaxedByTheKeeper: what the keeper set aside and what is asked for are told apart.
func TestRelaxedByTheKeeper(t *testing.T) {
	s := small()
	s.Terms.Rules.Relaxed = []pairing.Rule{pairing.RuleRest, pairing.RuleAge}
	p, err := s.Plan(breedingplan.Wish{Relax: []pairing.Rule{pairing.RuleAge, pairing.RuleInbreeding}})
	require.NoError(t, err)
	assert.Equal(t, []breedingplan.RelaxedRule{{pairing.RuleAge, "asked"}, {pairing.RuleRest, "file"}, {pairing.RuleInbreeding, "asked"}}, p.Relaxed)
	assert.Equal(t, []pairing.Rule{pairing.RuleRest, pairing.RuleAge}, s.Terms.Rules.Relaxed, "the stock stays as it is")
	assert.Equal(t, 6, p.Species[0].Allowed, "father and daughter too")
}

func TestTermsThatAreNotWhole(t *testing.T) {
	s := small()
	s.Terms.On = 0
	assert.PanicsWithValue(t, "pairing: Terms without a date", func() { _, _ = s.Plan(breedingplan.Wish{}) })
}

func TestReasons(t *testing.T) {
	assert.Equal(t, []string{
		"no known ancestor in common; by rarity 1 of 2 males and 1 of 3 females",
		"", // two males
		"", // the female first
	}, small().Reasons([2]string{"Moss", "Fenna"}, [2]string{"Moss", "Quill"}, [2]string{"Fenna", "Moss"}))
	assert.Panics(t, func() { small().Reasons([2]string{"Moss", "nobody"}) })
}
