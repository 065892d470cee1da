package wholefile_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

const most = 1 << 20

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
