package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"

	"github.com/spf13/cobra"

	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/planner"
)

// writeProblem writes what was solved, with its plan where there is one, when a
// path says where to.
func (a *app) writeProblem(path string, s frogroom.Season) error {
	if path == "" {
		return nil
	}
	data, err := json.MarshalIndent(s.Solved, "", "  ")
	if err != nil {
		return inputError(err)
	}
	to := *a
	to.out = path
	return to.write(append(data, '\n'))
}

// checkPlan verifies the plan of a document, whoever made it.
func (a *app) checkPlan(path string, c *cobra.Command, args []string) error {
	for _, name := range []string{"dam", "sire", "start", "ready-by", "weeks", "effort", "announced", "problem", "format"} {
		if c.Flags().Changed(name) {
			return usagef("--check-plan only looks at its file; leave --%s out", name)
		}
	}
	if len(args) > 0 {
		return usagef("--check-plan only looks at its file; leave %s out", args[0])
	}
	file, err := os.Open(path)
	if err != nil {
		return fileError(err)
	}
	defer file.Close()
	d, err := planner.ReadDocument(file)
	var bad *planner.DocumentError
	switch {
	case errors.As(err, &bad):
		return inputError(fmt.Errorf("%s: %w", path, err))
	case err != nil:
		return fileError(err)
	case d.Plan == nil:
		return inputError(fmt.Errorf("%s has a problem and no plan", path))
	}
	a.inputs = append(a.inputs, path)
	var b bytes.Buffer
	faults := append(unplanned(d), planner.Check(d.Problem, *d.Plan)...)
	for _, fault := range faults {
		fmt.Fprintln(&b, fault)
	}
	if len(faults) == 0 {
		fmt.Fprintf(&b, "The plan keeps every limit on each of %d days; it costs %d, and its bound is %d.\n", d.Problem.Days, d.Plan.Cost, d.Plan.Bound)
	}
	if err := a.write(b.Bytes()); err != nil {
		return err
	}
	if len(faults) > 0 {
		return &exitError{code: exitInput}
	}
	return nil
}

// unplanned names the chains that must be planned and have no days.
func unplanned(d planner.Document) []string {
	var out []string
	for i, cycle := range d.Plan.Cycles {
		if len(cycle.Days) == 0 && i < len(d.Problem.Chains) && d.Problem.Chains[i].LeaveOut == 0 {
			out = append(out, fmt.Sprintf("%s: it must be planned, and the plan has no days for it", cycle.ID))
		}
	}
	return out
}
