package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/proof"
	"slipbook/generator/terminal"
)

// calcCommand answers with the handbook's calculators.
type calcCommand struct {
	Name    string   `arg:"" optional:"" help:"A calculator. Without it, all are listed; alone, its inputs are."`
	Given   []string `arg:"" optional:"" name:"key=value" sep:"none" help:"Its inputs, such as mass=174.5 or volume='2 US pint'. A list may be given as one value with spaces, or by repeating its key."`
	JSON    bool     `name:"json" help:"Answer in JSON, for other programs."`
	Content string   `placeholder:"DIR" help:"Write numbers and measures as the course in this folder does: its decimal mark, its pint. Without it the point is decimal, and a pint is asked about. A calculator that plans takes the course's decoration table, and one that is told a clay the course's clays, from here or from the folder content."`
}

// Help closes the command's help.
func (c *calcCommand) Help() string {
	return "For example: slipbook calc slip-density mass=174.5 volume=100"
}

// Run lists, describes or answers, by how much was given. With --json a
// calculator is always answered.
func (c *calcCommand) Run(s *streams) error {
	settings, err := c.settings(s)
	if err != nil {
		return err
	}
	calculators := catalog.In(settings.Language())
	declared := calculators.Find(c.Name)
	switch {
	case c.Name == "" && c.JSON:
		return terminal.JSONList(s.out, calculators)
	case c.Name == "":
		return terminal.List(s.out, calculators)
	case len(c.Given) == 0 && !c.JSON && declared != nil:
		return terminal.Describe(s.out, declared, settings)
	}
	given, wrong := split(c.Given)
	var answer *form.Answer
	if declared != nil && len(wrong) > 0 {
		answer = &form.Answer{Calculator: c.Name, Language: settings.Language(), Errors: wrong}
	} else {
		answer = catalog.Solve(c.Name, given, settings)
	}
	return c.print(s, answer, settings)
}

// namesClay reports whether a clay of the studio was named.
func (c *calcCommand) namesClay(declared *form.Calculator) bool {
	given, _ := split(c.Given)
	for _, g := range given {
		if in := declared.Input(g.Name); in != nil && in.Bodies {
			return true
		}
	}
	return false
}

// print writes an answer, or why there is none.
func (c *calcCommand) print(s *streams, answer *form.Answer, settings form.Settings) error {
	switch {
	case len(answer.Errors) > 0 && c.JSON:
		if err := terminal.JSONErrors(s.out, answer.Errors); err != nil {
			return err
		}
		return refusal{errSaid}
	case len(answer.Errors) > 0:
		lines := make([]string, len(answer.Errors))
		for i, e := range answer.Errors {
			lines[i] = e.Input + ": " + e.Text
		}
		return refusal{errors.New(strings.Join(lines, "\nslipbook: "))}
	case c.JSON:
		return terminal.JSONAnswer(s.out, answer)
	}
	return terminal.Answer(s.out, answer, settings)
}

// split takes each "key=value" apart. What has no "=" or no key is an error by the
// name of what was typed.
func split(given []string) (settings []form.Setting, wrong []form.Phrase) {
	for _, g := range given {
		key, value, ok := strings.Cut(g, "=")
		if !ok || key == "" {
			wrong = append(wrong, form.Phrase{Input: cmp.Or(g, "key=value"), Text: fmt.Sprintf("“%s” is not an input with its value. Write the input's name, “=” and the value, such as mass=174.5.", g)})
			continue
		}
		settings = append(settings, form.Setting{Name: key, Text: value})
	}
	return settings, wrong
}

// settings returns the style of the course in the content folder, or the
// command line's own, and the course's decoration table for a calculator that
// answers from it. A mistake in a lesson keeps nobody from calculating: only the
// files that the answer depends on do.
func (c *calcCommand) settings(s *streams) (form.Settings, error) {
	declared := catalog.Find(c.Name)
	planned := declared != nil && declared.NeedsTable && (len(c.Given) > 0 || c.JSON)
	clays := declared != nil && c.namesClay(declared)
	if c.Content == "" && !planned && !clays {
		return form.Plain(), nil
	}
	folder := cmp.Or(c.Content, "content")
	switch err := findContent(folder); {
	case err != nil && c.Content == "" && !planned:
		return form.Plain(), nil // the refusal of the clay says what to do
	case err != nil:
		return form.Plain(), err
	}
	lessons, findings := load(new(course.Reader), folder)
	if err := stopFor(s, findings, planned); err != nil {
		return form.Plain(), err
	}
	return c.of(lessons, planned), nil
}

// stopFor prints the findings in the files that an answer depends on and
// returns an error when one of them stops the work.
func stopFor(s *streams, all finding.List, planned bool) error {
	files := []string{"course.yaml"}
	if planned {
		files = append(files, "decoration.yaml", "hazards.yaml", "leach.csv")
	}
	findings := slices.DeleteFunc(all, func(f finding.Finding) bool {
		kept := strings.HasPrefix(f.File, "materials/") || strings.HasPrefix(f.File, "recipes/")
		return !slices.Contains(files, f.File) && !(planned && kept)
	})
	if !findings.Stop() {
		return nil
	}
	if err := findings.Write(s.say, "text"); err != nil {
		return err
	}
	return errSaid
}

// of returns what an answer takes from a course: its clays always, its style
// when it was asked for by name, its table for a plan.
func (c *calcCommand) of(lessons *course.Course, planned bool) form.Settings {
	settings := form.Plain()
	if c.Content != "" {
		settings = lessons.Answers()
	}
	settings.Bodies = lessons.Answers().Bodies
	if planned && lessons.Decoration != nil {
		settings.Table = proof.Table(lessons, settings.Language(), today())
	}
	return settings
}
