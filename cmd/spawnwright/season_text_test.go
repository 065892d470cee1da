package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func TestProofText(t *testing.T) {
	for _, row := range []struct {
		name             string
		give             frogroom.Proof
		planned, leftOut int
		want             string
	}{
		{"proven", frogroom.Proof{Best: true, Cost: 9, Bound: 9}, 1, 0, "Proven best: no other days in this room come nearer to the wishes.\n"},
		{
			"one is left out, so that wishes are not all that counts",
			frogroom.Proof{Best: true, Cost: 9, Bound: 9},
			1, 1,
			"Proven best at these costs: no other days in this room, with these pairings left out or others, cost less.\n",
		},
		{
			"all are left out",
			frogroom.Proof{Best: true, Cost: 9, Bound: 9},
			0, 2,
			"Nothing is planned, and that is proven best at these costs: to plan any of them would cost more than to leave it out, or cannot be.\n",
		},
		{
			"a gap is rounded up, so that it is true",
			frogroom.Proof{Cost: 1000, Bound: 989},
			1, 0,
			"Not proven best: it is within 1.2 % of the best possible; with more --effort it may be proven, or better.\n",
		},
		{"a bound that says little", frogroom.Proof{Cost: 557, Bound: 277, Stopped: true}, 1, 0, "Stopped, and not proven best: it may cost more than twice as much as the best possible.\n"},
		{"nor one of nothing", frogroom.Proof{Cost: 1, Stopped: true}, 1, 0, "Stopped, and not proven best: it may cost more than twice as much as the best possible.\n"},
		{"a large gap has no fraction", frogroom.Proof{Cost: 557, Bound: 367, Stopped: true}, 1, 0, "Stopped, and not proven best: it is within 52 % of the best possible.\n"},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.Equal(t, row.want, proofText(frogroom.Season{Proof: &row.give, Pairings: make([]frogroom.PlannedPairing, row.planned), LeftOut: make([]string, row.leftOut)}))
		})
	}
}
