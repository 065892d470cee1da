package record

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/collection"
	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

var testDay = civil.Of(2027, 2, 3)

// drawEdit gives something that happened in a room.
func drawEdit(t *rapid.T, b *Book, r room) (Edit, error) {
	animal := rapid.SampledFrom(append(r.animals, r.young...)).Draw(t, "animal")
	remark := rapid.SampledFrom([]string{"", "", "calls", "it's: # odd", "two\nlines", "- \"x\"", "[", "null", "~", "蛙🐸"}).Draw(t, "remark")
	var e Edit
	var err error
	switch kind := rapid.IntRange(0, 7).Draw(t, "kind"); {
	case kind == 0:
		e, err = b.Laid(testDay, Laying{Dams: []string{r.animals[0]}, Eggs: 30, Note: remark})
	case kind == 1 && len(r.clutches) > 0:
		e, err = b.HeldBack(testDay, Holding{Clutch: r.clutches[0], Count: rapid.IntRange(1, 3).Draw(t, "held")})
	case kind == 2 && len(r.clutches) > 0:
		e, err = b.Seen(testDay, r.clutches[0], Sight{Stage: "hatched", Count: collection.Given[int]{Value: 20, Known: true}})
	case kind == 3:
		e, err = b.Temperature(testDay, "tub-1", "74F", rapid.Bool().Draw(t, "air"), true)
	case kind == 4:
		e, err = b.Moved(testDay, animal, remark)
		if remark == "" || strings.Contains(remark, "\n") {
			e, err = b.Moved(testDay, animal, "tank: 9")
		}
	case kind == 5:
		e, err = b.Died(testDay, animal, 0)
	default:
		e, err = b.Weight(testDay, animal, "0.44oz")
	}
	e.Remark(remark)
	return e, err
}

// TestRoundTrip records in random files and takes it back again. All
// bytes of the old text stay; what the new one means is what the old one meant
// with the entry at its end, compared by an independent hand.
func TestRoundTrip(t *testing.T) {
	written, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		text, r := drawFile(t)
		b, problems := Read("f", []byte(text))
		require.NotNil(t, b, "%v\n%s", problems, text)
		e, err := drawEdit(t, b, r)
		require.NoError(t, err)
		p, err := b.Plan(e)
		var unsafe *UnsafeError
		if errors.As(err, &unsafe) {
			refused++
			require.NotEmpty(t, unsafe.Hand)
			return
		}
		if as[*InvalidError](err) {
			return // such as young that hatch after they were laid by
		}
		require.NoError(t, err, text)
		written++
		require.Equal(t, text, without(t, b, e, string(p.Text)), "more than what was added is new")

		after, problems := collection.Read("f", p.Text)
		require.NotNil(t, after, "%v\n%s", problems, p.Text)
		meant(t, b.Collection, after, e)

		again, _ := Read("f", p.Text)
		undone, err := again.Undo()
		var refusal *Refusal
		if errors.As(err, &refusal) {
			return // a comment stands beside
		}
		require.NoError(t, err, "%s", p.Text)
		back, problems := collection.Read("f", undone.Text)
		require.NotNil(t, back, "%v\n%s", problems, undone.Text)
		same := cmp.Diff(b.Collection, back, ignorePlaces)
		require.Empty(t, same, "%s\n---\n%s", text, undone.Text)
		if bytes.HasSuffix([]byte(text), []byte("\n")) && hasList(b, "diary") && (e.Clutch == nil || hasList(b, "clutches")) {
			require.Equal(t, text, string(undone.Text), "%s", p.Text)
		}
	})
	t.Logf("%d written, %d refused", written, refused)
	require.Greater(t, written, 9*refused, "too many files are refused")
}

func hasList(b *Book, key string) bool {
	s, ok := b.outline.Section(key)
	return ok && s.Form != collection.Missing && len(s.Items) > 0
}

// without takes what was put in out of a text again, after looking that nothing
// was taken away, and that it is nothing but entries, keys, commas and blanks.
func without(t *rapid.T, b *Book, e Edit, text string) string {
	changes, err := b.splice(e.additions())
	require.NoError(t, err)
	for _, c := range changes {
		require.Equal(t, c.from, c.to, "nothing goes away")
		require.Equal(t, c.text, text[c.from:c.from+len(c.text)])
		text = text[:c.from] + text[c.from+len(c.text):]
	}
	return text
}

var ignorePlaces = cmp.Options{
	cmpopts.IgnoreUnexported(collection.Collection{}),
	cmpopts.IgnoreFields(collection.Collection{}, "Species"),
	cmpopts.IgnoreTypes(strictyaml.Position{}),
	cmpopts.EquateEmpty(),
}

// meant compares what was read with the old collection and the edit.
func meant(t *rapid.T, old, got *collection.Collection, e Edit) {
	want := *old
	want.Animals = append(want.Animals[:len(want.Animals):len(want.Animals)], e.Animals...)
	want.Diary = append(want.Diary[:len(want.Diary):len(want.Diary)], e.Entry.Entry)
	if e.Clutch != nil {
		want.Clutches = append(want.Clutches[:len(want.Clutches):len(want.Clutches)], *e.Clutch)
	}
	filled := cmp.Options{ // what an animal and a clutch have from others
		cmpopts.IgnoreFields(collection.Animal{}, "Species", "Line", "Dams", "Hatched", "Died"),
		cmpopts.IgnoreFields(collection.Clutch{}, "Species", "Line", "SireMix", "DamMix"),
	}
	if diff := cmp.Diff(&want, got, ignorePlaces, filled); diff != "" {
		t.Fatalf("(-meant +read):\n%s", diff)
	}
}

// TestWindow compares reading back a part of a file with reading all of it, its
// slow twin.
func TestWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text, r := drawFile(t)
		b, _ := Read("f", []byte(text))
		e, err := drawEdit(t, b, r)
		require.NoError(t, err)
		if rapid.Bool().Draw(t, "wrong") {
			e.Entry.On = civil.Of(2027, 1, 1) // before clutches were laid
		}
		whole, err := b.Plan(e)
		part := *b
		part.window = 0
		some, errSome := part.Plan(e)
		require.Equal(t, fmt.Sprint(err), fmt.Sprint(errSome), "%s", text)
		if err != nil {
			return
		}
		require.Equal(t, string(whole.Text), string(some.Text))
		require.Equal(t, whole.Warnings, some.Warnings, "%s", text)

		again, _ := Read("f", whole.Text)
		undone, err := again.Undo()
		again.window = 0
		undoneSome, errSome := again.Undo()
		require.Equal(t, fmt.Sprint(err), fmt.Sprint(errSome), "%s", whole.Text)
		if err == nil {
			require.Equal(t, string(undone.Text), string(undoneSome.Text))
		}
	})
}
