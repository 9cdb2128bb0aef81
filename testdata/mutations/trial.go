//go:build unix

package main

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"slipbook/testdata/mutations/table"
)

// left are the folders that no copy needs.
var left = []string{".git", "node_modules", "public", "kept"}

// trial is a copy of the tree in which changes are made.
type trial struct {
	root  string
	sound map[string]bool // tests that were seen to pass without a change
}

// newTrial copies the tree.
func newTrial(ctx context.Context, root string) (*trial, error) {
	folder, err := os.MkdirTemp("", "slipbook-mutations-")
	if err != nil {
		return nil, err
	}
	t := &trial{root: folder, sound: map[string]bool{}}
	err = filepath.WalkDir(root, func(at string, e fs.DirEntry, err error) error {
		if err = errors.Join(err, ctx.Err()); err != nil {
			return err
		}
		inside, err := filepath.Rel(root, at)
		switch {
		case err != nil:
			return err
		case e.IsDir() && slices.Contains(left, e.Name()):
			return fs.SkipDir
		case e.IsDir():
			return os.MkdirAll(filepath.Join(folder, inside), 0o755)
		case e.Type().IsRegular():
			return copyFile(at, filepath.Join(folder, inside), e)
		}
		return nil // links lead to tools of outside judges
	})
	if err != nil {
		t.remove()
		return nil, fmt.Errorf("copying the tree: %w", err)
	}
	return t, nil
}

// copyFile copies a file with its mode.
func copyFile(from, to string, e fs.DirEntry) error {
	info, err := e.Info()
	if err != nil {
		return err
	}
	data, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	return os.WriteFile(to, data, info.Mode().Perm())
}

// remove removes the copy.
func (t *trial) remove() {
	if err := os.RemoveAll(t.root); err != nil {
		fmt.Fprintln(os.Stderr, "mutations: the copy of the tree stays:", err)
	}
}

// one makes one change, runs its tests, and takes it back.
func (t *trial) one(ctx context.Context, m table.Mutant) (noticed bool, err error) {
	if err := t.pass(ctx, m); err != nil {
		return false, err
	}
	before, after, err := m.Changed(t.root)
	if err != nil {
		return false, err
	}
	file := filepath.Join(t.root, filepath.FromSlash(m.File))
	if err := os.WriteFile(file, after, 0o644); err != nil {
		return false, err
	}
	said, failed := t.test(ctx, m)
	if err := os.WriteFile(file, before, 0o644); err != nil {
		return false, err
	}
	switch {
	case !built(said):
		return false, fmt.Errorf("%s does not build: %s", m.Name, said)
	case failed == nil && strings.Contains(said, "[no tests to run]"):
		return false, fmt.Errorf("%s: no test is called as %q says", m.Name, m.Run)
	}
	return failed != nil, nil
}

// pass makes sure, once for each set of tests, that they pass without a change:
// else they would seem to notice everything.
func (t *trial) pass(ctx context.Context, m table.Mutant) error {
	key := strings.Join(append(m.Packages, m.Run), " ")
	if t.sound[key] {
		return nil
	}
	if said, err := t.test(ctx, m); err != nil {
		return fmt.Errorf("%s: the tests fail without any change: %s", m.Name, said)
	}
	t.sound[key] = true
	return nil
}

// test runs the tests of a mutant and returns what they said. An end of the
// context ends them with all that they have started.
func (t *trial) test(ctx context.Context, m table.Mutant) (said string, err error) {
	arguments := []string{"test", "-count", "1", "-failfast", "-trimpath", "-ldflags", "-s -w", "-timeout", "5m", "-vet", "off"}
	if m.Judges {
		arguments = append(arguments, "-tags", "judges")
	}
	if m.Run != "" {
		arguments = append(arguments, "-run", m.Run)
	}
	command := exec.CommandContext(ctx, "go", append(arguments, m.Packages...)...)
	command.Dir = t.root
	command.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	command.Cancel = func() error { return syscall.Kill(-command.Process.Pid, syscall.SIGKILL) }
	out, err := command.CombinedOutput()
	return string(out), err
}

// built reports whether what the go command said is about tests, and not about
// code that is none.
func built(said string) bool {
	return !strings.Contains(said, "[build failed]") && !strings.Contains(said, "[setup failed]")
}
