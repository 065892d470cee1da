// Package wholefile replaces a file whole or not at all.
//
// [Write] puts the new content into a temporary file beside the old one, asks
// the operating system to store it, and renames it over the old one. Whoever
// opens the file meanwhile, or after a power cut, finds the old content or the
// new, and never a part of either.
//
// [Update] makes the new content from the old one, with a lock that keeps a
// second Update of the file waiting, so that neither loses what the other wrote.
//
// A program that is killed on the way may leave a file .NAME.1.tmp behind, which
// is of no use to anyone and can be deleted.
package wholefile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// ErrNotRegular is the cause when something stands at the path that a file
// cannot take the place of: a folder, a device, a pipe.
var ErrNotRegular = errors.New("not a regular file")

// Write makes data the whole content of the file at path. A symbolic link is
// followed, so that the file it leads to is replaced and the link stays. An
// existing file keeps its permissions, and one that may not be written to is
// left alone; a new file gets 0644 less the umask. Other hard links to the old
// file keep the old content.
//
// When there is an error the old file is as it was, and the temporary file is
// gone; only a *[FolderError] comes after the new file is in place. Errors can
// be asked with errors.Is for [ErrNotRegular], fs.ErrPermission, fs.ErrNotExist
// and the errors of the system, and are an *fs.PathError or, for the last step,
// an *os.LinkError.
func Write(path string, data []byte) error {
	real, err := follow(path)
	if err != nil {
		return err
	}
	return replace(system{}, real, data)
}

// follow gives the file that path leads to, which need not exist yet.
func follow(path string) (string, error) {
	if path == "" {
		return "", &fs.PathError{Op: "replace", Path: path, Err: fs.ErrNotExist}
	}
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if _, err := os.Lstat(path); err == nil {
			return "", &fs.PathError{Op: "follow link", Path: path, Err: fs.ErrNotExist}
		}
		folder, err := filepath.EvalSymlinks(filepath.Dir(path))
		return filepath.Join(folder, filepath.Base(path)), err
	case err != nil:
		return "", err
	case !info.Mode().IsRegular():
		return "", &fs.PathError{Op: "replace", Path: path, Err: ErrNotRegular}
	}
	if err := mayWrite(path); err != nil {
		return "", err
	}
	return filepath.EvalSymlinks(path)
}

// mayWrite asks the system, for a rename would pass over a write protection.
func mayWrite(path string) error {
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return f.Close()
}
