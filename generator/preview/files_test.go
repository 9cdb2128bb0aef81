package preview

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
)

// book is a handbook of finished files.
type book map[string][]byte

func (b book) File(address string) ([]byte, bool, error) {
	data, ok := b[address]
	return data, ok, nil
}

func (b book) Pages() int {
	n := 0
	for name := range b {
		if strings.HasSuffix(name, ".html") {
			n++
		}
	}
	return n
}

// counting is a handbook that counts what it makes.
type counting struct {
	book
	made *int
}

func (c counting) File(address string) ([]byte, bool, error) {
	*c.made++
	return c.book.File(address)
}

// TestOnlyWhatIsAskedForIsMade wants each page made once, and no other.
func TestOnlyWhatIsAskedForIsMade(t *testing.T) {
	made := 0
	p := shown(counting{book{"index.html": []byte("a"), "b.html": []byte("b")}, &made})
	get(p, "GET", "/index.html")
	get(p, "GET", "/index.html")
	if made != 1 {
		t.Errorf("made %d files for one page asked for twice", made)
	}
}

// TestWhatNobodySeesIsNoNews wants a change of a page that was not asked for to
// be shown when it is, and the pages that are open to be left alone.
func TestWhatNobodySeesIsNoNews(t *testing.T) {
	p := shown(book{"index.html": []byte("a"), "b.html": []byte("b")})
	get(p, "GET", "/index.html")
	first := p.current.wait(context.Background(), "")
	p.current.print(book{"index.html": []byte("a"), "b.html": []byte("new")})
	if again := p.current.now(); again.version != first.version {
		t.Error("a change that nobody sees is news")
	}
	if w := get(p, "GET", "/b.html"); !strings.Contains(w.Body.String(), "new") {
		t.Errorf("shown: %q", w.Body)
	}
	p.current.print(book{"index.html": []byte("other"), "b.html": []byte("new")})
	if again := p.current.now(); again.version == first.version {
		t.Error("a change that is looked at is no news")
	}
}

// unmade is a handbook one of whose pages cannot be made.
type unmade struct{ book }

func (u unmade) File(address string) ([]byte, bool, error) {
	if address == "bad.html" {
		return nil, true, errors.New("page bad.html: it names “x” without its hazards")
	}
	return u.book.File(address)
}

// TestPageThatCannotBeMade wants the reason in its place.
func TestPageThatCannotBeMade(t *testing.T) {
	w := get(shown(unmade{book{"index.html": nil}}), "GET", "/bad.html")
	if w.Code != 500 || !strings.Contains(w.Body.String(), "without its hazards") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

// broke is a handbook one page of which makes the program panic.
type broke struct{ book }

func (b broke) File(address string) ([]byte, bool, error) {
	if address == "bad.html" {
		panic("index out of range")
	}
	return b.book.File(address)
}

// TestPageThatPanics wants it to be told like any failure, in the page and in the
// terminal, and the preview to go on: where a reader asks for it, and where a save
// asks whether what is looked at changed.
func TestPageThatPanics(t *testing.T) {
	var said bytes.Buffer
	p := &pages{current: newCurrent(), say: &saying{to: &said}}
	p.current.print(broke{book{"index.html": nil}})
	w := get(p, "GET", "/bad.html")
	if w.Code != 500 || !strings.Contains(w.Body.String(), "slipbook itself failed: index out of range") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
	if !strings.Contains(said.String(), "files_test.go") {
		t.Errorf("the terminal shows %q", said.String())
	}
	whole := shown(book{"index.html": nil, "bad.html": []byte("good")})
	get(whole, "GET", "/bad.html")
	whole.current.print(broke{book{"index.html": nil}})
	if w := get(whole, "GET", "/index.html"); w.Code != 200 {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}
