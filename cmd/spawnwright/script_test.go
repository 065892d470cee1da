package main

import (
	"encoding/hex"
	"encoding/json"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var update = flag.Bool("update", false, "rewrite what the scripts expect")

// TestMain lets the scripts run this program as a process of its own.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"spawnwright": main})
}

// TestScript runs the terminal sessions of testdata/script. With
// SPAWNWRIGHT_BINARY set they run that program instead of the one in this test.
func TestScript(t *testing.T) {
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("EXAMPLES", filepath.Join(root, "examples"))
			e.Setenv("NO_COLOR", "1")
			if binary := os.Getenv("SPAWNWRIGHT_BINARY"); binary != "" {
				e.Setenv("PATH", filepath.Dir(binary)+string(os.PathListSeparator)+e.Getenv("PATH"))
			}
			folder, _, _ := strings.Cut(e.Getenv("PATH"), string(os.PathListSeparator))
			e.Setenv("ALONE", folder) // as PATH: nothing but spawnwright is installed
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":    exits,
			"json":     schemaJSON,
			"crlf":     plainLines,
			"bytes":    writeBytes,
			"size":     writeSize,
			"diary":    addToDiary,
			"moved":    sameEvents,
			"with":     withChange,
			"sameuids": sameUIDs,
		},
	})
}

// exits runs a command and compares its exit code: exits CODE COMMAND [ARG…].
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE COMMAND [ARG…]")
	}
	want, err := strconv.Atoi(args[0])
	if err != nil {
		ts.Fatalf("exits: %v", err)
	}
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var status *exec.ExitError
		if !errors.As(err, &status) {
			ts.Fatalf("exits: %v", err)
		}
		got = status.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// schemaJSON holds that a file is one JSON document that begins with the number
// of its schema: json FILE.
func schemaJSON(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: json FILE")
	}
	text := ts.ReadFile(args[0])
	var document map[string]json.RawMessage
	if err := json.Unmarshal([]byte(text), &document); err != nil {
		ts.Fatalf("%s is not JSON: %v", args[0], err)
	}
	if !strings.HasPrefix(text, "{\n  \"schema\": 1,\n") || len(document) != 2 {
		ts.Fatalf("%s is not the schema number and one result", args[0])
	}
	if strings.Contains(text, "null") {
		ts.Fatalf("%s has a null: an empty list is written []", args[0])
	}
}

// plainLines holds that all lines of a file end in CRLF, and writes it with
// plain line ends, for a script shows no others: crlf FILE PLAIN.
func plainLines(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: crlf FILE PLAIN")
	}
	text := ts.ReadFile(args[0])
	plain := strings.ReplaceAll(text, "\r\n", "\n")
	if strings.ReplaceAll(plain, "\n", "\r\n") != text {
		ts.Fatalf("a line of %s does not end in CRLF", args[0])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(plain), 0o600))
}

// writeBytes makes a file of bytes that cannot stand in a script: bytes FILE HEX.
func writeBytes(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: bytes FILE HEX")
	}
	data, err := hex.DecodeString(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o600))
}

// writeSize makes a file of that many bytes, all of them 0: size FILE BYTES.
func writeSize(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: size FILE BYTES")
	}
	size, err := strconv.ParseInt(args[1], 10, 64)
	ts.Check(err)
	f, err := os.Create(ts.MkAbs(args[0]))
	ts.Check(err)
	ts.Check(f.Truncate(size))
	ts.Check(f.Close())
}

// withChange copies a file with one place of it changed: with FILE OLD NEW COPY.
func withChange(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: with FILE OLD NEW COPY")
	}
	text := ts.ReadFile(args[0])
	if strings.Count(text, args[1]) != 1 {
		ts.Fatalf("%q stands in %s %d times", args[1], args[0], strings.Count(text, args[1]))
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[3]), []byte(strings.Replace(text, args[1], args[2], 1)), 0o600))
}
