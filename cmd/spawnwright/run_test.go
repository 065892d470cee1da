package main

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// broken is a stream that is gone, such as a full disk or a pipe without a reader.
type broken struct{}

var errBroken = errors.New("no space left on device")

func (broken) Write([]byte) (int, error) { return 0, errBroken }
func (broken) Read([]byte) (int, error)  { return 0, errBroken }

const room = `holidays: at
equipment: {rain_chambers: 1, cooling_places: 1}
animals:
  - {id: H-01, species: hyla-cinerea, sex: male}
  - {id: H-02, species: hyla-cinerea, sex: female}
pairings:
  - {id: P-27-01, dam: H-02, sire: H-01, start: 2027-02-20}
`

// Whoever writes a plan into a full disk must not be told that all went well.
func TestStandardOutputIsFull(t *testing.T) {
	for _, args := range []string{
		"init", "check -f -", "species list", "species show hyla-cinerea", "kin -f -", "kin H-01 -f -", "kin H-01 H-02 -f -",
		"season -f -", "season -f - --format json", "clutch -f -", "agenda -f -", "calendar -f -", "lineage -f -",
	} {
		t.Run(args, func(t *testing.T) {
			t.Chdir(t.TempDir())
			var complaint bytes.Buffer
			code := run(append(strings.Fields(args), "--on", "2027-01-04"), strings.NewReader(room), broken{}, &complaint)
			assert.Equal(t, exitFile, code)
			assert.Contains(t, complaint.String(), errBroken.Error())
		})
	}
}

func TestStandardInputIsGone(t *testing.T) {
	for _, args := range []string{"check -f -", "season -f -", "kin --pedigree -", "lineage --pedigree -"} {
		t.Run(args, func(t *testing.T) {
			var out, complaint bytes.Buffer
			code := run(strings.Fields(args), broken{}, &out, &complaint)
			assert.Equal(t, exitFile, code)
			assert.Contains(t, complaint.String(), errBroken.Error())
			assert.Empty(t, out.String())
		})
	}
}

// The clock of the computer counts only where no day is given, and then it does.
func TestTodayIsTheComputersDay(t *testing.T) {
	var today, given bytes.Buffer
	require.Equal(t, exitDone, run([]string{"season", "-f", "-"}, strings.NewReader(room), &today, io.Discard))
	first, _, _ := strings.Cut(today.String(), "\n")
	day := strings.TrimPrefix(first, "Season as planned on ")
	require.Equal(t, exitDone, run([]string{"season", "-f", "-", "--on", day}, strings.NewReader(room), &given, io.Discard))
	assert.Equal(t, given.String(), today.String())
}

// A file that is read through a link is not replaced either.
func TestSourceIsNotReplacedThroughALink(t *testing.T) {
	folder := t.TempDir()
	file, link := filepath.Join(folder, "room.yaml"), filepath.Join(folder, "link.yaml")
	require.NoError(t, os.WriteFile(file, []byte(room), 0o600))
	if err := os.Symlink(file, link); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	for _, args := range [][]string{{"season", "-f", file, "-o", link}, {"season", "-f", link, "-o", file}} {
		assert.Equal(t, exitUsage, run(args, strings.NewReader(""), io.Discard, io.Discard))
	}
	kept, err := os.ReadFile(file)
	require.NoError(t, err)
	assert.Equal(t, room, string(kept))
}
