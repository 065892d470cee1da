package main

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// clutchTable writes a table of 1,000,000 animals: 20 cohorts, in each 200 sires
// and 1,000 dams of the one before with 50 young a pair.
func clutchTable(b *testing.B) string {
	b.Helper()
	const cohorts, sires, dams, young = 20, 200, 1000, 50
	name := filepath.Join(b.TempDir(), "clutches.csv")
	f, err := os.Create(name)
	if err != nil {
		b.Fatal(err)
	}
	w := bufio.NewWriter(f)
	random := rand.New(rand.NewPCG(1, 2))
	fmt.Fprintln(w, "id,sire,dam")
	for cohort := range cohorts {
		before := 1 + (cohort-1)*dams*young
		fathers, mothers := random.Perm(dams*young/2), random.Perm(dams*young/2)
		for couple := range dams {
			parents := ","
			if cohort > 0 {
				parents = fmt.Sprintf("%d,%d", before+2*fathers[couple%sires], before+2*mothers[couple]+1)
			}
			for i := range young {
				fmt.Fprintf(w, "%d,%s\n", 1+(cohort*dams+couple)*young+i, parents)
			}
		}
	}
	if err := errors.Join(w.Flush(), f.Close()); err != nil {
		b.Fatal(err)
	}
	return name
}

// BenchmarkKinTable compares the command from a table of 1,000,000 animals to a
// row for each with a bare program that reads the rows and writes them back, in
// turns.
func BenchmarkKinTable(b *testing.B) {
	name := clutchTable(b)
	out := filepath.Join(b.TempDir(), "out.csv")
	var ours, bare time.Duration
	for b.Loop() {
		start := time.Now()
		if code := run([]string{"kin", "--pedigree", name, "--format", "csv", "-q"}, strings.NewReader(""), create(b, out), io.Discard); code != exitDone {
			b.Fatal(code)
		}
		ours += time.Since(start)
		b.StopTimer()
		start = time.Now()
		readAndWriteBack(b, name, create(b, out))
		bare += time.Since(start)
		b.StartTimer()
	}
	b.ReportMetric(float64(ours)/float64(bare), "times-bare")
}

func create(b *testing.B, name string) *os.File {
	b.Helper()
	f, err := os.Create(name)
	if err != nil {
		b.Fatal(err)
	}
	b.Cleanup(func() { f.Close() })
	return f
}

func readAndWriteBack(b *testing.B, name string, out io.Writer) {
	in, err := os.Open(name)
	if err != nil {
		b.Fatal(err)
	}
	defer in.Close()
	r, w := csv.NewReader(in), csv.NewWriter(out)
	for {
		row, err := r.Read()
		if err == io.EOF {
			break
		}
		if err == nil {
			err = w.Write(row)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
	w.Flush()
	if err := w.Error(); err != nil {
		b.Fatal(err)
	}
}
