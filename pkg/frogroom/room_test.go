package frogroom_test

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/frogroom"
	"github.com/spawnwright/spawnwright/pkg/internal/clockwork"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// basic is the clockwork species and the founders, with more below.
const basic = clockwork.Basic

// room opens text that has to be good; see [clockwork.Spelled].
func room(t testing.TB, text string) *frogroom.Room {
	t.Helper()
	r, problems := frogroom.Read("room.yaml", []byte(clockwork.Spelled(text)))
	require.NotNil(t, r, "%v", problems)
	return r
}

func day(text string) civil.Date {
	d, err := civil.Parse(text)
	if err != nil {
		panic(err)
	}
	return d
}

func exactly(text string) civil.Window { return civil.Exactly(day(text)) }

func days(first, last string) civil.Span { return civil.Span{First: day(first), Last: day(last)} }

// messages gives the problems of a severity as one text a line.
func messages(ds strictyaml.Diagnostics, severity strictyaml.Severity) string {
	var lines []string
	for _, d := range ds {
		if d.Severity == severity {
			lines = append(lines, d.String())
		}
	}
	return strings.Join(lines, "\n")
}

func asJSON(t testing.TB, v any) string {
	t.Helper()
	data, err := json.Marshal(v)
	require.NoError(t, err)
	return string(data)
}
