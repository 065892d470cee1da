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
// with "$ spawnwright" or "$ cp"; each line that begins with "$ " is a command, and a
// line that is only … stands for any number of lines. "$ cp FROM TO" copies a file
// into an empty folder, in which the rest of the page is played.
func TestDocumentation(t *testing.T) {
	t.Chdir("../..")
	t.Setenv("NO_COLOR", "1")
	pages, err := filepath.Glob("docs/*.md")
	require.NoError(t, err)
	ran := 0
	for _, page := range append(pages, "README.md") {
		text, err := os.ReadFile(page)
		require.NoError(t, err)
		t.Run(page, func(t *testing.T) {
			for _, session := range sessions(string(text)) {
				ran++
				play(t, session)
			}
		})
	}
	require.Positive(t, ran, "no page shows a session")
}

// play runs the commands of a session one after the other.
func play(t *testing.T, session string) {
	for part := range strings.SplitSeq("\n"+session, "\n$ ") {
		command, want, _ := strings.Cut(part, "\n")
		words := shellWords(command)
		switch {
		case len(words) == 0:
		case words[0] == "cp":
			data, err := os.ReadFile(words[1])
			require.NoError(t, err)
			t.Chdir(t.TempDir())
			require.NoError(t, os.WriteFile(words[2], data, 0o600))
		default:
			t.Run(command, func(t *testing.T) {
				var out bytes.Buffer
				run(words[1:], strings.NewReader(""), &out, &out)
				got := strings.TrimSuffix(out.String(), "\n")
				if want = strings.TrimSuffix(want, "\n"); !matches(strings.Split(want, "\n"), strings.Split(got, "\n")) {
					t.Error("the page shows something else than the program prints (-page +program):\n" + cmp.Diff(want, got))
				}
			})
		}
	}
}

// shellWords splits a command at its blanks, but not within double quotes.
func shellWords(command string) []string {
	var words []string
	for i, part := range strings.Split(command, `"`) {
		if i%2 == 1 {
			words = append(words, part)
		} else {
			words = append(words, strings.Fields(part)...)
		}
	}
	return words
}

// sessions gives the fenced blocks that show the program at work.
func sessions(page string) []string {
	var out []string
	for i, block := range strings.Split(page, "```") {
		_, body, found := strings.Cut(block, "\n")
		if i%2 == 1 && found && (strings.HasPrefix(body, "$ spawnwright") || strings.HasPrefix(body, "$ cp ")) {
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
