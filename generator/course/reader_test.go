package course_test

import (
	"bytes"
	"image"
	"image/png"
	"io/fs"
	"reflect"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
)

// counting is a folder that counts which files are opened, by several at once.
type counting struct {
	fstest.MapFS
	mutex  sync.Mutex
	opened map[string]int
}

func (c *counting) Open(name string) (fs.File, error) {
	c.mutex.Lock()
	c.opened[name]++
	c.mutex.Unlock()
	return c.MapFS.Open(name)
}

// dated is the small course with times at which its files were changed.
func dated(at time.Time) fstest.MapFS {
	files := coursetest.Small()
	for _, f := range files {
		f.ModTime = at
	}
	return files
}

// TestReaderReadsOnlyWhatChanged wants a page that did not change to be left
// alone, one that did to be read, and the same course as from a fresh start.
func TestReaderReadsOnlyWhatChanged(t *testing.T) {
	const lesson, other = "units/slip/mix.md", "units/wash/thin.md"
	files := dated(time.Unix(1, 0))
	var r course.Reader
	r.Load(files)
	now := &counting{MapFS: files, opened: map[string]int{}}
	files[other] = &fstest.MapFile{Data: append(files[other].Data, "\nMore.\n"...), ModTime: time.Unix(2, 0)}
	got, found := r.Load(now)
	if now.opened[other] != 1 || now.opened[lesson] != 0 || now.opened["units/wash/unit.md"] != 0 {
		t.Errorf("opened %v", now.opened)
	}
	want, wanted := new(course.Reader).Load(files)
	if !reflect.DeepEqual(found, wanted) || !reflect.DeepEqual(got.Pages(), want.Pages()) {
		t.Errorf("not what a fresh start reads; findings %v, want %v", found, wanted)
	}
}

// TestReaderKeepsNothingThatIsFresh wants a file that was changed a moment ago to
// be read again: a disk may not tell a second change from the first.
func TestReaderKeepsNothingThatIsFresh(t *testing.T) {
	const lesson = "units/slip/mix.md"
	now := time.Now()
	files := dated(now)
	var r course.Reader
	r.Load(files)
	text := append([]byte(nil), files[lesson].Data...)
	text[len(text)-3]++
	files[lesson] = &fstest.MapFile{Data: text, ModTime: now}
	got, _ := r.Load(files)
	want, _ := new(course.Reader).Load(files)
	if !reflect.DeepEqual(got.Pages(), want.Pages()) {
		t.Error("a change within a moment does not show")
	}
}

// TestReaderSaysWhatIsGone wants a page that names one which is gone to say so at
// its place, and to be read as usual when that is back.
func TestReaderSaysWhatIsGone(t *testing.T) {
	files := dated(time.Unix(1, 0))
	var r course.Reader
	r.Load(files)
	unit := files["units/slip/unit.md"]
	lesson := files["units/slip/measure.md"]
	files["units/slip/unit.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Slip\nlessons: [mix]\n---\n"), ModTime: time.Unix(2, 0)}
	delete(files, "units/slip/measure.md")
	for range 2 {
		_, found := r.Load(files)
		_, wanted := new(course.Reader).Load(files)
		if len(wanted) == 0 || !reflect.DeepEqual(found, wanted) {
			t.Errorf("found %v, want %v", found, wanted)
		}
	}
	files["units/slip/unit.md"], files["units/slip/measure.md"] = unit, lesson
	got, found := r.Load(files)
	want, _ := new(course.Reader).Load(files)
	if len(found) > 0 || !reflect.DeepEqual(got.Pages(), want.Pages()) {
		t.Errorf("back again: %v", found)
	}
}

// TestReaderKnowsItsListsAgain wants an opening page that did not change to be held
// against a folder that did: a lesson that is gone, one that nothing lists, and one
// that is back.
func TestReaderKnowsItsListsAgain(t *testing.T) {
	const lesson = "units/slip/mix.md"
	files := dated(time.Unix(1, 0))
	var r course.Reader
	r.Load(files)
	mix := files[lesson]
	for _, change := range []func(){
		func() { delete(files, lesson) },
		func() { files["units/slip/mixed.md"] = mix },
		func() { files[lesson] = mix },
		func() { delete(files, "units/slip/mixed.md") },
	} {
		change()
		got, found := r.Load(files)
		want, wanted := new(course.Reader).Load(files)
		if !reflect.DeepEqual(found, wanted) || !reflect.DeepEqual(got.Pages(), want.Pages()) {
			t.Errorf("found %v, want %v", found, wanted)
		}
	}
}

// TestReaderKeepsPhotos wants a photo that did not change to be left alone, and one
// that did to be read, in its size too.
func TestReaderKeepsPhotos(t *testing.T) {
	const kept, changed = "pictures/kept.png", "pictures/changed.png"
	files := dated(time.Unix(1, 0))
	old := &fstest.MapFile{Data: photoBytes(t, 2, 3), ModTime: time.Unix(1, 0)}
	files[kept], files[changed] = old, old
	var r course.Reader
	r.Load(files)
	now := &counting{MapFS: files, opened: map[string]int{}}
	files[changed] = &fstest.MapFile{Data: photoBytes(t, 5, 4), ModTime: time.Unix(2, 0)}
	got, found := r.Load(now)
	if now.opened[kept] != 0 || now.opened[changed] != 2 /* once to look, once to make its files */ {
		t.Errorf("opened %v", now.opened)
	}
	want, wanted := new(course.Reader).Load(files)
	if !reflect.DeepEqual(found, wanted) || !samePictures(t, got.Pictures, want.Pictures) || got.Pictures[changed].Width != 5 {
		t.Errorf("not what a fresh start reads; findings %v, want %v", found, wanted)
	}
}

// samePictures reports whether pictures have the same files of the same size.
func samePictures(t *testing.T, a, b map[string]*course.Picture) bool {
	t.Helper()
	same := len(a) == len(b)
	for name, p := range a {
		q := b[name]
		if same = same && q != nil && p.Width == q.Width && p.Height == q.Height && len(p.Files) == len(q.Files); !same {
			return false
		}
		for n, f := range p.Files {
			one, err := f.Data()
			two, other := q.Files[n].Data()
			same = same && err == nil && other == nil && bytes.Equal(one, two) && f.Sum == q.Files[n].Sum
		}
	}
	return same
}

func photoBytes(t *testing.T, width, height int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewGray(image.Rect(0, 0, width, height))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
