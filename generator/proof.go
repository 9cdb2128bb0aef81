package main

import (
	"fmt"
	"strings"

	"slipbook/generator/course"
	"slipbook/generator/proof"
)

// proofCommand says what is wrong with the lessons.
type proofCommand struct {
	Content string `placeholder:"DIR" default:"content" help:"The folder with the lessons (${default})."`
	Format  string `placeholder:"FORMAT" default:"text" enum:"${formats}" help:"How to say it: text for people, json or sarif (SARIF 2.1.0) for other programs."`
}

// Run prints the findings, and fails when one of them would stop publish.
func (c *proofCommand) Run(s *streams) error {
	if err := findContent(c.Content); err != nil {
		return err
	}
	reader := proof.Reader{Today: today()}
	reading, findings := reader.Read(load(new(course.Reader), c.Content))
	if err := findings.Write(s.out, c.Format); err != nil {
		return err
	}
	if reading.Course != nil && reading.Course.Decoration != nil {
		fmt.Fprintln(s.say, whoseRows(reading.Course.Decoration.Origin))
	}
	if findings.Stop() {
		return errSaid
	}
	return nil
}

// mostNamed is how many of a course's own rows a line has room for.
const mostNamed = 8

// whoseRows says how much of the decoration table is the program's own, and
// what of it the course has written.
func whoseRows(o course.Origin) string {
	line := fmt.Sprintf("Decoration table: %d rows are the program's own, %d this course's", o.Program, o.Course)
	names := o.Names
	if len(names) > mostNamed {
		names = append(names[:mostNamed:mostNamed], fmt.Sprintf("%d more", len(o.Names)-mostNamed))
	}
	if len(names) > 0 {
		line += ": " + strings.Join(names, ", ")
	}
	return line + "."
}
