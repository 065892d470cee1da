package record_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"github.com/spawnwright/spawnwright/pkg/civil"
	"github.com/spawnwright/spawnwright/pkg/record"
)

// TestBeforeItWasLaid: the reader would leave such an entry out.
func TestBeforeItWasLaid(t *testing.T) {
	b, _ := record.Read("f", []byte(small))
	laid := civil.Of(2027, 1, 30)
	for on, want := range map[civil.Date]string{laid: "", laid - 1: "C-27-02 was laid on 2027-01-30, and this is 2027-01-29; check the day of both"} {
		e, err := b.Died(on, "C-27-02", 1)
		require.NoError(t, err)
		_, err = b.Plan(e)
		var refusal *record.Refusal
		if errors.As(err, &refusal) {
			assert.Equal(t, want, err.Error())
			continue
		}
		require.NoError(t, err)
		assert.Empty(t, want)
	}
}

// TestDoubts has what is said of a record that may be a slip.
func TestDoubts(t *testing.T) {
	laid := func(l record.Laying) func(*record.Book) (record.Edit, error) {
		return func(b *record.Book) (record.Edit, error) { return b.Laid(today, l) }
	}
	died := func(b *record.Book) (record.Edit, error) { return b.Died(today, "C-27-02", 3) }
	rain := func(on civil.Date) string { return "  - {on: " + on.String() + ", pairing: P-27-01, began: rain}\n" }
	inRain := "its dam is in pairing P-27-01, whose rain began on " + today.Add(-2).String() + " and which has no clutch"
	for _, row := range []struct {
		name, diary string
		form        func(*record.Book) (record.Edit, error)
		want        string
	}{
		{"given twice", "  - {on: " + today.String() + ", clutch: C-27-02, losses: 3}\n", died, "the entry before it, in line 11, says the same"},
		{"the same of another day", "  - {on: " + today.Add(-1).String() + ", clutch: C-27-02, losses: 3}\n", died, ""},
		{"another number", "  - {on: " + today.String() + ", clutch: C-27-02, losses: 2}\n", died, ""},
		{"not right before it", "  - {on: " + today.String() + ", clutch: C-27-02, losses: 3}\n  - {on: " + today.String() + ", animal: AC-01, note: x}\n", died, ""},
		{"eggs of a dam in the rain", rain(today.Add(-2)), laid(record.Laying{Dams: []string{"AC-02"}}), inRain},
		{"eggs of the pairing", rain(today.Add(-2)), laid(record.Laying{Pairing: "P-27-01"}), ""},
		{"eggs of nobody in the rain", rain(today.Add(-2)), laid(record.Laying{Sires: []string{"AC-01"}}), ""},
		{"the rain was last season", rain(today.Add(-300)), laid(record.Laying{Dams: []string{"AC-02"}}), ""},
		{"the rain comes later", rain(today.Add(1)), laid(record.Laying{Dams: []string{"AC-02"}}), ""},
		{"the pairing is not in the rain", "  - {on: 2027-01-01, pairing: P-27-01, began: cooling}\n", laid(record.Laying{Dams: []string{"AC-02"}}), ""},
	} {
		b, problems := record.Read("f", []byte(small[:len(small)-len(" []\n")]+"\n"+row.diary))
		require.NotNil(t, b, "%s: %v", row.name, problems)
		e, err := row.form(b)
		require.NoError(t, err, row.name)
		p, err := b.Plan(e)
		require.NoError(t, err, row.name)
		said := ""
		for _, w := range p.Warnings {
			said += w.Message
		}
		assert.Equal(t, row.want, said, row.name)
	}
}
