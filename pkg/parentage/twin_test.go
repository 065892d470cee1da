package parentage_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"github.com/spawnwright/spawnwright/pkg/parentage"
	"github.com/spawnwright/spawnwright/pkg/pedigree"
)

var (
	errTwin  = errors.New("the twin refuses the table")
	errOther = errors.New("this is no table for the twin")
)

// twin reads a table with commas and the columns id, sire and dam by means of
// encoding/csv and maps: the obvious way. Its errors have no words.
func twin(text []byte) ([]pedigree.Record, error) {
	rows := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\uFEFF"))))
	rows.FieldsPerRecord = -1
	rows.TrimLeadingSpace = true
	var header []string
	var out []pedigree.Record
	known := map[string]pedigree.Record{}
	sires, dams := map[string]bool{}, map[string]bool{}
	for {
		row, err := rows.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return nil, err
		}
		for i := range row {
			row[i] = strings.TrimSpace(row[i])
		}
		if !slices.ContainsFunc(row, func(v string) bool { return v != "" }) {
			continue
		}
		if header == nil {
			header = slices.Clone(row)
			for _, name := range []string{"id", "sire", "dam"} {
				count := 0
				for _, v := range row {
					if strings.ToLower(v) == name {
						count++
					}
				}
				if count != 1 {
					return nil, errOther
				}
			}
			continue
		}
		for len(row) > len(header) && row[len(row)-1] == "" {
			row = row[:len(row)-1]
		}
		if len(row) != len(header) {
			return nil, errTwin
		}
		var r pedigree.Record
		repeats := true
		for i, name := range header {
			to := map[string]*string{"id": &r.ID, "sire": &r.Sire, "dam": &r.Dam}[strings.ToLower(name)]
			if to == nil {
				continue
			}
			repeats = repeats && strings.EqualFold(row[i], name)
			if strings.ContainsFunc(row[i], unicode.IsControl) {
				return nil, errTwin
			}
			if !slices.Contains([]string{"", "0", ".", "na", "unk", "unknown"}, strings.ToLower(row[i])) {
				*to = row[i]
			}
		}
		before, twice := known[r.ID]
		if r.ID == "" || repeats || twice && before != r {
			return nil, errTwin
		}
		if twice {
			continue
		}
		known[r.ID] = r
		sires[r.Sire], dams[r.Dam] = true, true
		out = append(out, r)
	}
	if header == nil {
		return nil, errTwin
	}
	for _, r := range out[:len(out):len(out)] {
		for _, parent := range []string{r.Sire, r.Dam} {
			if parent != "" && sires[parent] && dams[parent] {
				return nil, errTwin
			}
			if _, has := known[parent]; parent != "" && !has {
				known[parent] = pedigree.Record{ID: parent}
				out = append(out, known[parent])
			}
		}
	}
	return out, nil
}

// sameAsTwin compares the two readers on a text that the twin can read: without
// what encoding/csv takes in another way.
func sameAsTwin(t require.TestingT, text []byte) {
	if bytes.Contains(bytes.ReplaceAll(text, []byte("\r\n"), nil), []byte("\r")) || !utf8.Valid(text) || len(text) > 1<<20 {
		return
	}
	want, refused := twin(text)
	if errors.Is(refused, errOther) || errors.Is(refused, csv.ErrQuote) { // blanks behind a quote are fine here
		return
	}
	got, err := parentage.Parse(text, parentage.Options{})
	if refused != nil {
		require.Error(t, err, "%q", text)
		return
	}
	require.NoError(t, err, "%q", text)
	if diff := cmp.Diff(want, got.Records, cmpopts.EquateEmpty()); diff != "" {
		require.Fail(t, "differs from encoding/csv", "%q -twin +read:\n%s", text, diff)
	}
}

// Tables with every kind of blemish, made from few values so that rows clash.
func TestTwin(t *testing.T) {
	value := rapid.OneOf(
		rapid.SampledFrom([]string{"a", "b", "c", "A", "10", "11", "x y", "0", "", "NA", "unknown", "id", "sire", "dam", `"a"`, `"b, c"`, `"d ""e"""`, "\"f\ng\"", " a", "b\t", `"10" `, "é", "\u00a0", "q\"", `"r`}),
		rapid.StringMatching(`[a-c]{1,2}[0-9]{0,3}`),
	)
	rapid.Check(t, func(t *rapid.T) {
		header := rapid.SampledFrom([]string{"id,sire,dam", "Dam,ID,note,SIRE", "\uFEFFid,sire,dam,note", "\n\"id\", sire,dam"}).Draw(t, "header")
		end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "line end")
		var text strings.Builder
		text.WriteString(header)
		width := 1 + strings.Count(header, ",")
		for range rapid.IntRange(0, 12).Draw(t, "rows") {
			text.WriteString(end)
			columns := rapid.SampledFrom([]int{width, width, width, width, width, width, width, width - 1, width + 1, 0}).Draw(t, "columns")
			for i := range columns {
				if i > 0 {
					text.WriteByte(',')
				}
				text.WriteString(value.Draw(t, "value"))
			}
		}
		text.WriteString(rapid.SampledFrom([]string{"", end, end + end}).Draw(t, "end"))
		sameAsTwin(t, []byte(text.String()))
	})
}

// Any table comes back, whatever its commas, quotes, line ends and order of
// columns, and however many ids there are.
func TestRoundTrip(t *testing.T) {
	id := rapid.StringMatching(`[A-Za-zä0-9][a-z ,;"ß'-]{0,5}[a-z1-9]`).Filter(func(s string) bool { return !strings.EqualFold(s, "unk") && !strings.EqualFold(s, "na") })
	rapid.Check(t, func(t *rapid.T) {
		ids := rapid.SliceOfNDistinct(id, 1, 12, rapid.ID).Draw(t, "ids")
		half := (len(ids) + 1) / 2
		sire, dam := rapid.SampledFrom(append(ids[:half:half], "")), rapid.SampledFrom(append(ids[half:len(ids):len(ids)], ""))
		var want []pedigree.Record
		for _, id := range ids {
			want = append(want, pedigree.Record{ID: id, Sire: sire.Draw(t, "sire"), Dam: dam.Draw(t, "dam")})
		}
		var text bytes.Buffer
		w := csv.NewWriter(&text)
		w.Comma = rapid.SampledFrom([]rune(",;\t")).Draw(t, "comma")
		w.UseCRLF = rapid.Bool().Draw(t, "CRLF")
		order := rapid.Permutation([]int{0, 1, 2, 3}).Draw(t, "columns")
		write := func(values ...string) {
			row := make([]string, 4)
			for i, at := range order {
				row[at] = values[i]
			}
			require.NoError(t, w.Write(row))
		}
		write("Animal", "father", "DAM", "note, of no use")
		for _, r := range want {
			write(r.ID, r.Sire, r.Dam, "\"\n,;\t")
		}
		w.Flush()
		got, err := parentage.Read(&text, parentage.Options{})
		require.NoError(t, err)
		require.Equal(t, want, got.Records)
	})
}

// The numbers of ids are right when there are more than expected.
func TestTwinLarge(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	var text bytes.Buffer
	text.WriteString("id,sire,dam\n")
	for i := range 30_000 {
		fmt.Fprintf(&text, "%d,m%d,f%d\n", 1+random.IntN(1<<30), 3*i-random.IntN(i/8+1), 5*i)
	}
	sameAsTwin(t, text.Bytes())
}

// No text does harm: it is refused with places inside it, or gives records that
// New understands, but for loops, and that come back when they are written.
func FuzzRead(f *testing.F) {
	for _, seed := range []string{
		"id,sire,dam\nc,a,b\na,,\n", "\uFEFFMother;Father;Individual\r\nb;a;c\r\n", "id\tsire\tdam\ra\t\t\r", "id,sire,dam\n\"a\nb\",,\n",
		"id,sire,dam\na,a,a\n", "id,sire,dam\n\"", "id,sire,dam,x\na,,,\"\n\nb,,,\"\n", "\xff\xfe", "id,sire,dam\n0,NA,unk\n\xff,,\n", "id,sire,dam\nA,b,\n a,,B\n", "id,sire,sire,dAm",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		sameAsTwin(t, text)
		table, err := parentage.Parse(bytes.Clone(text), parentage.Options{})
		if err != nil {
			var bad *parentage.Error
			require.ErrorAs(t, err, &bad)
			inside(t, text, bad.Problems)
			inside(t, text, bad.Warnings)
			return
		}
		inside(t, text, table.Warnings)
		for i := range table.Rows {
			require.LessOrEqual(t, table.Line(i), 1+bytes.Count(text, []byte("\n"))+bytes.Count(text, []byte("\r")))
		}
		_, err = pedigree.New(table.Records)
		if err = table.Locate(err); err != nil {
			var bad *parentage.Error
			require.ErrorAs(t, err, &bad)
			inside(t, text, bad.Problems)
		}
		again, err := parentage.Parse(written(t, table.Records), parentage.Options{})
		require.NoError(t, err)
		require.Equal(t, table.Records, again.Records)
	})
}

func inside(t *testing.T, text []byte, problems []parentage.Problem) {
	lines := 1 + bytes.Count(text, []byte("\n")) + bytes.Count(text, []byte("\r"))
	last := 0
	for _, p := range problems {
		require.True(t, p.Line >= max(last, 1) && p.Line <= lines && p.Column >= 1 && p.Message != "" && p.Cure != "", "%v", p)
		last = p.Line
	}
}

func written(t require.TestingT, records []pedigree.Record) []byte {
	var text bytes.Buffer
	w := csv.NewWriter(&text)
	require.NoError(t, w.Write([]string{"id", "sire", "dam"}))
	for _, r := range records {
		require.NoError(t, w.Write([]string{r.ID, r.Sire, r.Dam}))
	}
	w.Flush()
	return text.Bytes()
}
