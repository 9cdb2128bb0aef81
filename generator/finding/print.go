package finding

import (
	"fmt"
	"io"
	"slices"
	"strings"
)

// formats are the ways a List can be printed, declared once: the command line,
// its help and the tests ask Formats and Write.
var formats = []struct {
	name  string
	write func(List, io.Writer) error
}{
	{"text", List.writeText},
	{"json", List.writeJSON},
	{"sarif", List.writeSARIF},
}

// Formats lists the names that Write knows, the one for people first.
func Formats() []string {
	names := make([]string, len(formats))
	for i, f := range formats {
		names[i] = f.name
	}
	return names
}

// Write prints the findings, sorted, in one of Formats. An empty list prints
// too. It fails for an unknown format or when w does; l is left as it is.
func (l List) Write(w io.Writer, format string) error {
	for _, f := range formats {
		if f.name == format {
			sorted := slices.Clone(l)
			sorted.Sort()
			return f.write(sorted, w)
		}
	}
	return fmt.Errorf("there is no format %q; write one of: %s", format, strings.Join(Formats(), ", "))
}

// writeText prints each finding as a paragraph and closes with the sum.
func (l List) writeText(w io.Writer) error {
	var b strings.Builder
	for _, f := range l {
		b.WriteString(f.String() + "\n\n")
	}
	b.WriteString(l.Summary() + "\n")
	_, err := io.WriteString(w, b.String())
	return err
}

// Summary counts the findings in words: "2 errors, 1 warning".
func (l List) Summary() string {
	errors, warnings := l.Count()
	return number(errors, "error") + ", " + number(warnings, "warning")
}

func number(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// report is the shape of the json format:
//
//	{
//	  "findings": [
//	    {"file": "home.md", "line": 3, "column": 1, "severity": "error",
//	     "rule": "unknown-key", "text": "what is wrong", "do": "What to write instead."}
//	  ],
//	  "errors": 1,
//	  "warnings": 0
//	}
//
// findings is sorted and may be empty, never null. Keys may be added later,
// none is taken away.
type report struct {
	Findings []reported `json:"findings"`
	Errors   int        `json:"errors"`
	Warnings int        `json:"warnings"`
}

type reported struct {
	File     string `json:"file"`
	Line     int    `json:"line"`
	Column   int    `json:"column"`
	Severity string `json:"severity"`
	Rule     string `json:"rule"`
	Text     string `json:"text"`
	Do       string `json:"do"`
}

func (l List) writeJSON(w io.Writer) error {
	r := report{Findings: make([]reported, len(l))}
	r.Errors, r.Warnings = l.Count()
	for i, f := range l {
		r.Findings[i] = reported{f.File, f.Line, f.Column, f.Rule.Severity.String(), f.Rule.ID, f.Text, f.Do}
	}
	return writeIndented(w, r)
}
