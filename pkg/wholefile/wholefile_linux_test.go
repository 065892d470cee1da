package wholefile_test

import (
	"io/fs"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

func TestWriteRefusesWithoutPermission(t *testing.T) {
	folder := t.TempDir()
	require.NoError(t, os.Chmod(folder, 0o755))
	path := filepath.Join(folder, "file")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))

	t.Run("folder", func(t *testing.T) {
		require.NoError(t, os.Chmod(path, 0o666))
		require.NoError(t, os.Chmod(folder, 0o555))
		err := asStranger(func() error { return wholefile.Write(path, []byte("new")) })
		require.ErrorIs(t, err, fs.ErrPermission, "no temporary file can be made")
	})
	t.Run("file", func(t *testing.T) {
		require.NoError(t, os.Chmod(path, 0o444))
		require.NoError(t, os.Chmod(folder, 0o777))
		err := asStranger(func() error { return wholefile.Write(path, []byte("new")) })
		require.ErrorIs(t, err, fs.ErrPermission, "a rename would pass over the write protection")
	})
	require.NoError(t, os.Chmod(folder, 0o755))
	assert.Equal(t, "old", read(t, path))
	assert.Equal(t, []string{"file"}, names(t, folder))
}

// asStranger runs f without the powers of root, which the permissions of files
// do not stop. The change holds for one thread, which ends with it.
func asStranger(f func() error) error {
	done := make(chan error)
	go func() {
		runtime.LockOSThread() // never unlocked, so the thread is not used again
		if os.Geteuid() == 0 {
			const nobody = 65534
			syscall.RawSyscall(syscall.SYS_SETFSUID, nobody, 0, 0)
		}
		done <- f()
	}()
	return <-done
}

// TestWriteFailsHalfWay lets the system refuse the data after some of it was
// written, as a full disk does. The limit holds for a whole process, and what watches
// over a test writes files too: so the test runs itself once more, as that process.
func TestWriteFailsHalfWay(t *testing.T) {
	const told = "WHOLEFILE_FULL_DISK"
	if path := os.Getenv(told); path != "" {
		writeToFullDisk(t, path)
		return
	}
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	self, err := os.Executable()
	require.NoError(t, err)
	full := exec.Command(self, "-test.run=^TestWriteFailsHalfWay$")
	full.Env = append(os.Environ(), told+"="+path)
	out, err := full.CombinedOutput()
	require.NoError(t, err, "%s", out)
	assert.Equal(t, "old", read(t, path))
	assert.Equal(t, []string{"file"}, names(t, filepath.Dir(path)))
}

func writeToFullDisk(t *testing.T, path string) {
	signal.Ignore(syscall.SIGXFSZ)
	var limit syscall.Rlimit
	require.NoError(t, syscall.Getrlimit(syscall.RLIMIT_FSIZE, &limit))
	limit.Cur = 4096
	require.NoError(t, syscall.Setrlimit(syscall.RLIMIT_FSIZE, &limit))
	require.ErrorIs(t, wholefile.Write(path, make([]byte, 1<<20)), syscall.EFBIG)
}

func TestWriteNewFileHonoursUmask(t *testing.T) {
	old := syscall.Umask(0o027)
	defer syscall.Umask(old)
	path := filepath.Join(t.TempDir(), "file")
	require.NoError(t, wholefile.Write(path, nil))
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, fs.FileMode(0o640), info.Mode().Perm())
}

func TestWriteRefusesPipe(t *testing.T) {
	path := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(path, 0o600))
	require.ErrorIs(t, wholefile.Write(path, []byte("x")), wholefile.ErrNotRegular)
}
