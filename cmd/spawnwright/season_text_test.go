package main

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
)

func TestProofText(t *testing.T) {
	for _, row := range []struct {
		name string
		give frogroom.Proof
		want string
	}{
		{"proven", frogroom.Proof{Best: true, Cost: 9, Bound: 9}, "Proven best: no other days in this room come nearer to the wishes.\n"},
		{
			"a gap is rounded up, so that it is true",
			frogroom.Proof{Cost: 1000, Bound: 989},
			"Not proven best: it is within 1.1 % of the best possible; with more --effort it may be proven, or better.\n",
		},
		{"a large gap has no fraction", frogroom.Proof{Cost: 557, Bound: 367, Stopped: true}, "Stopped, and not proven best: it is within 35 % of the best possible.\n"},
	} {
		t.Run(row.name, func(t *testing.T) {
			assert.Equal(t, row.want, proofText(row.give))
		})
	}
}
