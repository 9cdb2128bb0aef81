package preview

import (
	"bytes"
	"context"
	"maps"
	"strconv"
	"sync"
	"time"

	"slipbook/generator/finding"
)

// sheet is one state of the handbook as shown. It is never changed.
type sheet struct {
	version string            // names this state among all that this program ever showed
	files   map[string][]byte // the handbook as it last printed; nil before the first time
	trouble *trouble          // why it did not print after the last save; nil when it did
}

// trouble is why a handbook could not be printed.
type trouble struct {
	Findings finding.List // what is wrong in the lessons; sorted
	Words    string       // anything else that failed, in words
}

// board holds the sheet being shown and lets any number of readers wait for
// the next.
type board struct {
	started string

	mu      sync.Mutex
	count   int
	current *sheet        // nil until the first build has ended
	news    chan struct{} // closed when current is replaced
}

func newBoard() *board {
	return &board{started: strconv.FormatInt(time.Now().UnixNano(), 36), news: make(chan struct{})}
}

// print shows a handbook that came out well. One that equals what is shown
// already is no news.
func (b *board) print(files map[string][]byte) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if c := b.current; c != nil && c.trouble == nil && maps.EqualFunc(c.files, files, bytes.Equal) {
		return
	}
	b.replace(&sheet{files: files})
}

// report shows why the handbook did not come out, and keeps the last that did.
func (b *board) report(t *trouble) {
	b.mu.Lock()
	defer b.mu.Unlock()
	s := &sheet{trouble: t}
	if b.current != nil {
		s.files = b.current.files
	}
	b.replace(s)
}

// replace needs mu held.
func (b *board) replace(s *sheet) {
	b.count++
	s.version = b.started + "-" + strconv.Itoa(b.count)
	b.current = s
	close(b.news)
	b.news = make(chan struct{})
}

// wait gives the sheet shown as soon as it is another than the version known,
// or nil when ctx ends before. With "" it waits for the first build only.
func (b *board) wait(ctx context.Context, known string) *sheet {
	for {
		b.mu.Lock()
		current, news := b.current, b.news
		b.mu.Unlock()
		if current != nil && current.version != known {
			return current
		}
		select {
		case <-news:
		case <-ctx.Done():
			return nil
		}
	}
}
