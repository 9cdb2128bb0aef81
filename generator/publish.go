package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"runtime/debug"
	"strings"

	"slipbook/generator/address"
	"slipbook/generator/assets"
	"slipbook/generator/offline"
	"slipbook/generator/press"
	"slipbook/generator/shelf"
)

// publishCommand prints the handbook into a folder.
type publishCommand struct {
	Content string `placeholder:"DIR" default:"content" help:"The folder with the lessons (${default})."`
	To      string `placeholder:"DIR" default:"public" help:"The folder for the handbook (${default}): a new one, an empty one, or one that an earlier publish wrote and that holds nothing else. Names in it that start with a dot are kept."`
	Look    string `placeholder:"NAME" default:"studio" help:"The look of the pages (${default})."`
	// A copy for the instructor is one that students must not get by mistake:
	// it is asked for each time, and says so on each page.
	Teaching bool `help:"Make the instructor's copy: with the notes for teaching in the lessons and on a page of their own. It never takes the place of a students' copy, nor the other way round."`
	Changes  bool `help:"Name each file that is new, changed or gone since the last publish."`
}

// Run makes the handbook and puts it on the shelf, or says why not and leaves
// the folder as it was.
func (c *publishCommand) Run(s *streams) error {
	if err := c.check(); err != nil {
		return err
	}
	boundMemory()
	h, err := open(c.Content, c.Look)
	if err != nil {
		return err
	}
	h.copy = press.Copy{Teaching: c.Teaching, Kept: true}
	s.progress("Reading. The calculators are compiled too, if they have changed.")
	edition, findings, err := h.print(context.Background())
	if len(findings) > 0 {
		if err := findings.Write(s.say, "text"); err != nil {
			return err
		}
	}
	if err != nil {
		return err
	}
	if findings.Stop() {
		return fmt.Errorf("nothing was published, and %q is as it was; mend the errors and publish again", c.To)
	}
	s.progress("Printing and writing.")
	names, err := edition.Addresses()
	if err != nil {
		return err
	}
	changes, err := c.put(edition, names)
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s: %d pages, %d files in all\n%s", c.To, edition.Pages(), len(names)+1, c.report(changes))
	return err
}

// memory is what a publish may take before it looks for garbage more often, in bytes. A
// course of 2,000 lessons holds two thirds of it; one that holds more takes more, and up to
// twice the time.
const memory = 270 << 20

// boundMemory lets garbage lie as long as there is room for it, unless who starts the
// program says otherwise.
func boundMemory() {
	if os.Getenv("GOGC") == "" && os.Getenv("GOMEMLIMIT") == "" {
		debug.SetGCPercent(200)
		debug.SetMemoryLimit(memory)
	}
}

// check refuses a folder that must not be replaced before any work is done.
func (c *publishCommand) check() error {
	if err := shelf.Apart(c.To, c.Content); err != nil {
		return err
	}
	return shelf.Check(c.To, c.copy())
}

// copy is whose copy is made.
func (c *publishCommand) copy() shelf.Copy {
	if c.Teaching {
		return shelf.Instructor
	}
	return shelf.Students
}

// put prints the edition into the folder. A signal to end is heeded until the folder changes,
// and then waits, so that nothing half-made is left.
func (c *publishCommand) put(e *press.Edition, names []string) (*shelf.Changes, error) {
	ctx, caught := catchSignals()
	defer caught.release()
	file := func(address string) ([]byte, error) {
		data, _, err := e.File(address)
		return data, err
	}
	changes, err := shelf.Replace(ctx, c.To, shelf.Edition{
		Names: names, File: file, Copy: c.copy(), Shared: assets.Fingerprinted,
		Last: address.Worker, LastFile: func(all []shelf.Made) ([]byte, error) { return e.Worker(published(all)) },
	})
	if err != nil && errors.Is(err, ctx.Err()) {
		return nil, caught.stopped(fmt.Sprintf("nothing was published, and %q is as it was", c.To))
	}
	return changes, err
}

// published is what a service worker is told of the files that were made.
func published(all []shelf.Made) []offline.File {
	files := make([]offline.File, len(all))
	for n, f := range all {
		files[n] = offline.File{Address: f.Name, Size: f.Size, Sum: f.Sum}
	}
	return files
}

// report says what of a published handbook differs from before.
func (c *publishCommand) report(changes *shelf.Changes) string {
	var out strings.Builder
	fmt.Fprintf(&out, "%d new, %d changed, %d gone, %d as before\n", len(changes.New), len(changes.Changed), len(changes.Gone), changes.Same)
	if c.Changes {
		for _, list := range []struct {
			word  string
			names []string
		}{{"new", changes.New}, {"changed", changes.Changed}, {"gone", changes.Gone}, {"kept for one edition more", changes.Kept}} {
			for _, name := range list.names {
				fmt.Fprintf(&out, "%s: %s\n", list.word, name)
			}
		}
	}
	if changes.InPlace {
		out.WriteString("The folder could not be moved, so its files were replaced one by one.\n")
	}
	if changes.Aside != "" {
		fmt.Fprintf(&out, "An earlier slipbook wrote what was there before and listed nothing, so nobody can tell whether some of it is yours, or whose copy it was. It stands whole in %q: look through it and remove it.\n", changes.Aside)
	}
	return out.String()
}
