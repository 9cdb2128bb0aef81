package main

import (
	"context"
	"io/fs"
	"os"
	"strings"

	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/markup"
	"slipbook/generator/press"
	"slipbook/generator/proof"
	"slipbook/themes"
)

// houseTheme is the theme where none is chosen.
const houseTheme = "studio"

// handbook is a handbook to be made: its lessons and its look.
type handbook struct {
	lessons  func() (*course.Course, finding.List) // reads the content folder
	theme    fs.FS
	teaching bool           // a copy for the instructor
	shared   *assets.Bundle // made when first needed, then kept: lessons do not change it
}

// open finds the lessons and the theme by name.
func open(content, theme string) (*handbook, error) {
	if err := findContent(content); err != nil {
		return nil, err
	}
	look, err := themes.Open(theme)
	if err != nil {
		return nil, refuse("there is no look %q; choose one of: %s", theme, strings.Join(themes.Names(), ", "))
	}
	return &handbook{lessons: func() (*course.Course, finding.List) { return load(content) }, theme: look}, nil
}

// findContent refuses a content folder that is not there.
func findContent(dir string) error {
	if info, err := os.Stat(dir); err != nil || !info.IsDir() {
		return refuse("there is no folder %q with lessons; name the right one with --content, or start slipbook in the folder that holds it", dir)
	}
	return nil
}

// load reads the lessons of a content folder. It is opened anew each time,
// since another may have come in its place, and as a root, so that no link in it
// leads out. Of a folder that cannot be opened the findings say so.
func load(dir string) (*course.Course, finding.List) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return course.Load(os.DirFS(dir))
	}
	defer root.Close() // everything is read into memory
	return course.Load(root.FS())
}

// read loads the lessons and reads every page: what proof needs, and the first
// half of what publish and show do. An error is a fault of the theme; the
// findings made until then come with it.
func (h *handbook) read() (*press.Press, *proof.Reading, finding.List, error) {
	lessons, loading := h.lessons()
	printer, err := press.New(lessons, h.theme)
	if err != nil {
		return nil, nil, loading, err
	}
	if h.teaching {
		printer.ForTeaching()
	}
	reading, findings := proof.Read(lessons, loading, printer)
	return printer, reading, findings, nil
}

// print makes the whole handbook in memory: load, read, stop if something is
// wrong, and print. When findings stop the work there is no edition. A context
// that has ended is noticed between the stages.
func (h *handbook) print(ctx context.Context) (press.Edition, finding.List, error) {
	printer, reading, findings, err := h.read()
	if err != nil || findings.Stop() || ctx.Err() != nil {
		return nil, findings, err
	}
	shared, err := h.bundle()
	if err != nil || ctx.Err() != nil {
		return nil, findings, err
	}
	edition, err := printer.Print(reading, shared)
	return edition, findings, err
}

// bundle makes the files that pages share.
func (h *handbook) bundle() (*assets.Bundle, error) {
	if h.shared != nil {
		return h.shared, nil
	}
	engine, err := assets.Calculators()
	if err != nil {
		return nil, err
	}
	h.shared, err = assets.Make(h.theme, markup.CodeStyles(), engine)
	return h.shared, err
}
