package record_test

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/record"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

func write(t *testing.T, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "room.yaml")
	require.NoError(t, os.WriteFile(path, []byte(text), 0o640))
	return path
}

func read(t *testing.T, path string) string {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return string(data)
}

func weigh(b *record.Book) (*record.Plan, error) {
	e, err := b.Weight(today, "AC-02", "12.4g")
	if err != nil {
		return nil, err
	}
	return b.Plan(e)
}

func TestChange(t *testing.T) {
	path := write(t, small)
	p, err := record.Change(path, weigh)
	require.NoError(t, err)
	assert.Equal(t, string(p.Text), read(t, path))
	_, err = record.Change(path, (*record.Book).Undo)
	require.NoError(t, err)
	assert.Equal(t, small, read(t, path))
}

func TestChangeRefuses(t *testing.T) {
	t.Run("errors in the file", func(t *testing.T) {
		path := write(t, "animls: []\n")
		_, err := record.Change(path, weigh)
		var bad *strictyaml.FileError
		require.ErrorAs(t, err, &bad)
		assert.Len(t, bad.Diagnostics, 1)
	})
	t.Run("no file", func(t *testing.T) {
		_, err := record.Change(filepath.Join(t.TempDir(), "none.yaml"), weigh)
		require.ErrorIs(t, err, fs.ErrNotExist)
	})
	t.Run("refused by the form", func(t *testing.T) {
		path := write(t, frogs)
		_, err := record.Change(path, (*record.Book).Undo)
		var refusal *record.Refusal
		require.ErrorAs(t, err, &refusal)
		assert.Equal(t, frogs, read(t, path))
	})
	t.Run("written meanwhile", func(t *testing.T) {
		path := write(t, small)
		theirs := small + "# a line of the keeper's, in an editor\n"
		_, err := record.Change(path, func(b *record.Book) (*record.Plan, error) {
			require.NoError(t, os.WriteFile(path, []byte(theirs), 0o600))
			return weigh(b)
		})
		require.ErrorIs(t, err, wholefile.ErrChanged)
		assert.Equal(t, theirs, read(t, path))
	})
}

// TestUndoRefuses has what is not taken back by itself, and why.
func TestUndoRefuses(t *testing.T) {
	const clutch = frogs + "clutches:\n  - {id: C-1, laid: 2027-01-01, dam: AC-02}\n"
	for _, row := range []struct{ name, text, says string }{
		{"nothing", frogs, "the diary is empty"},
		{"comment beside", clutch + "diary:\n  - {on: 2027-01-02, clutch: C-1, note: x}  # y\n", "there is a comment beside"},
		{"comment within", clutch + "diary:\n  - on: 2027-01-02 # y\n    clutch: C-1\n    note: x\n", "there is a comment beside"},
		{"comment before", clutch + "diary: [{on: 2027-01-02, clutch: C-1, note: x}, # y,\n{on: 2027-01-02, clutch: C-1, note: x}]\n", "there is a comment before"},
		{"laid on another day", clutch + "diary:\n  - {on: 2027-01-02, clutch: C-1, note: laid}\n", "was laid on another day"},
		{"laid, not the last", clutch + "  - {id: C-2, laid: 2027-01-01, dam: AC-02}\ndiary:\n  - {on: 2027-01-01, clutch: C-1, note: laid}\n", "is not the last of its list"},
		{"held back without ids", clutch + "diary:\n  - {on: 2027-01-02, clutch: C-1, held_back: 1}\n", "not clear which animals"},
		{"more held back than there are", clutch + "diary:\n  - {on: 2027-01-02, clutch: C-1, held_back: 9}\n", "not clear which animals"},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := open(t, row.text).Undo()
			var refusal *record.Refusal
			require.ErrorAs(t, err, &refusal)
			assert.Contains(t, err.Error(), row.says)
		})
	}
}

// TestUndoIsNotForWhatOthersRestOn takes no clutch away that has young.
func TestUndoIsNotForWhatOthersRestOn(t *testing.T) {
	_, err := open(t, frogs+"  - {id: AC-03, clutch: C-1}\nclutches:\n  - {id: C-1, laid: 2027-01-01, dam: AC-02}\ndiary:\n  - {on: 2027-01-01, clutch: C-1, note: laid}\n").Undo()
	var invalid *record.InvalidError
	require.ErrorAs(t, err, &invalid)
	assert.Contains(t, invalid.Error(), `clutch "C-1" is not in the file`)
}

func ExampleChange() {
	folder, err := os.MkdirTemp("", "")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, "collection.yaml")
	_ = os.WriteFile(path, []byte(`animals:
  - {id: AC-02, species: agalychnis-callidryas, sex: female}   # the old lady
`), 0o600)

	plan, err := record.Change(path, func(b *record.Book) (*record.Plan, error) {
		edit, err := b.Weight(civil.Of(2027, 2, 3), "AC-02", "12.4g")
		if err != nil {
			return nil, err
		}
		return b.Plan(edit)
	})
	fmt.Println(plan.Edit.String(), err)
	text, _ := os.ReadFile(path)
	fmt.Print(string(text))
	// Output:
	// 2027-02-03, animal AC-02: weighs 12.4 g <nil>
	// animals:
	//   - {id: AC-02, species: agalychnis-callidryas, sex: female}   # the old lady
	// diary:
	//   - {on: 2027-02-03, animal: AC-02, weight_g: 12.4}
}
