package wholefile_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

func TestWrite(t *testing.T) {
	for _, row := range []struct {
		name, old, new, reason string
	}{
		{"longer", "one\n", "one\ntwo\n", "the common case: an entry was added"},
		{"shorter", strings.Repeat("old ", 1000), "new", "nothing of the longer old text stays behind"},
		{"empty", "old", "", "an empty file is a content as well"},
		{"bytes", "old", "\x00\xff\r\n", "nothing is translated"},
		{"large", "old", strings.Repeat("0123456789abcdef", 1<<16), "more than one buffer"},
	} {
		t.Run(row.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "collection.yaml")
			require.NoError(t, os.WriteFile(path, []byte(row.old), 0o600))
			require.NoError(t, wholefile.Write(path, []byte(row.new)))
			assert.Equal(t, row.new, read(t, path), row.reason)
			assert.Equal(t, []string{"collection.yaml"}, names(t, filepath.Dir(path)))
		})
	}
}

func TestWriteNewFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "new.ics")
	require.NoError(t, wholefile.Write(path, []byte("text")))
	assert.Equal(t, "text", read(t, path))
	assert.Equal(t, []string{"new.ics"}, names(t, filepath.Dir(path)))
}

func TestWriteInWorkingFolder(t *testing.T) {
	t.Chdir(t.TempDir())
	require.NoError(t, wholefile.Write("plain-name", []byte("1")))
	require.NoError(t, wholefile.Write("plain-name", []byte("2")))
	assert.Equal(t, "2", read(t, "plain-name"))
	assert.Equal(t, []string{"plain-name"}, names(t, "."))
}

// TestWriteDoesNotTouchTheOldFile holds the old file open: a writer that
// truncates it would show here.
func TestWriteDoesNotTouchTheOldFile(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("a file that is open cannot be replaced here")
	}
	path := filepath.Join(t.TempDir(), "collection.yaml")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	old, err := os.Open(path)
	require.NoError(t, err)
	defer old.Close()
	require.NoError(t, wholefile.Write(path, []byte("new text")))
	seen := make([]byte, 16)
	n, err := old.Read(seen)
	require.NoError(t, err)
	assert.Equal(t, "old", string(seen[:n]))
}

func TestWriteKeepsPermissions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("there are no such permissions here")
	}
	for _, perm := range []fs.FileMode{0o600, 0o640, 0o664, 0o755} {
		path := filepath.Join(t.TempDir(), "file")
		require.NoError(t, os.WriteFile(path, nil, perm))
		require.NoError(t, os.Chmod(path, perm))
		require.NoError(t, wholefile.Write(path, []byte("new")))
		info, err := os.Stat(path)
		require.NoError(t, err)
		assert.Equal(t, perm, info.Mode().Perm())
	}
}

func TestWriteFollowsLinks(t *testing.T) {
	folder := t.TempDir()
	real := filepath.Join(folder, "real")
	require.NoError(t, os.Mkdir(real, 0o755))
	target := filepath.Join(real, "collection.yaml")
	require.NoError(t, os.WriteFile(target, []byte("old"), 0o600))
	link := filepath.Join(folder, "link.yaml")
	if err := os.Symlink(filepath.Join("real", "collection.yaml"), link); err != nil {
		t.Skipf("no symbolic links here: %v", err)
	}
	second := filepath.Join(folder, "second.yaml")
	require.NoError(t, os.Symlink("link.yaml", second))
	linkedFolder := filepath.Join(folder, "folder")
	require.NoError(t, os.Symlink("real", linkedFolder))

	for i, path := range []string{link, second, filepath.Join(linkedFolder, "collection.yaml")} {
		text := fmt.Sprint("new ", i)
		require.NoError(t, wholefile.Write(path, []byte(text)))
		assert.Equal(t, text, read(t, target), path)
	}
	for _, path := range []string{link, second, linkedFolder} {
		info, err := os.Lstat(path)
		require.NoError(t, err)
		assert.NotZero(t, info.Mode()&fs.ModeSymlink, "%s is a link no more", path)
	}
	require.NoError(t, wholefile.Write(filepath.Join(linkedFolder, "new.csv"), []byte("x")), "a new file behind a link")
	assert.Equal(t, []string{"collection.yaml", "new.csv"}, names(t, real))
}

func TestWriteRefuses(t *testing.T) {
	folder := t.TempDir()
	plain := filepath.Join(folder, "plain")
	require.NoError(t, os.WriteFile(plain, []byte("x"), 0o600))
	inner := filepath.Join(folder, "inner")
	require.NoError(t, os.Mkdir(inner, 0o755))
	dangling := filepath.Join(folder, "dangling")
	require.NoError(t, os.Symlink("nowhere", dangling))

	for _, row := range []struct {
		name, path string
		cause      error
		reason     string
	}{
		{"folder", inner, wholefile.ErrNotRegular, "a folder is not a file"},
		{"folder with a slash", inner + "/", wholefile.ErrNotRegular, "the same"},
		{"no such folder", filepath.Join(folder, "missing", "file"), fs.ErrNotExist, "folders are not made in passing"},
		{"link to nowhere", dangling, fs.ErrNotExist, "the link must not be replaced by a file"},
		{"empty path", "", fs.ErrNotExist, "nothing is named"},
		{"null device", os.DevNull, wholefile.ErrNotRegular, "root could replace /dev/null by a file"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if row.path == os.DevNull && runtime.GOOS == "windows" {
				t.Skip("it has no path here")
			}
			err := wholefile.Write(row.path, []byte("new"))
			require.ErrorIs(t, err, row.cause, row.reason)
			var pathError *fs.PathError
			require.ErrorAs(t, err, &pathError)
		})
	}
	require.Error(t, wholefile.Write(filepath.Join(plain, "file"), nil), "a file is not a folder")
	assert.Equal(t, []string{"dangling", "inner", "plain"}, names(t, folder), "something was left behind")
	assert.Equal(t, "x", read(t, plain))
}

func ExampleWrite() {
	folder, err := os.MkdirTemp("", "")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, "collection.yaml")

	fmt.Println(wholefile.Write(path, []byte("keeper: Lindenhof frog room\n")))
	text, _ := os.ReadFile(path)
	fmt.Print(string(text))
	// Output:
	// <nil>
	// keeper: Lindenhof frog room
}

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func names(t *testing.T, folder string) []string {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	var list []string
	for _, e := range entries {
		list = append(list, e.Name())
	}
	return list
}
