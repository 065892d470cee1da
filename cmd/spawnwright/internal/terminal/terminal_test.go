package terminal_test

import (
	"bytes"
	"io"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/cmd/spawnwright/internal/terminal"
)

// device opens a character device, which is what a terminal is for the system.
func device(t *testing.T) *os.File {
	t.Helper()
	f, err := os.OpenFile(os.DevNull, os.O_WRONLY, 0)
	require.NoError(t, err)
	t.Cleanup(func() { _ = f.Close() })
	return f
}

func TestColourOnTerminal(t *testing.T) {
	t.Setenv("NO_COLOR", "")
	t.Setenv("TERM", "xterm")
	paint := terminal.For(device(t))
	assert.Equal(t, "\x1b[31mx\x1b[0m", paint.Bad("x"))
	assert.Equal(t, "\x1b[33mx\x1b[0m", paint.Doubt("x"))
	assert.Equal(t, "\x1b[2mx\x1b[0m", paint.Dim("x"))
	assert.Empty(t, paint.Bad(""), "nothing stays nothing")
}

func TestNoColour(t *testing.T) {
	file, err := os.Create(filepath.Join(t.TempDir(), "out"))
	require.NoError(t, err)
	defer file.Close()
	for name, row := range map[string]struct {
		noColor, term string
		to            io.Writer
	}{
		"NO_COLOR is set":   {"1", "xterm", device(t)},
		"a dumb terminal":   {"", "dumb", device(t)},
		"a file":            {"", "xterm", file},
		"no file at all":    {"", "xterm", &bytes.Buffer{}},
		"both, and no file": {"1", "dumb", &bytes.Buffer{}},
	} {
		t.Run(name, func(t *testing.T) {
			t.Setenv("NO_COLOR", row.noColor)
			t.Setenv("TERM", row.term)

			assert.Equal(t, "x", terminal.For(row.to).Bad("x"))
		})
	}
}
