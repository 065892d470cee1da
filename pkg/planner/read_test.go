package planner_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/planner"
)

// smallDocument is a document with its plan, all on one line.
const smallDocument = `{"schema":1,"problem":{"first":"2027-01-04","days":30,` +
	`"resources":[{"name":"rain chamber","count":1}],` +
	`"taken":[{"resource":"rain chamber","span":{"first":"2027-01-04","last":"2027-01-05"},"amount":1}],` +
	`"chains":[{"id":"P1","phases":[{"name":"rain","min":3,"usual":5,"max":6,"uses":[{"resource":"rain chamber","amount":1}]}],` +
	`"wishes":[{"phase":"rain","on":"2027-01-10","early":1,"late":4}],"leave_out":9}]},` +
	`"plan":{"cycles":[{"id":"P1","days":["2027-01-10","2027-01-15"]}],"cost":0,"bound":0,"missing":1000,"proven":true}}`

func TestReadDocument(t *testing.T) {
	d, err := planner.ReadDocument(strings.NewReader(smallDocument))
	require.NoError(t, err)
	assert.Empty(t, planner.Check(d.Problem, *d.Plan))
	text, err := json.Marshal(d)
	require.NoError(t, err)
	assert.Equal(t, smallDocument, string(text))
}

// TestReadDocumentFaults changes a piece of a good document.
func TestReadDocumentFaults(t *testing.T) {
	rows := []struct{ name, old, with, want string }{
		{"another schema", `"schema":1`, `"schema":2`, "schema: 2 is not a schema known here, only 1"},
		{"unknown key", `"days":30`, `"days":30,"hours":{"a":[1,{}]}`, "problem.hours: there is no such key"},
		{"key in capitals", `"days":30`, `"Days":30`, "problem.Days: there is no such key\nproblem.days: is missing"},
		{"key twice", `"days":30`, `"days":30,"days":31`, "problem.days: stands twice"},
		{"missing phases", `"phases":[{"name":"rain","min":3,"usual":5,"max":6,"uses":[{"resource":"rain chamber","amount":1}]}],`, ``, "problem.chains[0].phases: is missing"},
		{"no phases", `{"name":"rain","min":3,"usual":5,"max":6,"uses":[{"resource":"rain chamber","amount":1}]}`, ``, "problem.chains[0]: chain P1 has no phases\nproblem.chains[0].wishes[0]: chain P1 has no phase \"rain\""},
		{"a text for a number", `"days":30`, `"days":"30"`, "problem.days: has to be a whole number"},
		{"half a day", `"days":30`, `"days":30.5`, "problem.days: 30.5 is not a whole number, or out of range"},
		{"too many days", `"days":30`, `"days":1000000`, "problem.days: 1000000 days cannot be planned, only 1 to 20000"},
		{"out of range", `"days":30`, `"days":1e99`, "problem.days: 1e99 is not a whole number, or out of range"},
		{"null", `"days":30`, `"days":null`, "problem.days: has to be a whole number"},
		{"no list", `"chains":[`, `"chains":{},"taken":[`, "problem.chains: has to be a list\nproblem.taken: stands twice\nproblem.taken[0].id: there is no such key"},
		{"no object", `"problem":{`, `"problem":[],"other":{`, "problem: has to be an object\nother: there is no such key"},
		{"no such day", `"2027-01-10","early"`, `"2027-02-29","early"`, `problem.chains[0].wishes[0].on: there is no date "2027-02-29"; dates are written YYYY-MM-DD`},
		{"no day", `"2027-01-10","early"`, `"","early"`, `problem.chains[0].wishes[0].on: there is no date ""; dates are written YYYY-MM-DD`},
		{"a number for a day", `"2027-01-10","early"`, `20270110,"early"`, "problem.chains[0].wishes[0].on: has to be a date as YYYY-MM-DD"},
		{"a span that ends before it begins", `"last":"2027-01-05"`, `"last":"2027-01-03"`, "problem.taken[0].span: 2027-01-04 is after 2027-01-03"},
		{"lengths out of order", `"min":3`, `"min":7`, "problem.chains[0].phases[0]: chain P1 has rain of 7, usually 5, at most 6 days"},
		{"a plan without its cost", `"cost":0,`, ``, "plan.cost: is missing"},
		{"half a plan", `"proven":true`, `"proven":1`, "plan.proven: has to be true or false"},
		{"escape sequence", `"P1","phases"`, `"P\u001b1","phases"`, `problem.chains[0].id: "P\x1b1" has signs that cannot be printed`},
		{"cut off", `"missing":1000,"proven":true}}`, ``, "plan: line 1: the document ends too early"},
		{"not JSON", `"days":30`, "\n\"days\":!30", "problem.days: line 2: this is not JSON: invalid character '!' looking for beginning of value"},
		{"something after it", `"proven":true}}`, `"proven":true}} {}`, "something follows after the end of the document"},
		{"nothing", smallDocument, ``, "line 1: the document ends too early"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			require.Equal(t, 1, strings.Count(smallDocument, row.old))
			_, err := planner.ReadDocument(strings.NewReader(strings.Replace(smallDocument, row.old, row.with, 1)))
			var bad *planner.DocumentError
			require.ErrorAs(t, err, &bad)
			assert.True(t, strings.HasPrefix(bad.Error(), row.want), "got: %s", bad)
		})
	}
}

func TestReadDocumentListsTwentyFaults(t *testing.T) {
	_, err := planner.ReadDocument(strings.NewReader(`{"problem":{"chains":[` + strings.Repeat("0,", 1_000_000) + "0]}}"))
	var bad *planner.DocumentError
	require.ErrorAs(t, err, &bad)
	assert.Len(t, bad.Faults, 20)
}

// FuzzReadDocument: no text makes a panic, and what was read is written and read
// again as it was, and can be checked and planned.
func FuzzReadDocument(f *testing.F) {
	f.Add([]byte(smallDocument))
	f.Add([]byte(`{"schema":1,"problem":{"first":"9999-12-30","days":2,"resources":[],"chains":[]}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		d, err := planner.ReadDocument(bytes.NewReader(text))
		if err != nil {
			var bad *planner.DocumentError
			require.ErrorAs(t, err, &bad)
			return
		}
		again, err := json.Marshal(d)
		require.NoError(t, err)
		e, err := planner.ReadDocument(bytes.NewReader(again))
		require.NoError(t, err)
		require.Empty(t, cmp.Diff(d, e))
		if d.Plan != nil {
			planner.Check(d.Problem, *d.Plan)
		}
		if d.Problem.Days*len(d.Problem.Chains) < 200 {
			plan := planner.Solve(t.Context(), d.Problem, planner.Options{Steps: 20})
			require.Empty(t, planner.Check(d.Problem, plan))
		}
	})
}
