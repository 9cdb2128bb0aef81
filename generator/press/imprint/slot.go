package imprint

import (
	"bytes"
	"html/template"
	"strconv"
)

// The words of a page, and the chapters of the book, are long. A template that
// printed them as values would copy them four times on their way, so a view holds
// a slot in their place, and what the slot stands for is set right where the
// template prints it.

// Framed is embedded in the view of every page: its frame, and its slots.
type Framed struct {
	Shell Shell

	slots []func(*bytes.Buffer) error
}

// Frame returns the shell of the page.
func (f Framed) Frame() Shell { return f.Shell }

func (f Framed) filling() []func(*bytes.Buffer) error { return f.slots }

// PageView is the view of a page: whatever embeds Framed.
type PageView interface {
	Frame() Shell
	filling() []func(*bytes.Buffer) error
}

// slotSign begins what a slot prints. No other value can begin so: nothing that
// is read holds the character, and templates print it as another.
const slotSign = "\x00"

// Slot makes a place for what a function prints, and returns what stands there in
// the view.
func (f *Framed) Slot(print func(out *bytes.Buffer) error) template.HTML {
	f.slots = append(f.slots, print)
	return template.HTML(slotSign + strconv.Itoa(len(f.slots)-1))
}

// filler takes what a template prints, and fills the slots.
type filler struct {
	out   *bytes.Buffer
	slots []func(*bytes.Buffer) error
}

// Write completes io.Writer. A template prints each value by itself.
func (f filler) Write(p []byte) (int, error) {
	if len(p) == 0 || p[0] != slotSign[0] {
		return f.out.Write(p)
	}
	n, err := strconv.Atoi(string(p[1:]))
	if err == nil {
		err = f.slots[n](f.out)
	}
	return len(p), err
}

// Fill prints a view, its slots filled.
func Fill(out *bytes.Buffer, t Printer, name string, view PageView) error {
	return t.ExecuteTemplate(filler{out, view.filling()}, name, view)
}
