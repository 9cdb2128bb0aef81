package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"strings"

	"slipbook/generator/press"
	"slipbook/generator/shelf"
)

// publishCommand prints the handbook into a folder.
type publishCommand struct {
	Content string `placeholder:"DIR" default:"content" help:"The folder with the lessons (${default})."`
	To      string `placeholder:"DIR" default:"public" help:"The folder for the handbook (${default}): a new one, an empty one, or one that an earlier publish wrote. Names in it that start with a dot are kept."`
	Look    string `placeholder:"NAME" default:"studio" help:"The look of the pages (${default})."`
	// A copy for the instructor is one that students must not get by mistake:
	// it is asked for each time, and says so on each page.
	Teaching bool `help:"Make the instructor's copy: with the notes for teaching in the lessons and on a page of their own. Keep it away from where students' copies are."`
}

// Run makes the handbook and puts it on the shelf, or says why not and leaves
// the folder as it was.
func (c *publishCommand) Run(s *streams) error {
	if err := c.check(); err != nil {
		return err
	}
	h, err := open(c.Content, c.Look)
	if err != nil {
		return err
	}
	h.teaching = c.Teaching
	s.progress("Reading and printing. The calculators are compiled too, if they have changed.")
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
	if err := c.put(edition); err != nil {
		return err
	}
	_, err = fmt.Fprintf(s.out, "%s: %d pages, %d files in all\n", c.To, pages(edition), len(edition))
	return err
}

// check refuses a folder that must not be replaced before any work is done.
func (c *publishCommand) check() error {
	if err := shelf.Apart(c.To, c.Content); err != nil {
		return err
	}
	return shelf.Check(c.To)
}

// put replaces the folder. For that moment Ctrl-C waits, so that it leaves
// nothing half-made beside the folder.
func (c *publishCommand) put(edition press.Edition) error {
	signal.Ignore(os.Interrupt)
	defer signal.Reset(os.Interrupt)
	return shelf.Replace(c.To, edition)
}

// pages counts the pages of an edition.
func pages(edition press.Edition) int {
	n := 0
	for name := range edition {
		if strings.HasSuffix(name, ".html") {
			n++
		}
	}
	return n
}
