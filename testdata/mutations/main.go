//go:build unix

// Command mutations tries the tests: it makes one small wrong change after the
// other in a copy of the tree, and looks whether the tests that ought to notice
// it fail. It exists because a test that never failed has shown nothing: each
// change here is one that somebody could make by a slip of the pen, and that
// would cost a student a pot, or worse. Start it from the top of the tree:
//
//	go run ./testdata/mutations [name...]
//
// The changes stand in table.txt. Names choose some of them; a name that ends
// with a slash stands for all that begin with it. With -list they are printed,
// with -stale it is only looked whether each can still be made. It ends with 1
// where fewer than nine in ten are noticed, or not all of those that are about
// safety.
//
// All of it takes 22 minutes of processor time, which is a quarter of an hour on two
// cores that do nothing else.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"

	"slipbook/testdata/mutations/table"
)

func main() {
	list := flag.Bool("list", false, "print the changes and make none")
	stale := flag.Bool("stale", false, "only look whether each change can be made")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	err := run(ctx, flag.Args(), *list, *stale)
	stop()
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutations:", err)
		os.Exit(1)
	}
}

// run does what was asked for with the changes of some names.
func run(ctx context.Context, names []string, list, stale bool) error {
	root, err := top()
	if err != nil {
		return err
	}
	all, err := table.Read(root)
	if err != nil {
		return err
	}
	if all, err = named(all, names); err != nil {
		return err
	}
	slices.SortFunc(all, table.Compare)
	if list {
		for _, m := range all {
			fmt.Printf("%s%s\n\t%s\n\t%s\n", m.Name, mark(m), m.File, strings.Join(append(m.Packages, m.Run), " "))
		}
		return nil
	}
	if err := makeable(root, all); err != nil || stale {
		return err
	}
	return try(ctx, root, all)
}

// top finds the folder that holds go.mod, from where the command was started up.
func top() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir, nil
		}
		if dir == filepath.Dir(dir) {
			return "", errors.New("there is no go.mod here or above; start this from the top of the tree")
		}
		dir = filepath.Dir(dir)
	}
}

// named returns the mutants of some names, or all where there are none.
func named(all []table.Mutant, names []string) ([]table.Mutant, error) {
	if len(names) == 0 {
		return all, nil
	}
	var some []table.Mutant
	for _, name := range names {
		before := len(some)
		for _, m := range all {
			if m.Name == name || strings.HasSuffix(name, "/") && strings.HasPrefix(m.Name, name) {
				some = append(some, m)
			}
		}
		if len(some) == before {
			return nil, fmt.Errorf("there is no mutant %q; -list prints them", name)
		}
	}
	return some, nil
}

// makeable reports the changes that can be made no more.
func makeable(root string, all []table.Mutant) error {
	var stale []error
	for _, m := range all {
		_, _, err := m.Changed(root)
		stale = append(stale, err)
	}
	return errors.Join(stale...)
}

// try makes the changes one after the other and prints what became of each.
func try(ctx context.Context, root string, all []table.Mutant) error {
	t, err := newTrial(ctx, root)
	if err != nil {
		return err
	}
	defer t.remove()
	var r result
	for _, m := range all {
		noticed, err := t.one(ctx, m)
		if ctx.Err() != nil {
			return errors.New("stopped")
		}
		r.add(m, noticed, err)
	}
	return r.end()
}

// mark is what is printed behind the name of a mutant.
func mark(m table.Mutant) string {
	if m.Safety {
		return " (safety)"
	}
	return ""
}
