package pedigree_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

// realPedigree reads a table of real animals or people. They are not part of the
// project: the folder that holds them is named in the environment.
func realPedigree(t *testing.T, name string) (*pedigree.Pedigree, []pedigree.Record) {
	t.Helper()
	folder := os.Getenv("SPAWNWRIGHT_PEDIGREES")
	if folder == "" {
		t.Skip("SPAWNWRIGHT_PEDIGREES does not name the folder of real pedigrees")
	}
	file, err := os.Open(filepath.Join(folder, name))
	require.NoError(t, err)
	defer file.Close()
	table, err := parentage.Read(file, parentage.Options{})
	require.NoError(t, err)
	p, err := pedigree.New(table.Records)
	require.NoError(t, err)
	return p, table.Records
}

// Berra, Alvarez and Ceballos 2010, BioScience 60:376: F is .0630 for the
// children of Charles Darwin and .1255 for those of Henry Wedgwood.
func TestDarwinFamily(t *testing.T) {
	p, _ := realPedigree(t, "darwin.csv")
	of := func(id string) float64 { return p.Inbreeding(at(t, p, id)) }
	assert.Equal(t, 129./2048, of("William Erasmus Darwin"))
	assert.Equal(t, 257./2048, of("Louisa Frances Wedgwdood")) // so in the table
	assert.Equal(t, 1./16, of("Frances Julia Wedgwood"))
	couple := p.ExpectedInbreeding([]int{at(t, p, "Charles Robert Darwin")}, []int{at(t, p, "Emma Wedgwood")})
	assert.InDelta(t, .0630, couple, .00005)
	couple = p.ExpectedInbreeding([]int{at(t, p, "Henry Wedgwood")}, []int{at(t, p, "Jessie Wedgwood")})
	assert.InDelta(t, .1255, couple, .00005)
	assert.Equal(t, 1./256, kinship(t, p, "Josiah Wedgwood I", "Sarah Wedgwood"))
}

// Captive ungulates: every kinship against the plain table.
func TestRealPedigrees(t *testing.T) {
	for _, name := range []string{"darwin.csv", "atlas.csv", "dama.csv", "dorcas.csv", "arrui.csv"} {
		t.Run(name, func(t *testing.T) {
			p, records := realPedigree(t, name)
			want := expected(records, nil)
			for i := range p.Len() {
				assert.InDelta(t, 2*want[i][i]-1, p.Inbreeding(i), 1e-12, "F of %s", p.ID(i))
				assert.InDeltaSlice(t, want[i], p.KinshipTo(i), 1e-12, "kinship to %s", p.ID(i))
			}
			t.Logf("%d animals", p.Len())
		})
	}
}
