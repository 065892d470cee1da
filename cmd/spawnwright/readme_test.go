package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/require"
)

// TestDocumentation runs every terminal session that the documentation shows and
// compares what it prints. A session is a fenced block whose first line begins
// with "$ spawnwright"; a line that is only … stands for any number of lines.
func TestDocumentation(t *testing.T) {
	t.Chdir("../..")
	t.Setenv("NO_COLOR", "1")
	pages, err := filepath.Glob("docs/*.md")
	require.NoError(t, err)
	ran := 0
	for _, page := range append(pages, "README.md") {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		for _, session := range sessions(string(text)) {
			ran++
			command, want, _ := strings.Cut(session, "\n")
			t.Run(page+"/"+command, func(t *testing.T) {
				args := strings.Fields(strings.TrimPrefix(command, "$ spawnwright"))
				var out bytes.Buffer
				run(args, strings.NewReader(""), &out, &out)
				if !matches(strings.Split(want, "\n"), strings.Split(out.String(), "\n")) {
					t.Error("the page shows something else than the program prints (-page +program):\n" + cmp.Diff(want, out.String()))
				}
			})
		}
	}
	require.Positive(t, ran, "no page shows a session")
}

// sessions gives the fenced blocks that show the program at work.
func sessions(page string) []string {
	var out []string
	for i, block := range strings.Split(page, "```") {
		_, body, found := strings.Cut(block, "\n")
		if i%2 == 1 && found && strings.HasPrefix(body, "$ spawnwright") {
			out = append(out, body)
		}
	}
	return out
}

// matches compares lines, where a line of the pattern that is only … stands for
// any number of them.
func matches(pattern, lines []string) bool {
	switch {
	case len(pattern) == 0:
		return len(lines) == 0
	case pattern[0] == "…":
		for skip := 0; skip <= len(lines); skip++ {
			if matches(pattern[1:], lines[skip:]) {
				return true
			}
		}
		return false
	}
	return len(lines) > 0 && pattern[0] == lines[0] && matches(pattern[1:], lines[1:])
}
