package wholefile_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
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

const most = 1 << 20

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

// add adds a line that says how many there were, and starts again where the
// file has grown large.
func add(old []byte) ([]byte, error) {
	if len(old) > 1<<19 {
		old = nil
	}
	time.Sleep(2 * time.Millisecond) // long enough for others to wait
	line := fmt.Sprintf("line %d %s\n", bytes.Count(old, []byte("\n")), strings.Repeat("x", 300))
	return append(bytes.Clone(old), line...), nil
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

func TestUpdate(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, []byte("one\n"), 0o640))
	err := wholefile.Update(path, most, func(old []byte) ([]byte, error) {
		return append(bytes.Clone(old), "two\n"...), nil
	})
	require.NoError(t, err)
	assert.Equal(t, "one\ntwo\n", read(t, path))
	assert.Equal(t, []string{"file"}, names(t, filepath.Dir(path)), "neither a lock nor a temporary file stays")
}

func TestUpdateRefuses(t *testing.T) {
	own := errors.New("own")
	same := func(old []byte) ([]byte, error) { return old, nil }
	for _, row := range []struct {
		name, reason string
		path         string
		change       func(path string) func([]byte) ([]byte, error)
		cause        error
	}{
		{"own error", "what change says is passed on", "file", func(string) func([]byte) ([]byte, error) {
			return func([]byte) ([]byte, error) { return []byte("x"), own }
		}, own},
		{"written meanwhile", "an editor knows nothing of the lock", "file", func(path string) func([]byte) ([]byte, error) {
			return func([]byte) ([]byte, error) { return []byte("x"), os.WriteFile(path, []byte("theirs"), 0o600) }
		}, wholefile.ErrChanged},
		{"replaced by the same", "an editor that replaces the file whole, even by the same text", "file", func(path string) func([]byte) ([]byte, error) {
			return func(old []byte) ([]byte, error) {
				return []byte("x"), wholefile.Write(path, old)
			}
		}, wholefile.ErrChanged},
		{"missing", "there is nothing to add to", "other", func(string) func([]byte) ([]byte, error) { return same }, fs.ErrNotExist},
		{"too large", "it would not be read either", "large", func(string) func([]byte) ([]byte, error) { return same }, wholefile.ErrTooLarge},
		{"folder", "a folder is no file", ".", func(string) func([]byte) ([]byte, error) { return same }, wholefile.ErrNotRegular},
	} {
		t.Run(row.name, func(t *testing.T) {
			folder := t.TempDir()
			require.NoError(t, os.WriteFile(filepath.Join(folder, "file"), []byte("old"), 0o600))
			require.NoError(t, os.WriteFile(filepath.Join(folder, "large"), make([]byte, most+1), 0o600))
			path := filepath.Join(folder, row.path)
			before := names(t, folder)
			err := wholefile.Update(path, most, row.change(path))
			require.ErrorIs(t, err, row.cause, row.reason)
			assert.NotContains(t, read(t, filepath.Join(folder, "file")), "x")
			assert.Equal(t, before, names(t, folder))
		})
	}
}

// TestUpdateWritesNothingNew keeps the very file when its content stays.
func TestUpdateWritesNothingNew(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	before, err := os.Stat(path)
	require.NoError(t, err)
	require.NoError(t, wholefile.Update(path, most, func(old []byte) ([]byte, error) { return old, nil }))
	after, err := os.Stat(path)
	require.NoError(t, err)
	assert.True(t, os.SameFile(before, after))
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
