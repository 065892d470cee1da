package wholefile

import (
	"errors"
	"io"
	"io/fs"
	"os"
	"runtime"
	"syscall"
)

// disk is what replacing a file asks of the system, step by step, so that a test
// can let each step fail.
type disk interface {
	permissions(path string) (fs.FileMode, error)
	create(path string) (file, error) // fs.ErrExist when there is one
	rename(from, to string) error
	remove(path string) error
	storeFolder(path string) error
}

type file interface {
	io.WriteCloser
	Chmod(fs.FileMode) error
	Sync() error
}

// system is the disk of the operating system.
type system struct{}

func (system) permissions(path string) (fs.FileMode, error) {
	info, err := os.Stat(path)
	if err != nil {
		return 0, err
	}
	return info.Mode().Perm(), nil
}

func (system) create(path string) (file, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
}

func (system) rename(from, to string) error { return os.Rename(from, to) }
func (system) remove(path string) error     { return os.Remove(path) }

// storeFolder makes a rename last. Some file systems have no such thing, and
// Windows does it by itself.
func (system) storeFolder(path string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, syscall.EINVAL) || errors.Is(err, errors.ErrUnsupported) {
		err = nil
	}
	return errors.Join(err, f.Close())
}
