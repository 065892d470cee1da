package strictyaml_test

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// BenchmarkParse reads 50,000 animals, about 5 MB.
func BenchmarkParse(b *testing.B) {
	var text bytes.Buffer
	text.WriteString("animals:\n")
	for i := range 50_000 {
		fmt.Fprintf(&text, "  - {id: AC-%05d, species: agalychnis-callidryas, sex: unknown, line: T 2021, weight_g: %d.5}\n", i, i%20)
	}
	b.SetBytes(int64(text.Len()))
	b.ReportAllocs()
	for b.Loop() {
		if doc := strictyaml.Parse("f", text.Bytes()); doc.Root == nil {
			b.Fatal(doc.Problems())
		}
	}
}

// BenchmarkParseMistake looks for the line of a mistake at the end of a file.
func BenchmarkParseMistake(b *testing.B) {
	text := append(bytes.Repeat([]byte("- {id: AC-01, sex: unknown}\n"), 9_000), "x: 1\n"...)
	b.SetBytes(int64(len(text)))
	for b.Loop() {
		if doc := strictyaml.Parse("f", text); doc.Problems()[0].Line != 9_001 {
			b.Fatal(doc.Problems())
		}
	}
}
