package kin_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/kin"
)

// TestWithYoung: young of a clutch share the unknown sire with its other young, also
// with those that are animals already.
func TestWithYoung(t *testing.T) {
	a := ancestry(t, basic+`
  - {id: K, clutch: C1}
clutches:
  - {id: C1, laid: 2024-03-01, dam: D, sire: [A, B]}
`)
	c1 := &collection.Clutch{ID: "C1", Dams: []string{"D"}, Sires: []string{"A", "B"}}
	c2 := &collection.Clutch{ID: "C2", Dams: []string{"E"}, Sires: []string{"A", "B"}, SireMix: collection.Several}
	p := a.WithYoung(kin.Brood{Clutch: c1, Young: 2}, kin.Brood{Clutch: c2, Young: 2})
	assert.Equal(t, a.Pedigree.Len()+4, p.Len())
	k, first := 4, a.Pedigree.Len()
	assert.InDelta(t, 1.0/4, p.Kinship(first, first+1), 1e-12, "full siblings, whoever the sire is")
	assert.InDelta(t, 1.0/4, p.Kinship(k, first), 1e-12, "and of the animal of this clutch")
	assert.InDelta(t, 1.0/16, p.Kinship(first, first+2), 1e-12, "half siblings in half of the cases")
	assert.InDelta(t, 1.0/16, p.Kinship(first+2, first+3)-1.0/8, 1e-12, "each egg its own sire: (1/4 + 1/8) / 2")
	assert.Equal(t, 5, a.Pedigree.Len(), "the pedigree itself stays")
}
