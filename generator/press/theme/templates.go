package theme

import (
	"errors"
	"fmt"
	"html/template"
	"io"
	"strings"
)

// Templates are the templates of a theme for one use. html/template makes them safe;
// what it made is compiled, since a large course prints a few templates ten thousand
// times, and html/template looks each field up by its name, and calls each escaper by
// reflection, every time. A template with something that compile.go does not know is
// printed by html/template.
type Templates struct {
	set      *template.Template
	compiled map[string]*printing // nil of one with something unknown
}

// newTemplates compiles templates that call some functions. One that cannot be made
// safe is an error.
func newTemplates(set *template.Template, functions template.FuncMap) (*Templates, error) {
	all := set.Templates()
	if err := makeSafe(set, all); err != nil {
		return nil, err
	}
	c := compiler{set: set, functions: functions, made: make(map[string]*printing, len(all))}
	for _, one := range all {
		c.template(one.Name())
	}
	return &Templates{set, c.made}, nil
}

// makeSafe has html/template make templates safe. It does so when one is first printed,
// even of nothing, with all that it calls.
func makeSafe(set *template.Template, all []*template.Template) error {
	var calls strings.Builder
	for _, one := range all {
		if one.Tree != nil {
			fmt.Fprintf(&calls, "{{template %q .}}", one.Name())
		}
	}
	every, err := set.New("every template").Parse(calls.String())
	if err != nil {
		return err
	}
	var unsafe *template.Error
	if err := every.Execute(io.Discard, nil); errors.As(err, &unsafe) {
		return unsafe
	}
	return nil
}

// ExecuteTemplate prints a template of a view. Each value is one call of Write.
func (t *Templates) ExecuteTemplate(w io.Writer, name string, view any) error {
	if p := t.compiled[name]; p != nil {
		return p.execute(w, view)
	}
	return t.set.ExecuteTemplate(w, name, view)
}
