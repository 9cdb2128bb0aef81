package preview

import (
	"context"
	"strconv"
	"sync"
	"time"

	"slipbook/generator/finding"
)

// state is what is shown at one time. It is never changed, only replaced.
type state struct {
	version string   // names this state among all that this program ever showed
	files   *files   // the handbook as it last came out; nil before the first time
	failure *failure // why it did not print after the last save; nil when it did
}

// failure is why a handbook could not be printed.
type failure struct {
	Findings finding.List // what is wrong in the lessons; sorted
	Words    string       // anything else that failed, in words
}

// current holds the state being shown and lets any number of readers wait for
// the next.
type current struct {
	started string

	mu      sync.Mutex
	count   int
	state   *state        // nil until the first build has ended
	changed chan struct{} // closed when state is replaced
}

func newCurrent() *current {
	return &current{started: strconv.FormatInt(time.Now().UnixNano(), 36), changed: make(chan struct{})}
}

// print shows a handbook that came out well. Where whoever looks at it sees no
// difference it takes the place of the one before without a word.
func (c *current) print(h Handbook) {
	next := newFiles(h)
	if s := c.now(); s != nil && s.failure == nil && s.files.same(next) {
		c.mu.Lock()
		defer c.mu.Unlock()
		c.state = &state{version: s.version, files: next}
		return
	}
	c.mu.Lock()
	defer c.mu.Unlock()
	c.replace(&state{files: next})
}

// now returns the state shown; nil until the first build has ended.
func (c *current) now() *state {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.state
}

// report shows why the handbook did not come out, and keeps the last that did.
func (c *current) report(t *failure) {
	c.mu.Lock()
	defer c.mu.Unlock()
	s := &state{failure: t}
	if c.state != nil {
		s.files = c.state.files
	}
	c.replace(s)
}

// replace needs mu held.
func (c *current) replace(s *state) {
	c.count++
	s.version = c.started + "-" + strconv.Itoa(c.count)
	c.state = s
	close(c.changed)
	c.changed = make(chan struct{})
}

// wait returns the state shown as soon as it is another than the version known,
// or nil when ctx ends before. With "" it waits for the first build only.
func (c *current) wait(ctx context.Context, known string) *state {
	for {
		c.mu.Lock()
		now, changed := c.state, c.changed
		c.mu.Unlock()
		if now != nil && now.version != known {
			return now
		}
		select {
		case <-changed:
		case <-ctx.Done():
			return nil
		}
	}
}
