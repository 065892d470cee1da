//go:build unix

package wholefile

import (
	"path/filepath"

	"github.com/google/renameio/v2"
)

func replace(path string, data []byte) error {
	// A temporary file in the same folder is on the same file system, and no
	// probing for a better place is needed.
	return renameio.WriteFile(path, data, 0o644, renameio.WithTempDir(filepath.Dir(path)))
}
