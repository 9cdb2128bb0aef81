package main

import (
	"context"
	"crypto/sha256"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strconv"
	"strings"
	"time"

	"slipbook/generator/assets"
	"slipbook/generator/course"
	"slipbook/generator/finding"
	"slipbook/generator/keep"
	"slipbook/generator/photo"
	"slipbook/generator/press"
	"slipbook/generator/press/theme"
	"slipbook/generator/proof"
	"slipbook/themes"
)

// houseTheme is the theme where none is chosen.
const houseTheme = "studio"

// handbook is a handbook to be made: its lessons and its look.
type handbook struct {
	lessons func() (*course.Course, finding.List) // reads the content folder
	reader  proof.Reader                          // keeps what it found in pages that stay the same
	theme   func(language string) (fs.FS, error)  // in a language
	copy    press.Copy
	look    *theme.Theme      // read when first needed, then kept as long as the theme stays the same
	shared  *assets.Bundle    // made with it: lessons do not change it
	made    [sha256.Size]byte // the digest of the theme of which both were made
}

// open finds the lessons and the theme by name.
func open(content, theme string) (*handbook, error) {
	if err := findContent(content); err != nil {
		return nil, err
	}
	if !slices.Contains(themes.Names(), theme) {
		return nil, refuse("there is no look %q; choose one of: %s", theme, strings.Join(themes.Names(), ", "))
	}
	reader := course.Reader{Lab: photo.Lab{Folder: keep.Folder("photos")}, Again: func(file string) ([]byte, error) { return once(content, file) }}
	return &handbook{
		lessons: func() (*course.Course, finding.List) { return load(&reader, content) },
		theme:   spoken(theme),
	}, nil
}

// spoken returns a theme in the languages that are asked for. It is part of the
// program, so the last one is kept.
func spoken(theme string) func(language string) (fs.FS, error) {
	var last fs.FS
	var in string
	return func(language string) (fs.FS, error) {
		if last != nil && in == language {
			return last, nil
		}
		opened, err := themes.Open(theme, language)
		if err == nil {
			last, in = opened, language
		}
		return opened, err
	}
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
func load(reader *course.Reader, dir string) (*course.Course, finding.List) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return reader.Load(os.DirFS(dir))
	}
	defer root.Close() // all but photos is read into memory
	return reader.Load(root.FS())
}

// once reads one file of a content folder, as a root likewise.
func once(dir, file string) ([]byte, error) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return nil, err
	}
	defer root.Close()
	return root.ReadFile(file)
}

// read loads the lessons, reads every page and resolves every reference: what
// proof needs, and the first half of what publish and show do.
func (h *handbook) read() (*proof.Reading, finding.List) {
	lessons, loading := h.lessons()
	h.reader.Today = today()
	return h.reader.Read(lessons, loading)
}

// today returns the date by which reviews are due: that of SOURCE_DATE_EPOCH, as
// reproducible builds have it, so that a test or a build of an old edition asks no
// clock. Of all pages only the wall of test tiles holds it; that a leach test's report
// ran out by then, others say.
func today() string {
	now := time.Now()
	if seconds, err := strconv.ParseInt(os.Getenv("SOURCE_DATE_EPOCH"), 10, 64); err == nil {
		now = time.Unix(seconds, 0)
	}
	return now.UTC().Format(time.DateOnly)
}

// print makes the whole handbook: load, read, stop if something is wrong, and
// prepare its pages. When findings stop the work there is no edition. A context
// that has ended is noticed between the stages.
func (h *handbook) print(ctx context.Context) (*press.Edition, finding.List, error) {
	reading, findings := h.read()
	if findings.Stop() || ctx.Err() != nil {
		return nil, findings, nil
	}
	shared, err := h.bundle(reading.Course.Language)
	if err != nil || ctx.Err() != nil {
		return nil, findings, err
	}
	edition, err := press.Print(h.look, reading, shared, h.copy)
	return edition, findings, err
}

// bundle reads the theme in a language and makes the files that pages share,
// unless they were made of the same theme before.
func (h *handbook) bundle(language string) (*assets.Bundle, error) {
	theme, err := h.theme(language)
	if err != nil {
		return nil, err
	}
	sum, err := digest(theme)
	if err != nil || h.shared != nil && sum == h.made {
		return h.shared, err
	}
	look, err := press.Open(theme)
	if err != nil {
		return nil, err
	}
	engine, err := assets.Calculators()
	if err != nil {
		return nil, err
	}
	shared, err := assets.Make(theme, engine)
	if err != nil {
		return nil, err
	}
	h.look, h.shared, h.made = look, shared, sum
	return shared, nil
}

// digest sums up the names and bytes of all files of a folder.
func digest(folder fs.FS) (sum [sha256.Size]byte, err error) {
	all := sha256.New()
	err = fs.WalkDir(folder, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		data, err := fs.ReadFile(folder, name)
		fmt.Fprintf(all, "%q %d\n", name, len(data))
		all.Write(data) // a hash never fails
		return err
	})
	return [sha256.Size]byte(all.Sum(nil)), err
}
