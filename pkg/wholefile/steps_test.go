package wholefile

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

var errStep = errors.New("this step fails")

// failing is the disk of the system whose steps count down to one that fails.
// With dead set all steps after it fail as well, as after a power cut.
type failing struct {
	system
	left *int
	dead bool
}

func (d failing) step() error {
	*d.left--
	if *d.left == 0 || d.dead && *d.left < 0 {
		return errStep
	}
	return nil
}

func (d failing) permissions(path string) (fs.FileMode, error) {
	if err := d.step(); err != nil {
		return 0, err
	}
	return d.system.permissions(path)
}

func (d failing) create(path string) (file, error) {
	if err := d.step(); err != nil {
		return nil, err
	}
	f, err := d.system.create(path)
	return failingFile{f, d}, err
}

func (d failing) rename(from, to string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.system.rename(from, to)
}

func (d failing) remove(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.system.remove(path)
}

func (d failing) storeFolder(path string) error {
	if err := d.step(); err != nil {
		return err
	}
	return d.system.storeFolder(path)
}

// failingFile writes half of the data when its step fails.
type failingFile struct {
	file
	d failing
}

func (f failingFile) Write(data []byte) (int, error) {
	if err := f.d.step(); err != nil {
		n, _ := f.file.Write(data[:len(data)/2])
		return n, err
	}
	return f.file.Write(data)
}

func (f failingFile) Chmod(perm fs.FileMode) error {
	if err := f.d.step(); err != nil {
		return err
	}
	return f.file.Chmod(perm)
}

func (f failingFile) Sync() error {
	if err := f.d.step(); err != nil {
		return err
	}
	return f.file.Sync()
}

func (f failingFile) Close() error {
	err := f.d.step()
	return errors.Join(f.file.Close(), err)
}

// TestReplaceAtEveryStep lets each step fail, once as an error after which the
// program goes on, and once as the end of everything.
func TestReplaceAtEveryStep(t *testing.T) {
	const before, after = "the old text", "the new and longer text"
	for _, dead := range []bool{false, true} {
		done := false
		for step := 1; !done; step++ {
			t.Run(fmt.Sprintf("step %d, dead %v", step, dead), func(t *testing.T) {
				folder := t.TempDir()
				path := filepath.Join(folder, "collection.yaml")
				require.NoError(t, os.WriteFile(path, []byte(before), 0o640))
				left := step
				err := replace(failing{left: &left, dead: dead}, path, []byte(after))
				text, readErr := os.ReadFile(path)
				require.NoError(t, readErr)
				var folderError *FolderError
				switch {
				case err == nil:
					assert.Equal(t, after, string(text))
					assert.Positive(t, left, "a failed step was not noticed")
					done = true
				case errors.As(err, &folderError):
					require.ErrorIs(t, err, errStep)
					assert.Equal(t, after, string(text))
				default:
					require.ErrorIs(t, err, errStep)
					assert.Equal(t, before, string(text))
				}
				info, statErr := os.Stat(path)
				require.NoError(t, statErr)
				assert.Equal(t, fs.FileMode(0o640), info.Mode().Perm())
				entries, dirErr := os.ReadDir(folder)
				require.NoError(t, dirErr)
				if !dead {
					assert.Len(t, entries, 1, "a temporary file stayed behind")
				}
				if err != nil { // whatever stayed behind, the next one succeeds
					require.NoError(t, Write(path, []byte(after)))
					text, readErr = os.ReadFile(path)
					require.NoError(t, readErr)
					assert.Equal(t, after, string(text))
				}
			})
			require.Less(t, step, 20, "it never succeeds")
		}
	}
}
