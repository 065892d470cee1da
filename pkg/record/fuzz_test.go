package record

import (
	"errors"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/species"
)

// forms has every form, fed with texts and a number.
var forms = []func(b *Book, x, y string, n int, yes bool) (Edit, error){
	func(b *Book, x, y string, n int, yes bool) (Edit, error) {
		l := Laying{Pairing: x, Place: y, Eggs: n, Note: y}
		if yes {
			l = Laying{Dams: []string{x}, Sires: []string{y, x}, SireMix: collection.Several, Eggs: n, ID: y, Line: x}
		}
		return b.Laid(testDay, l)
	},
	func(b *Book, x, y string, n int, yes bool) (Edit, error) {
		return b.Seen(testDay, x, Sight{Stage: y, Some: yes, Count: collection.Given[int]{Value: n, Known: n > 0}, Losses: n / 2})
	},
	func(b *Book, x, y string, n int, yes bool) (Edit, error) {
		h := Holding{Clutch: x, Count: n, Place: y}
		if yes {
			h.Count, h.IDs, h.Sex = 0, []string{y}, collection.Sex(y)
		}
		return b.HeldBack(testDay, h)
	},
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Weight(testDay, x, y) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Length(testDay, x, y) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Moved(testDay, x, y) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Died(testDay, x, n) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Sold(testDay, x, n, y) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Ate(testDay, x) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) {
		return b.Hold(testDay, x, collection.HoldKind(y), testDay.Add(n))
	},
	func(b *Book, x, y string, n int, yes bool) (Edit, error) {
		return b.Temperature(testDay, x, y, yes, n > 0)
	},
	func(b *Book, x, y string, n int, yes bool) (Edit, error) { return b.Note(testDay, x, y, yes) },
	func(b *Book, x, y string, n int, yes bool) (Edit, error) {
		return b.Began(testDay, x, species.PhaseName(y))
	},
}

// FuzzForms feeds any form with anything, for any file: there is an edit that
// leaves all else as it was, or one of the errors that are promised, with
// nothing lost in between.
func FuzzForms(f *testing.F) {
	const room = "animals:\n  - {id: A-1, species: hyla-cinerea, sex: female}\n  - {id: A-2, species: hyla-cinerea}\n" +
		"clutches: [{id: K-1, laid: 2027-01-01, dam: A-1}]\npairings:\n- {id: P, dam: A-1, sire: A-2, start: 2027-01-01}\n" +
		"diary:\n  - on: 2027-01-20\n    clutch: K-1\n    note: |\n      one\n"
	for form := range forms {
		f.Add(room, byte(form), "A-1", "12.4g", 2, false)
		f.Add(room, byte(form), "K-1", "42", 3, true)
		f.Add(room+"# end\n...\n", byte(form), "P", "rain", 0, true)
		f.Add("keeper: x\n", byte(form), "tub: 3", "74F", 1, true)
		f.Add("{animals: [{id: A-1, species: hyla-cinerea}], diary: [ ]}", byte(form), "A-1", "quarantine", 1, true)
	}
	f.Fuzz(func(t *testing.T, text string, form byte, x, y string, n int, yes bool) {
		b, _ := Read("f", []byte(text))
		if b == nil {
			return
		}
		e, err := forms[int(form)%len(forms)](b, x, y, n%2000, yes)
		if err != nil {
			mustBe[*Refusal](t, err)
			return
		}
		e.Remark(y)
		_ = e.String()
		p, err := b.Plan(e)
		if err != nil {
			if !as[*UnsafeError](err) && !as[*InvalidError](err) {
				mustBe[*Refusal](t, err)
			}
			return
		}
		if len(p.Lines) == 0 || !inOrder(text, string(p.Text)) {
			t.Fatalf("%q became %q", text, p.Text)
		}
		again, problems := Read("f", p.Text)
		if again == nil {
			t.Fatalf("%v", problems)
		}
		undone, err := again.Undo()
		if err != nil {
			if !as[*InvalidError](err) {
				mustBe[*Refusal](t, err)
			}
			return
		}
		if back, problems := Read("f", undone.Text); back == nil || same(back.Collection, again.Collection, undone.Edit) != "" {
			t.Fatalf("%v\n%q became %q", problems, p.Text, undone.Text)
		}
	})
}

func as[E error](err error) bool {
	var want E
	return errors.As(err, &want)
}

func mustBe[E error](t *testing.T, err error) {
	t.Helper()
	if !as[E](err) {
		t.Fatalf("%T: %v", err, err)
	}
}

// inOrder reports whether all bytes of old stand in new in their order.
func inOrder(old, new string) bool {
	for i := range len(new) {
		if old != "" && new[i] == old[0] {
			old = old[1:]
		}
	}
	return old == ""
}
