package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

// The scripts run this test program under the name slipbook.
func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"slipbook": main})
}

// Each script of testdata/script is a use of the program, from outside. It
// finds the demo course in $WORK/content, its own to break, and the checkout,
// in which the calculators are compiled, in $ROOT. Besides the usual commands
// there is "ends N program arguments...": the program ends with status N.
func TestScripts(t *testing.T) {
	root, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup: func(e *testscript.Env) error {
			e.Setenv("ROOT", root)
			// Compiled calculators and Go's own cache are where they always are.
			for _, name := range []string{"HOME", "XDG_CACHE_HOME", "GOCACHE", "GOPATH", "GOMODCACHE", "GOFLAGS", "GOPROXY", "GOTOOLCHAIN"} {
				if value, ok := os.LookupEnv(name); ok {
					e.Setenv(name, value)
				}
			}
			return os.CopyFS(filepath.Join(e.WorkDir, "content"), os.DirFS(filepath.Join(root, "content")))
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){"ends": ends},
	})
}

// ends runs a program and checks its status.
func ends(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: ends status program arguments...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		exit, ok := errors.AsType[*exec.ExitError](err)
		if !ok {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("ended with %d, want %d", got, want)
	}
}
