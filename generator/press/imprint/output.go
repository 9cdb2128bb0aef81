package imprint

import (
	"bytes"
	"html/template"
	"io"
	"sync"
)

// There is room to print in. A page is printed in pieces that go into larger
// ones; without used room each would grow a buffer of its own from nothing, which
// was a third of all memory that printing took.
// Pages and pieces have each their own, since a page is a hundred times as large.
var pages, pieces = sync.Pool{New: newRoom}, sync.Pool{New: newRoom}

func newRoom() any { return new(bytes.Buffer) }

// Output returns what a function prints.
func Output(print func(out *bytes.Buffer) error) (data []byte, err error) {
	err = Lend(func(out *bytes.Buffer) error {
		err := print(out)
		if err == nil {
			data = bytes.Clone(out.Bytes())
		}
		return err
	})
	return data, err
}

// Lend lends room to print a page in. What is in it is gone when the function ends.
func Lend(use func(out *bytes.Buffer) error) error {
	out := pages.Get().(*bytes.Buffer)
	out.Reset()
	defer pages.Put(out)
	return use(out)
}

// Piece returns what a function prints, as a piece of a page.
func Piece(print func(out *bytes.Buffer) error) (template.HTML, error) {
	out := pieces.Get().(*bytes.Buffer)
	out.Reset()
	defer pieces.Put(out)
	err := print(out)
	return template.HTML(out.String()), err
}

// Printer prints templates by their names: those of a theme.
type Printer interface {
	ExecuteTemplate(w io.Writer, name string, view any) error
}

// Execute returns what a template prints of a view.
func Execute(t Printer, name string, view any) (template.HTML, error) {
	return Piece(func(out *bytes.Buffer) error { return t.ExecuteTemplate(out, name, view) })
}
