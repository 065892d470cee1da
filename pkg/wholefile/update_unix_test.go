//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package wholefile_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

// Where the file itself carries the lock, one that an editor has put in its place
// has none, even when it holds the same text.
func TestUpdateRefusesAnotherFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	err := wholefile.Update(path, most, func(old []byte) ([]byte, error) {
		return []byte("x"), wholefile.Write(path, old)
	})
	require.ErrorIs(t, err, wholefile.ErrChanged)
	require.Equal(t, "old", read(t, path))
}
