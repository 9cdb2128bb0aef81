//go:build !carried

package assets

import (
	"testing"
	"testing/fstest"
)

func TestDigestFollowsWhatDecidesTheBytes(t *testing.T) {
	sources := func() fstest.MapFS {
		return fstest.MapFS{
			"go.mod":                        {Data: []byte("module slipbook\n")},
			"calculators/slip/slip.go":      {Data: []byte("package slip\n")},
			"calculators/slip/slip_test.go": {Data: []byte("package slip\n")},
			"calculators/notes.txt":         {Data: []byte("notes\n")},
			"generator/main.go":             {Data: []byte("package main\n")},
		}
	}
	first, err := digestOf(sources(), "go1.26")
	if err != nil {
		t.Fatal(err)
	}
	for _, tt := range []struct {
		name, file, text, goVersion string
		same                        bool
	}{
		{"nothing", "go.mod", "module slipbook\n", "go1.26", true},
		{"a source", "calculators/slip/slip.go", "package slip // changed\n", "go1.26", false},
		{"a new source", "calculators/slip/new.go", "", "go1.26", false},
		{"go.mod", "go.mod", "module slipbook\n\ngo 1.26\n", "go1.26", false},
		{"the Go version", "go.mod", "module slipbook\n", "go1.27", false},
		{"a test", "calculators/slip/slip_test.go", "package slip // changed\n", "go1.26", true},
		{"another file", "calculators/notes.txt", "changed\n", "go1.26", true},
		{"the generator", "generator/main.go", "package main // changed\n", "go1.26", true},
	} {
		t.Run(tt.name, func(t *testing.T) {
			fsys := sources()
			fsys[tt.file] = &fstest.MapFile{Data: []byte(tt.text)}
			got, err := digestOf(fsys, tt.goVersion)
			if err != nil {
				t.Fatal(err)
			}
			if (got == first) != tt.same {
				t.Errorf("digest same = %v, want %v", got == first, tt.same)
			}
		})
	}
}

func TestDigestWantsGoMod(t *testing.T) {
	if _, err := digestOf(fstest.MapFS{"calculators/a.go": {}}, "go1.26"); err == nil {
		t.Error("no error without go.mod")
	}
}
