package theme

import (
	"errors"
	"html/template"
	"io"
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
	for _, one := range all {
		var unsafe *template.Error
		// html/template makes a template safe when it is first printed, even of nothing.
		if err := one.Execute(io.Discard, nil); errors.As(err, &unsafe) {
			return nil, err
		}
	}
	c := compiler{set: set, functions: functions, made: make(map[string]*printing, len(all))}
	for _, one := range all {
		c.template(one.Name())
	}
	return &Templates{set, c.made}, nil
}

// ExecuteTemplate prints a template of a view. Each value is one call of Write.
func (t *Templates) ExecuteTemplate(w io.Writer, name string, view any) error {
	if p := t.compiled[name]; p != nil {
		return p.execute(w, view)
	}
	return t.set.ExecuteTemplate(w, name, view)
}
