// Package pkg_test looks at the sources of all packages below this folder: who
// imports whom, and who reads a clock.
package pkg_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "github.com/spawnwright/spawnwright"

// ours has the packages of this module that each package may import.
var ours = map[string][]string{
	"civil":        {},
	"internal":     {}, // steps that several packages take, and what tests share
	"pedigree":     {"internal"},
	"strictyaml":   {},
	"svg":          {},
	"wholefile":    {},
	"species":      {"civil", "strictyaml"},
	"development":  {"civil", "species"},
	"season":       {"civil"},
	"planner":      {"civil"},
	"timetable":    {"civil", "planner", "season"},
	"calendar":     {"civil"},
	"parcel":       {"calendar", "civil"},
	"diversity":    {"internal", "pedigree"},
	"parentage":    {"pedigree"},
	"pairing":      {"civil", "pedigree"},
	"breedingplan": {"civil", "pairing", "pedigree"},
	"horizon":      {},
	"occupancy":    {"civil"},
	"lineage":      {"pedigree"},
	"collection":   {"civil", "species", "strictyaml"},
	"kin":          {"civil", "collection", "diversity", "lineage", "parentage", "pedigree", "strictyaml"},
	"almanac":      {"calendar", "civil", "collection", "internal", "rearing", "species"},
	"brood": {
		"civil", "collection", "development", "internal", "planner", "rearing", "season", "species", "timetable",
	},
	"breeders": {"civil", "collection", "kin", "pairing", "pedigree", "species"},
	"departure": {
		"breeders", "calendar", "civil", "collection", "development", "kin", "pairing", "parcel", "pedigree", "rearing", "species",
	},
	"rearing":     {"civil", "collection", "development", "internal", "kin", "species", "strictyaml"},
	"spreadsheet": {"civil", "collection", "species", "strictyaml"},
	"record":      {"civil", "collection", "species", "strictyaml", "wholefile"},
	"frogroom": {
		"almanac", "breeders", "breedingplan", "brood", "calendar", "civil", "collection", "departure", "development", "horizon", "internal", "kin", "lineage",
		"occupancy", "pairing", "pedigree", "planner", "rearing", "season", "species", "strictyaml", "timetable",
	},
	"picture": {"civil", "collection", "frogroom", "horizon", "kin", "svg"},
}

// foreign has the modules of others that each package may import, tests apart.
var foreign = map[string][]string{
	"strictyaml": {"go.yaml.in/yaml/v3"},
	"species":    {"go.yaml.in/yaml/v3"},
	"collection": {"go.yaml.in/yaml/v3"},
	"calendar":   {"github.com/arran4/golang-ical", "github.com/rickar/cal/v2"},
	"lineage":    {"github.com/emicklei/dot"},
}

// standard has packages of the standard library that are kept out of pkg, with
// the reason, and those that may use them all the same.
var standard = map[string]struct {
	reason string
	but    []string
}{
	"crypto/rand": {"the same input gives the same bytes", nil},
	"log":         {"a doubt is part of the result", nil},
	"log/slog":    {"a doubt is part of the result", nil},
	"net":         {"nothing here talks to the network", nil},
	"net/http":    {"nothing here talks to the network", nil},
	"os/exec":     {"only the command starts programs", nil},
	"flag":        {"only the command has flags", nil},
	"os":          {"only these touch files", []string{"wholefile", "collection", "frogroom"}},
	"embed":       {"only the profiles are embedded", []string{"species"}},
	"unsafe":      {"nothing here needs it", nil},
}

// uses has names that no package in pkg may use, with the reason.
var uses = map[string]string{
	"time.Now":    "today comes in as a date",
	"time.Since":  "today comes in as a date",
	"time.Until":  "today comes in as a date",
	"time.Local":  "dates have no time zone",
	"os.Stdin":    "the command reads and prints",
	"os.Stdout":   "the command reads and prints",
	"os.Stderr":   "the command reads and prints",
	"os.Exit":     "the command ends the program",
	"os.Getenv":   "what counts comes in as an argument",
	"fmt.Print":   "the command prints",
	"fmt.Printf":  "the command prints",
	"fmt.Println": "the command prints",
	"fmt.Scan":    "the command reads",
	"fmt.Scanln":  "the command reads",
	"maps.Keys":   "its order is random: use slices.Sorted(maps.Keys(m))",
	"maps.Values": "its order is random",
	"maps.All":    "its order is random",
}

// seeded has the names of math/rand that take a seed or hold one.
var seeded = []string{"New", "NewSource", "NewPCG", "NewChaCha8", "NewZipf", "Rand", "Source", "PCG", "ChaCha8", "Zipf"}

// TestImports says which way the arrows between the packages point.
func TestImports(t *testing.T) {
	for _, f := range sources(t, ".") {
		if _, known := ours[f.pkg]; !known {
			t.Errorf("%s: pkg/%s is not in the table of this test", f.fset.Position(f.file.Pos()), f.pkg)
			continue
		}
		for _, spec := range f.file.Imports {
			if problem := checkImport(f.pkg, strings.Trim(spec.Path.Value, `"`)); problem != "" {
				t.Errorf("%s: %s", f.fset.Position(spec.Pos()), problem)
			}
		}
	}
}

func checkImport(pkg, imported string) string {
	first, _, _ := strings.Cut(imported, "/")
	switch {
	case strings.HasPrefix(imported, module+"/"):
		other, inPkg := strings.CutPrefix(imported, module+"/pkg/")
		top, _, _ := strings.Cut(other, "/")
		if !inPkg || top != pkg && !slices.Contains(ours[pkg], top) {
			return fmt.Sprintf("%s may not import %s", pkg, imported)
		}
	case strings.Contains(first, "."):
		within := func(m string) bool { return imported == m || strings.HasPrefix(imported, m+"/") }
		if !slices.ContainsFunc(foreign[pkg], within) {
			return fmt.Sprintf("%s may not import %s", pkg, imported)
		}
	default:
		if rule, kept := standard[imported]; kept && !slices.Contains(rule.but, pkg) {
			return fmt.Sprintf("%s may not import %s: %s", pkg, imported, rule.reason)
		}
	}
	return ""
}

// TestNoClock looks for uses of the clock, the terminal and chance.
func TestNoClock(t *testing.T) {
	for _, f := range sources(t, ".") {
		for _, problem := range checkUses(f.fset, f.file) {
			t.Error(problem)
		}
	}
}

func checkUses(fset *token.FileSet, file *ast.File) []string {
	var problems []string
	names := importNames(file)
	inspect := func(n ast.Node, within ast.Node) {
		selector, ok := n.(*ast.SelectorExpr)
		if !ok {
			return
		}
		x, ok := selector.X.(*ast.Ident)
		if !ok || names[x.Name] == "" {
			return
		}
		imported, name := names[x.Name], path.Base(names[x.Name])+"."+selector.Sel.Name
		if strings.HasPrefix(imported, "math/rand") && !slices.Contains(seeded, selector.Sel.Name) {
			problems = append(problems, fmt.Sprintf("%s: %s of %s has no seed", fset.Position(n.Pos()), selector.Sel.Name, imported))
		}
		if strings.HasPrefix(name, "maps.") && sorted(within) {
			return
		}
		if reason, bad := uses[name]; bad {
			problems = append(problems, fmt.Sprintf("%s: %s: %s", fset.Position(n.Pos()), name, reason))
		}
	}
	var stack []ast.Node
	ast.Inspect(file, func(n ast.Node) bool {
		if n == nil {
			stack = stack[:len(stack)-1]
			return true
		}
		var within ast.Node // the call around maps.Keys(m), one up from the call itself
		if len(stack) >= 2 {
			within = stack[len(stack)-2]
		}
		inspect(n, within)
		stack = append(stack, n)
		return true
	})
	return problems
}

// sorted reports whether n is a call of slices.Sorted or one of its kin.
func sorted(n ast.Node) bool {
	call, ok := n.(*ast.CallExpr)
	if !ok {
		return false
	}
	selector, ok := call.Fun.(*ast.SelectorExpr)
	return ok && strings.HasPrefix(selector.Sel.Name, "Sorted")
}

func importNames(file *ast.File) map[string]string {
	names := make(map[string]string)
	for _, spec := range file.Imports {
		imported := strings.Trim(spec.Path.Value, `"`)
		name := path.Base(strings.TrimSuffix(imported, "/v2"))
		if spec.Name != nil {
			name = spec.Name.Name
		}
		names[name] = imported
	}
	return names
}

type source struct {
	pkg  string // the folder right below pkg
	fset *token.FileSet
	file *ast.File
}

// sources parses all files below folder that are not tests, whatever system
// they are for.
func sources(t *testing.T, folder string) []source {
	t.Helper()
	var list []source
	err := filepath.WalkDir(folder, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && entry.Name() == "testdata" {
			return fs.SkipDir
		}
		if entry.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		fset := token.NewFileSet()
		file, err := parser.ParseFile(fset, name, nil, parser.SkipObjectResolution)
		pkg, _, _ := strings.Cut(filepath.ToSlash(name), "/")
		list = append(list, source{pkg, fset, file})
		return err
	})
	require.NoError(t, err)
	require.NotEmpty(t, list)
	return list
}

// TestThisTest plants faults, for a gate that cannot fail is none.
func TestThisTest(t *testing.T) {
	for _, row := range []struct{ pkg, imported, want string }{
		{"civil", "time", ""},
		{"season", module + "/pkg/civil", ""},
		{"season", module + "/pkg/pedigree", "season may not import " + module + "/pkg/pedigree"},
		{"civil", module + "/pkg/season", "civil may not import " + module + "/pkg/season"},
		{"frogroom", module + "/cmd/spawnwright/internal/table", "frogroom may not import " + module + "/cmd/spawnwright/internal/table"},
		{"calendar", "github.com/rickar/cal/v2/de", ""},
		{"season", "github.com/spf13/cobra", "season may not import github.com/spf13/cobra"},
		{"calendar", "github.com/rickar/cal/v22", "calendar may not import github.com/rickar/cal/v22"},
		{"pedigree", "crypto/rand", "pedigree may not import crypto/rand: the same input gives the same bytes"},
		{"collection", "os", ""},
		{"season", "os", "season may not import os: only these touch files"},
	} {
		assert.Equal(t, row.want, checkImport(row.pkg, row.imported))
	}

	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "planted.go", `package planted
import (clock "time"; "fmt"; "maps"; "math/rand/v2"; "slices")
func f(m map[string]int) {
	_ = clock.Now()
	_ = clock.UTC
	fmt.Println(slices.Sorted(maps.Keys(m)))
	_ = slices.Collect(maps.Keys(m))
	now := clock.Now
	_ = rand.New(rand.NewPCG(1, 2)).IntN(3)
	_ = rand.IntN(3)
}`, parser.SkipObjectResolution)
	require.NoError(t, err)
	assert.Equal(t, []string{
		"planted.go:4:6: time.Now: today comes in as a date",
		"planted.go:6:2: fmt.Println: the command prints",
		"planted.go:7:21: maps.Keys: its order is random: use slices.Sorted(maps.Keys(m))",
		"planted.go:8:9: time.Now: today comes in as a date",
		"planted.go:10:6: IntN of math/rand/v2 has no seed",
	}, checkUses(fset, file))
}
