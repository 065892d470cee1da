//go:build !js && !wasip1

package wholefile_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

// TestMain makes this program the second writer of the tests below.
func TestMain(m *testing.M) {
	if path := os.Getenv("WHOLEFILE_ADD_TO"); path != "" {
		for i := 0; os.Getenv("WHOLEFILE_FOR_EVER") != "" || i < 5; i++ {
			if err := wholefile.Update(path, most, add); err != nil {
				fmt.Fprintln(os.Stderr, err)
				os.Exit(1)
			}
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// whole reports whether text is what add makes, with nothing missing.
func whole(text string) bool {
	lines := strings.SplitAfter(text, "\n")
	for i, l := range lines[:len(lines)-1] {
		if l != fmt.Sprintf("line %d %s\n", i, strings.Repeat("x", 300)) {
			return false
		}
	}
	return lines[len(lines)-1] == ""
}

func adder(t *testing.T, path string, env ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	require.NoError(t, err)
	c := exec.Command(self)
	c.Env = append(append(os.Environ(), "WHOLEFILE_ADD_TO="+path), env...)
	return c
}

// TestUpdateFromManyProcesses adds from twelve processes and from this one.
func TestUpdateFromManyProcesses(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	const processes = 12
	var group sync.WaitGroup
	for range processes {
		c := adder(t, path)
		var complaint bytes.Buffer
		c.Stderr = &complaint
		require.NoError(t, c.Start())
		group.Go(func() { assert.NoError(t, c.Wait(), complaint.String()) })
	}
	for range 5 {
		require.NoError(t, wholefile.Update(path, most, add))
	}
	group.Wait()
	text := read(t, path)
	assert.True(t, whole(text))
	assert.Equal(t, 5*(processes+1), strings.Count(text, "\n"), "an entry was lost")
}

// TestUpdateIsKilled ends a process that does nothing but update, at moments
// that are spread over what it does.
func TestUpdateIsKilled(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "file")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	before := 0
	for i := range 15 {
		c := adder(t, path, "WHOLEFILE_FOR_EVER=1")
		require.NoError(t, c.Start())
		time.Sleep(time.Duration(20+i*7) * time.Millisecond)
		require.NoError(t, c.Process.Kill())
		_ = c.Wait()
		text := read(t, path)
		require.True(t, whole(text), "a part of a file after kill %d", i)
		before = max(before, strings.Count(text, "\n"))
	}
	require.Positive(t, before, "the process never got to write")
	if runtime.GOOS != "windows" { // there the message names the file to delete
		require.NoError(t, wholefile.Update(path, most, add), "a killed process leaves no lock")
	}
}
