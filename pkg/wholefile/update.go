package wholefile

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"time"
)

// The causes for which [Update] leaves a file alone.
var (
	ErrLocked   = errors.New("another program is changing it; try again when that is done")
	ErrChanged  = errors.New("it was changed meanwhile; nothing was written, try again")
	ErrTooLarge = errors.New("too large")
)

// Update hands the content of the file at path to change and makes what that
// gives the whole content, in the way of [Write]. Content that is the same is
// not written, and so is nothing when change has an error, which is given back
// as it is. What change is given must not be altered.
//
// A second Update of the file, in this program or another, waits up to half a
// minute and then is refused with [ErrLocked]. Programs that know nothing of the
// lock, such as an editor, are noticed: a file that is not as it was read is left
// alone with [ErrChanged]. A file of more than most bytes is refused with
// [ErrTooLarge]. These are the causes of an *fs.PathError.
func Update(path string, most int64, change func(old []byte) ([]byte, error)) error {
	if _, err := os.Stat(path); err != nil {
		return err
	}
	real, err := follow(path)
	if err != nil {
		return err
	}
	l, err := wait(real)
	if err != nil {
		return refused(path, err)
	}
	defer l.release()
	old, err := readAll(real, most)
	if err != nil {
		return refused(path, err)
	}
	data, err := change(old)
	if err != nil || bytes.Equal(data, old) {
		return err
	}
	now, err := readAll(real, most)
	if err != nil || !l.holds(real) || !bytes.Equal(now, old) {
		return refused(path, ErrChanged)
	}
	return replace(system{}, real, data)
}

func refused(path string, err error) error {
	var known *fs.PathError
	if errors.As(err, &known) {
		return err
	}
	return &fs.PathError{Op: "change", Path: path, Err: err}
}

// wait takes the lock of a file, for which it tries again and again.
func wait(path string) (*lock, error) {
	const (
		tries = 1200
		pause = 25 * time.Millisecond
	)
	for left := tries; ; left-- {
		l, err := try(path)
		if left == 0 || !errors.Is(err, ErrLocked) {
			return l, err
		}
		time.Sleep(pause)
	}
}

func readAll(path string, most int64) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, err
	}
	if info.Size() > most {
		return nil, ErrTooLarge
	}
	data := make([]byte, info.Size()+1) // one more, to see the end without growing
	n, err := io.ReadFull(f, data)
	switch {
	case err == nil:
		return nil, ErrChanged // it grows while it is read
	case errors.Is(err, io.ErrUnexpectedEOF) || errors.Is(err, io.EOF):
		return data[:n], nil
	}
	return nil, err
}
