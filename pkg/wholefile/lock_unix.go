//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package wholefile

import (
	"errors"
	"os"
	"syscall"
)

// lock is held by an open file, so that the system takes it back when the
// program ends, however it ends.
type lock struct{ f *os.File }

// try takes the lock of the file at path, or gives [ErrLocked].
func try(path string) (*lock, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	err = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
	l := &lock{f}
	switch {
	case errors.Is(err, syscall.EWOULDBLOCK) || errors.Is(err, syscall.EINTR):
		err = ErrLocked
	case err == nil && !l.holds(path):
		err = ErrLocked // of a file that was replaced since it was opened
	}
	if err != nil {
		l.release()
		return nil, err
	}
	return l, nil
}

// holds reports whether the file at path is still the one that is locked.
func (l *lock) holds(path string) bool {
	locked, err := l.f.Stat()
	if err != nil {
		return false
	}
	now, err := os.Stat(path)
	return err == nil && os.SameFile(locked, now)
}

func (l *lock) release() { _ = l.f.Close() }
