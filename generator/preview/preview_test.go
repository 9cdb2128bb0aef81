package preview

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"time"

	"slipbook/generator/finding"
)

// started is a preview that runs.
type started struct {
	url  string
	stop context.CancelFunc
	done chan error
}

// start serves folder until the test ends. A page is the file with its name in
// folder; a file that says "mistake" is a finding, and "panic" a panic.
func start(t *testing.T, folder string) *started {
	t.Helper()
	build := func(context.Context) (Handbook, finding.List, error) {
		data, err := os.ReadFile(filepath.Join(folder, "home.md"))
		switch {
		case err != nil:
			return nil, nil, err
		case strings.Contains(string(data), "panic"):
			panic(string(data))
		case strings.Contains(string(data), "mistake"):
			return nil, finding.List{{File: "home.md", Line: 1, Column: 1, Rule: testRule, Text: string(data), Do: "Mend it."}}, nil
		}
		return book{"index.html": fmt.Appendf(nil, `<head><link rel="icon" href="data:,"></head>%s`, data)}, nil, nil
	}
	said, say := io.Pipe()
	ctx, stop := context.WithCancel(context.Background())
	s := &started{stop: stop, done: make(chan error, 1)}
	go func() {
		s.done <- Serve(ctx, Options{Address: "127.0.0.1:0", Folder: folder, Build: build, Say: say, Progress: true})
		say.Close()
	}()
	lines := bufio.NewScanner(said)
	if !lines.Scan() {
		t.Fatal("nothing was said")
	}
	s.url = regexp.MustCompile(`http://[^ ]+`).FindString(lines.Text())
	go func() {
		for lines.Scan() {
		}
	}()
	t.Cleanup(func() {
		stop()
		<-s.done
	})
	return s
}

func (s *started) page(t *testing.T) (status int, body string) {
	t.Helper()
	r, err := http.Get(s.url)
	must(t, err)
	defer r.Body.Close()
	data, err := io.ReadAll(r.Body)
	must(t, err)
	return r.StatusCode, string(data)
}

var versionOf = regexp.MustCompile(`data-version="([^"]+)"`)

// events opens the event stream and returns a function that waits for a version
// other than the page's.
func (s *started) events(t *testing.T) func(page string) {
	t.Helper()
	r, err := http.Get(s.url + ".preview/events")
	must(t, err)
	t.Cleanup(func() { r.Body.Close() })
	if got := r.Header.Get("Content-Type"); got != "text/event-stream" {
		t.Errorf("content type %q", got)
	}
	lines := bufio.NewScanner(r.Body)
	return func(page string) {
		t.Helper()
		mine := versionOf.FindStringSubmatch(page)
		if mine == nil {
			t.Fatalf("no version in the page:\n%s", page)
		}
		for lines.Scan() {
			if v, ok := strings.CutPrefix(lines.Text(), "data: "); ok && v != mine[1] {
				return
			}
		}
		t.Fatalf("the stream ended: %v", lines.Err())
	}
}

func TestServeFollowsSaves(t *testing.T) {
	folder := t.TempDir()
	save := func(text string) {
		must(t, os.WriteFile(filepath.Join(folder, "home.md~"), []byte(text), 0o644))
		must(t, os.Rename(filepath.Join(folder, "home.md~"), filepath.Join(folder, "home.md")))
	}
	save("first")
	s := start(t, folder)
	status, page := s.page(t)
	if status != 200 || !strings.Contains(page, "first") {
		t.Fatalf("%d %q", status, page)
	}
	wait := s.events(t)
	for _, c := range []struct {
		text   string
		status int
	}{
		{"second", 200}, {"a mistake", 500}, {"mended", 200}, {"panic now", 500}, {"well again", 200},
	} {
		save(c.text)
		wait(page)
		status, page = s.page(t)
		if status != c.status || !strings.Contains(page, c.text) {
			t.Fatalf("after saving %q: %d %q", c.text, status, page)
		}
	}
}

func TestServeChecksTheHost(t *testing.T) {
	folder := t.TempDir()
	must(t, os.WriteFile(filepath.Join(folder, "home.md"), []byte("x"), 0o644))
	s := start(t, folder)
	r, err := http.NewRequest("GET", s.url+".preview/events", nil)
	must(t, err)
	r.Host = "kiln.example"
	a, err := http.DefaultClient.Do(r)
	must(t, err)
	a.Body.Close()
	if a.StatusCode != http.StatusMisdirectedRequest {
		t.Errorf("status %d", a.StatusCode)
	}
}

// Ending the preview is no error and leaves nothing running, even while pages
// listen.
func TestServeEndsCleanly(t *testing.T) {
	before := runtime.NumGoroutine()
	folder := t.TempDir()
	must(t, os.WriteFile(filepath.Join(folder, "home.md"), []byte("x"), 0o644))
	s := start(t, folder)
	s.page(t)
	listening, err := http.Get(s.url + ".preview/events")
	must(t, err)
	s.stop()
	select {
	case err := <-s.done:
		if err != nil {
			t.Errorf("ended with %v", err)
		}
		s.done <- nil // for the clean-up
	case <-time.After(10 * time.Second):
		t.Fatal("it does not end")
	}
	if _, err := io.ReadAll(listening.Body); err != nil && !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Errorf("the listening page saw %v", err)
	}
	listening.Body.Close()
	http.DefaultClient.CloseIdleConnections()
	for wait := 0; runtime.NumGoroutine() > before; wait++ {
		if wait == 500 {
			stacks := make([]byte, 1<<16)
			t.Fatalf("%d goroutines before, %d after:\n%s", before, runtime.NumGoroutine(), stacks[:runtime.Stack(stacks, true)])
		}
		time.Sleep(10 * time.Millisecond)
	}
}

func TestServeRefusesAnAddress(t *testing.T) {
	err := Serve(context.Background(), Options{Address: "0.0.0.0:8300", Say: io.Discard})
	if _, ok := errors.AsType[*Refusal](err); !ok {
		t.Errorf("error %v", err)
	}
}
