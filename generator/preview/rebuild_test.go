package preview

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"slipbook/generator/finding"
)

// open runs a rebuilder until the test ends, with a build that takes its outcomes
// from a function, and returns the channel of saves and what was said.
func open(t *testing.T, build Build) (*current, chan struct{}) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	b, saves, done := newCurrent(), make(chan struct{}, 1), make(chan struct{})
	go func() {
		rebuilder{build, b, &saying{to: &bytes.Buffer{}}, true}.run(ctx, saves)
		close(done)
	}()
	t.Cleanup(func() {
		cancel()
		<-done
	})
	return b, saves
}

// within returns the next state, or fails after a while.
func within(t *testing.T, b *current, known string) *state {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 10*time.Second)
	defer cancel()
	s := b.wait(ctx, known)
	if s == nil {
		t.Fatal("nothing new was shown")
	}
	return s
}

func TestEveryOutcomeIsShownAndTheNextSaveMends(t *testing.T) {
	outcomes := []func() (Handbook, finding.List, error){
		func() (Handbook, finding.List, error) { return nil, broken.Findings, nil },
		func() (Handbook, finding.List, error) { return nil, nil, errors.New("the disk says no") },
		func() (Handbook, finding.List, error) { panic("index out of range") },
		func() (Handbook, finding.List, error) { return handbook, nil, nil },
	}
	n := 0
	b, saves := open(t, func(context.Context) (Handbook, finding.List, error) {
		n++
		return outcomes[n-1]()
	})
	wants := []string{"no page at nope.md", "the disk says no", "slipbook itself failed: index out of range", ""}
	version := ""
	for i, want := range wants {
		saves <- struct{}{}
		s := within(t, b, version)
		version = s.version
		if want == "" {
			if s.failure != nil {
				t.Errorf("outcome %d: still in failure: %v", i, s.failure)
			}
			continue
		}
		if s.failure == nil || !strings.Contains(string(failurePage(s, "")), want) {
			t.Errorf("outcome %d: %+v, want %q", i, s.failure, want)
		}
	}
}

func TestWarningsDoNotStop(t *testing.T) {
	warning := finding.List{{File: "home.md", Line: 1, Column: 1, Rule: &finding.Rule{ID: "w", Severity: finding.Warning}, Text: "t", Do: "d"}}
	b, saves := open(t, func(context.Context) (Handbook, finding.List, error) { return handbook, warning, nil })
	saves <- struct{}{}
	if s := within(t, b, ""); s.failure != nil {
		t.Errorf("failure %v", s.failure)
	}
}

// A newer save ends the build under way; its outcome is dropped, and two
// builds never run at once.
func TestNewestSaveWins(t *testing.T) {
	started := make(chan int)
	running, n := 0, 0
	b, saves := open(t, func(ctx context.Context) (Handbook, finding.List, error) {
		running++ // a race, found by -race, if two ran at once
		defer func() { running-- }()
		n++
		started <- n
		if n == 1 {
			<-ctx.Done()
			return book{"index.html": []byte("old")}, nil, nil
		}
		return book{"index.html": []byte("new")}, nil, nil
	})
	saves <- struct{}{}
	<-started
	saves <- struct{}{}
	if got := <-started; got != 2 {
		t.Errorf("build %d started", got)
	}
	if s := within(t, b, ""); content(s, "index.html") != "new" {
		t.Errorf("shown %q", content(s, "index.html"))
	}
}

func TestCount(t *testing.T) {
	for pages, want := range map[int]string{1: "1 page", 4: "4 pages"} {
		if got := count(pages); got != want {
			t.Error(got)
		}
	}
}
