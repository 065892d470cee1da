package diversity_test

import (
	"encoding/csv"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/diversity"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

func TestSummary(t *testing.T) {
	// Mrode's example, the two youngest living: see the other tests.
	p := build(t, mrode)
	living := numbers(t, p, "5 6")
	drops := diversity.Drops{Count: 500, Seed: 2}
	size, ok := diversity.RealisedSize(p, living)
	require.True(t, ok)
	value := func(x float64) *float64 { return &x }
	want := diversity.Summary{
		Animals: 2, Founders: 2,
		MeanInbreeding: .125, MaxInbreeding: .125,
		MeanKinship: (1.125 + 1.125 + 2*.6875) / 8, GeneDiversity: 1 - (1.125+1.125+2*.6875)/8,
		FounderEquivalents:               value(diversity.FounderEquivalents(p, living)),
		AncestorEquivalents:              value(diversity.AncestorEquivalents(p, living)),
		FounderGenomeEquivalents:         value(4 / (1.125 + 1.125 + 2*.6875)),
		FounderGenomeEquivalentsRetained: value(diversity.Drop(p, living, drops).FounderGenomeEquivalents()),
		CompleteGenerations:              (1.75 + 1.875) / 2,
		UnknownParents:                   (1./4 + 1./8) / 2,
		EffectiveSize:                    value(size.Size), EffectiveSizeSE: value(size.StandardError), EffectiveSizeAnimals: 2,
		Drops: 500, Seed: 2,
	}
	if diff := cmp.Diff(want, diversity.Summarise(p, living, drops), closeTo); diff != "" {
		t.Errorf("summary (-want +got):\n%s", diff)
	}
}

var closeTo = cmp.Comparer(func(x, y float64) bool { return x-y < rounding && y-x < rounding })

// JSON has no number for what does not exist: not 0, not infinity.
func TestSummaryAsJSON(t *testing.T) {
	const always = "animals founders mean_inbreeding max_inbreeding mean_kinship gene_diversity complete_generations " +
		"unknown_parents uncertain effective_size_animals drops seed "
	const equivalents = "founder_equivalents ancestor_equivalents founder_genome_equivalents founder_genome_equivalents_retained "
	for _, test := range []struct{ name, living, want string }{
		{"inbred", "5 6", always + equivalents + "effective_size effective_size_se"},
		{"one inbred", "6", always + equivalents + "effective_size"},
		{"not inbred", "1 3 4", always + equivalents},
		{"nobody", "", always},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := build(t, mrode)
			text, err := json.Marshal(diversity.Summarise(p, numbers(t, p, test.living), diversity.Drops{Count: 10}))
			require.NoError(t, err)
			var got map[string]*float64
			require.NoError(t, json.Unmarshal(text, &got))
			var keys []string
			for key, value := range got {
				if value != nil {
					keys = append(keys, key)
				}
			}
			assert.Len(t, got, len(strings.Fields(always+equivalents))+2, "every key is there, if only as null")
			assert.ElementsMatch(t, strings.Fields(test.want), keys)
		})
	}
}

func TestSummaryCountsWhatIsUncertain(t *testing.T) {
	p := build(t, "A,0,0 B,0,0 D,0,0 x,m,D y,A,D", pedigree.Group{ID: "m", Candidates: []pedigree.Candidate{{ID: "A"}, {ID: "B"}}})
	assert.Equal(t, 1, diversity.Summarise(p, everyone(p), diversity.Drops{Count: 1}).Uncertain)
}

// Real animals and people, which are not part of the project: the folder that
// holds them is named in the environment. They have missing parents, animals with
// one parent, and rows out of order.
func TestSummaryOfRealPedigrees(t *testing.T) {
	folder := os.Getenv("SPAWNWRIGHT_PEDIGREES")
	if folder == "" {
		t.Skip("SPAWNWRIGHT_PEDIGREES does not name the folder of real pedigrees")
	}
	for _, name := range []string{"darwin.csv", "atlas.csv", "dama.csv", "dorcas.csv", "arrui.csv"} {
		t.Run(name, func(t *testing.T) {
			p := readReal(t, filepath.Join(folder, name))
			for _, living := range [][]int{everyone(p), everyone(p)[p.Len()*3/4:]} {
				s := diversity.Summarise(p, living, diversity.Drops{Count: 200, Seed: 1})
				text, err := json.Marshal(s)
				require.NoError(t, err)
				t.Logf("%s", text)
				assert.LessOrEqual(t, *s.FounderGenomeEquivalents, *s.AncestorEquivalents)
				assert.LessOrEqual(t, *s.AncestorEquivalents, *s.FounderEquivalents)
				assert.LessOrEqual(t, *s.FounderGenomeEquivalents, *s.FounderGenomeEquivalentsRetained)
				sum := 0.0
				for _, c := range diversity.PartialInbreeding(p, living) {
					sum += c.Share
				}
				assert.InDelta(t, s.MeanInbreeding, sum, 1e-12)
			}
		})
	}
}

func readReal(t *testing.T, file string) *pedigree.Pedigree {
	t.Helper()
	f, err := os.Open(file)
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	column := func(names ...string) int {
		return slices.IndexFunc(rows[0], func(head string) bool { return slices.Contains(names, strings.ToLower(head)) })
	}
	id, sire, dam := column("id", "individual"), column("sire", "father"), column("dam", "mother")
	known := map[string]bool{}
	for _, row := range rows[1:] {
		known[row[id]] = true
	}
	var records []pedigree.Record
	parent := func(word string) string {
		if slices.Contains([]string{"", "0", "na", "unk", "unknown", "."}, strings.ToLower(word)) {
			return ""
		}
		if !known[word] {
			known[word] = true
			records = append(records, pedigree.Record{ID: word})
		}
		return word
	}
	for _, row := range rows[1:] {
		records = append(records, pedigree.Record{ID: row[id], Sire: parent(row[sire]), Dam: parent(row[dam])})
	}
	p, err := pedigree.New(records)
	require.NoError(t, err)
	return p
}
