package planner

import (
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spawnwright/spawnwright/pkg/civil"
)

// Schema is the version of the JSON form of a [Document].
const Schema = 1

// Document is a problem and, when it was planned, its plan: what another solver
// or a checker needs, as one JSON document. The keys are those of the types, and
// described in docs/season-model.md. [ReadDocument] reads it.
type Document struct {
	Problem Problem
	Plan    *Plan  // nil when there is none
	Solver  string // who made the plan; may be empty
}

// written is the JSON form of a document.
type written struct {
	Schema  int     `json:"schema"`
	Problem Problem `json:"problem"`
	Solver  string  `json:"solver,omitempty"`
	Plan    *Plan   `json:"plan,omitempty"`
}

// MarshalJSON writes the document with its schema, and lists that are empty as
// such.
func (d Document) MarshalJSON() ([]byte, error) {
	w := written{Schema, d.Problem, d.Solver, d.Plan}
	if w.Problem.Resources == nil {
		w.Problem.Resources = []Resource{}
	}
	if w.Problem.Chains == nil {
		w.Problem.Chains = []Chain{}
	}
	if d.Plan != nil {
		plan := *d.Plan
		plan.Cycles = make([]Cycle, len(d.Plan.Cycles))
		for i, c := range d.Plan.Cycles {
			if plan.Cycles[i] = c; c.Days == nil {
				plan.Cycles[i].Days = []civil.Date{}
			}
		}
		w.Plan = &plan
	}
	return json.Marshal(w)
}

// DocumentError is what is wrong with a document; Faults is never empty.
type DocumentError struct{ Faults []Fault }

// Fault is one thing that is wrong with a document.
type Fault struct {
	Place   string // such as problem.chains[2].phases[0].min; lists count from 0
	Problem string
}

// Error gives a line for each fault.
func (e *DocumentError) Error() string {
	lines := make([]string, len(e.Faults))
	for i, f := range e.Faults {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// String gives place and problem.
func (f Fault) String() string {
	if f.Place == "" {
		return f.Problem
	}
	return fmt.Sprintf("%s: %s", f.Place, f.Problem)
}
