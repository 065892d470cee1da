// Package record adds to the file of a keeper what happened, and leaves every
// other byte of it as it was.
//
// [Read] gives a [Book]: the text of a file beside what it means. The forms, such
// as [Book.Laid] and [Book.Weight], turn a few words into an [Edit]: an entry of
// the diary, with the clutch or the animals that came into being. [Book.Plan]
// finds where its lines go, reads the new text back and compares what it means
// with what was meant; [Book.Undo] plans to take the last entry away again.
// [Change] does all of it on a file, under a lock, and replaces the file whole.
//
//	plan, err := record.Change("collection.yaml", func(b *record.Book) (*record.Plan, error) {
//		edit, err := b.Weight(today, "AC-02", "12.4g")
//		if err != nil {
//			return nil, err
//		}
//		return b.Plan(edit)
//	})
//
// A form gives a [*Refusal] for what it cannot take: an id that is not in the file,
// a measure without its unit.
//
// A plan that cannot be made sure of is refused with an [*UnsafeError], which
// has the lines for the keeper to add by hand.
package record

import (
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
	"github.com/spawnwright/spawnwright/pkg/wholefile"
)

// Edit is what happened: an entry of the diary, and what came into being with it.
type Edit struct {
	Clutch  *collection.Clutch  // that was laid; nil for none
	Animals []collection.Animal // young that became animals of the file
	Entry   Entry
}

// Entry is an entry of the diary, with measures in the unit in which they were
// taken. A text such as "0.44 oz" is written instead of the value in g, mm or °C,
// which must be the same.
type Entry struct {
	collection.Entry
	Weight, Length, Water, Air string
}

// Remark adds free text to the note of the entry.
func (e *Edit) Remark(text string) {
	switch {
	case text == "":
	case e.Entry.Note == "":
		e.Entry.Note = text
	default:
		e.Entry.Note += "; " + text
	}
}

// Plan is a change of a file that was read back and found to mean what it should.
type Plan struct {
	Edit     Edit
	Undone   bool                   // the lines are taken away, not added
	Lines    []Line                 // as they stand in the new text, or, when taken away, in the old one
	Text     []byte                 // the whole new text
	Warnings strictyaml.Diagnostics // those that the file did not have before
}

// Line is a line of the file without its line end.
type Line struct {
	Number int // from 1
	Text   string
}

// Change reads the file at path, lets plan say what is to be changed, and
// replaces the file whole; see [wholefile.Update], whose errors it gives, for
// the lock and for what happens to a file that changes meanwhile. A file with
// errors in it is refused with a *[strictyaml.FileError].
func Change(path string, plan func(*Book) (*Plan, error)) (*Plan, error) {
	var made *Plan
	err := wholefile.Update(path, strictyaml.MaxBytes, func(old []byte) ([]byte, error) {
		b, problems := Read(path, old)
		if b == nil {
			return nil, problems.Err()
		}
		p, err := plan(b)
		if err != nil {
			return nil, err
		}
		made = p
		return p.Text, nil
	})
	if err != nil {
		return nil, err
	}
	return made, nil
}
