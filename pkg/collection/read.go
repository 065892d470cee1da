package collection

import (
	"io"
	"os"

	"github.com/spawnwright/spawnwright/pkg/strictyaml"
)

// Load reads the file at path; see [Read]. The error is about opening and
// reading it (*fs.PathError), the diagnostics about what stands in it.
func Load(path string) (*Collection, strictyaml.Diagnostics, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	// One byte too many is enough to see that the file is too large.
	data, err := io.ReadAll(io.LimitReader(f, strictyaml.MaxBytes+1))
	if err != nil {
		return nil, nil, err
	}
	c, problems := Read(path, data)
	return c, problems, nil
}

// Read reads data as a collection; file is only shown in messages. All
// problems are given in one run, worst first. The collection is nil when one of
// them is an error. Time and memory grow in proportion to the file, save for
// sorting the diary by date.
func Read(file string, data []byte) (*Collection, strictyaml.Diagnostics) {
	doc := strictyaml.Parse(file, data)
	return nil, doc.Problems()
}
