//go:build !(darwin || dragonfly || freebsd || linux || netbsd || openbsd)

package wholefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// lock is a file beside the locked one, for a file that is open cannot be
// replaced here.
type lock struct{ f *os.File }

// try takes the lock of the file at path, or gives [ErrLocked]. A program that
// was killed leaves its lock behind, so the message names the file.
func try(path string) (*lock, error) {
	name := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".lock")
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if errors.Is(err, fs.ErrExist) {
		return nil, fmt.Errorf("%w; delete %s when no other is running", ErrLocked, name)
	}
	if err != nil {
		return nil, err
	}
	return &lock{f}, nil
}

// holds is true, for nothing but release takes the lock away.
func (l *lock) holds(string) bool { return true }

func (l *lock) release() {
	_ = l.f.Close()
	_ = os.Remove(l.f.Name())
}
