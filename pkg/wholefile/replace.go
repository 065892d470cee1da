package wholefile

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
)

// FolderError says that the new file is in place, but that the system did not
// store the folder: after a power cut the old file may be there once more.
type FolderError struct{ Err error }

func (e *FolderError) Error() string {
	return fmt.Sprintf("the file was replaced, but its folder was not stored, so that a power cut may bring the old one back: %v", e.Err)
}

func (e *FolderError) Unwrap() error { return e.Err }

// replace puts a new file with data in the place of path, or makes it.
func replace(d disk, path string, data []byte) error {
	perm, err := d.permissions(path)
	fresh := errors.Is(err, fs.ErrNotExist)
	if err != nil && !fresh {
		return err
	}
	f, temporary, err := createBeside(d, path)
	if err != nil {
		return err
	}
	err = fill(f, data, perm, fresh)
	if err == nil {
		err = d.rename(temporary, path)
	}
	if err != nil {
		return errors.Join(err, d.remove(temporary))
	}
	if err := d.storeFolder(filepath.Dir(path)); err != nil {
		return &FolderError{err}
	}
	return nil
}

// createBeside makes a temporary file in the folder of path, for a rename works
// only within a file system. One that a killed program left keeps its name.
func createBeside(d disk, path string) (file, string, error) {
	folder, name := filepath.Split(path)
	for i := 1; ; i++ {
		temporary := filepath.Join(folder, fmt.Sprintf(".%s.%d.tmp", name, i))
		f, err := d.create(temporary)
		if !errors.Is(err, fs.ErrExist) {
			return f, temporary, err
		}
	}
}

// fill stores data in f and closes it in any case. A fresh file keeps the
// permissions that it was made with.
func fill(f file, data []byte, perm fs.FileMode, fresh bool) error {
	_, err := f.Write(data)
	if err == nil && !fresh {
		err = f.Chmod(perm)
	}
	if err == nil {
		err = f.Sync()
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	return err
}
