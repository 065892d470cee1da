//go:build !unix

package wholefile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// replace does without renameio, which is not made for these systems. Their
// permissions are at most a read-only mark, which Write has looked at.
func replace(path string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+"*")
	if err != nil {
		return err
	}
	if err := fill(f, data, permissions(path)); err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	if err := os.Rename(f.Name(), path); err != nil {
		return errors.Join(err, os.Remove(f.Name()))
	}
	return nil
}

func permissions(path string) fs.FileMode {
	if info, err := os.Stat(path); err == nil {
		return info.Mode().Perm()
	}
	return 0o644
}

// fill stores data in f and closes it in any case.
func fill(f *os.File, data []byte, perm fs.FileMode) error {
	_, err := f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	if err == nil {
		err = os.Chmod(f.Name(), perm)
	}
	return err
}
