package parentage_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/spawnwright/spawnwright/pkg/parentage"
)

// population is a table of 20 cohorts, each from couples of the one before: sires
// males and dams females, with young of each couple.
func population(cohorts, sires, dams, young int, id string) []byte {
	random := rand.New(rand.NewPCG(1, 2))
	var text bytes.Buffer
	text.WriteString("id,sire,dam\n")
	size := dams * young
	for cohort := range cohorts {
		for couple := range dams {
			sire, dam := "", ""
			if cohort > 0 {
				first := 1 + (cohort-1)*size
				sire = fmt.Sprintf(id, first+2*random.IntN(size/2))
				dam = fmt.Sprintf(id, first+2*random.IntN(size/2)+1)
				if couple >= sires {
					sire = fmt.Sprintf(id, first+2*(couple%sires))
				}
			}
			for i := range young {
				fmt.Fprintf(&text, id+",%s,%s\n", 1+cohort*size+couple*young+i, sire, dam)
			}
		}
	}
	return text.Bytes()
}

// BenchmarkRead compares reading a table of 1,000,000 animals with what
// encoding/csv takes to go through it without building anything, in turns.
func BenchmarkRead(b *testing.B) {
	for _, test := range []struct {
		name string
		text []byte
	}{
		{"clutches", population(20, 200, 1000, 50, "%d")},
		{"clutches, ids with capitals", population(20, 200, 1000, 50, "AC-%07d")},
		{"small families", population(20, 500, 25000, 2, "%d")},
	} {
		b.Run(test.name, func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(test.text)))
			var ours, twin time.Duration
			for b.Loop() {
				start := time.Now()
				table, err := parentage.Read(bytes.NewReader(test.text), parentage.Options{})
				if err != nil || len(table.Records) != 1_000_000 {
					b.Fatal(err)
				}
				ours += time.Since(start)
				b.StopTimer()
				start = time.Now()
				if rows := goThrough(b, test.text); rows != 1_000_001 {
					b.Fatal(rows)
				}
				twin += time.Since(start)
				b.StartTimer()
			}
			b.ReportMetric(float64(ours)/float64(twin), "times-encoding/csv")
		})
	}
}

func goThrough(b *testing.B, text []byte) (rows int) {
	r := csv.NewReader(bytes.NewReader(text))
	r.ReuseRecord = true
	for {
		if _, err := r.Read(); err == io.EOF {
			return rows
		} else if err != nil {
			b.Fatal(err)
		}
		rows++
	}
}
