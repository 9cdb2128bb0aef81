package preview

import (
	"bytes"
	"fmt"
	"html/template"
	"net/url"

	"slipbook/generator/finding"
)

var failureTemplate = template.Must(template.ParseFS(carried, "page/failure.html"))

// failurePage shows what keeps the handbook from being printed, each finding
// with its place and what to do, and below it the page as it last came out.
func failurePage(s *state, name string) []byte {
	shown := struct {
		Title, Words, Version string
		Style, Script, Last   string
		Findings              finding.List
	}{
		Title: title(s.failure), Words: s.failure.Words, Version: s.version,
		Style: styleAt, Script: scriptAt, Findings: s.failure.Findings,
	}
	if s.files.has(name) {
		shown.Last = (&url.URL{Path: lastAt + "/" + name}).String()
	}
	var page bytes.Buffer
	if err := failureTemplate.Execute(&page, shown); err != nil {
		panic(err) // the template and its fields are ours; a test runs every branch
	}
	return page.Bytes()
}

// title says in one line how much there is to mend.
func title(t *failure) string {
	errors := 0
	for _, f := range t.Findings {
		if f.Rule.Severity == finding.Error {
			errors++
		}
	}
	switch {
	case errors == 1:
		return "One thing to mend"
	case errors > 1:
		return fmt.Sprintf("%d things to mend", errors)
	}
	return "The handbook could not be printed"
}
