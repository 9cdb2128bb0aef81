package preview

import (
	"context"
	"io"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/synctest"
	"time"

	"slipbook/generator/finding"
)

var handbook = book{
	"index.html":            []byte("<html><head><title>Home</title></head><body>home</body></html>"),
	"slip/index.html":       []byte("<html><body>slip</body></html>"),
	"slip/consistency.html": []byte("consistency"),
	"404.html":              []byte("<head></head>nothing here"),
	"assets/page-1A2B.css":  []byte("body{}"),
	"assets/page-1A2B.js":   []byte("0"),
	"assets/desk-1A2B.bin":  {0x1f, 0x8b},
	"assets/icon.svg":       []byte("<svg/>"),
	"pictures/jar.png":      []byte("png"),
	"pictures/jar.jpg":      []byte("jpg"),
	"site.webmanifest":      []byte("{}"),
}

// shown makes pages that show files.
func shown(files Handbook) *pages {
	p := &pages{current: newCurrent(), say: &saying{to: io.Discard}}
	p.current.print(files)
	return p
}

func get(p *pages, method, target string) *httptest.ResponseRecorder {
	w := httptest.NewRecorder()
	p.ServeHTTP(w, httptest.NewRequest(method, target, nil))
	return w
}

func TestAddresses(t *testing.T) {
	p := shown(handbook)
	for _, c := range []struct {
		target   string
		status   int
		kind     string
		location string
		holds    string
	}{
		{"/", 200, "text/html; charset=utf-8", "", "home"},
		{"/index.html", 200, "text/html; charset=utf-8", "", "home"},
		{"/slip/", 200, "text/html; charset=utf-8", "", "slip"},
		{"/slip/index.html", 200, "text/html; charset=utf-8", "", "slip"},
		{"/slip", 307, "", "/slip/", ""},
		{"/slip?x=1&y=2", 307, "", "/slip/?x=1&y=2", ""},
		{"//slip", 307, "", "/slip/", ""},
		{"/slip/../slip/consistency.html", 307, "", "/slip/consistency.html", ""},
		{"/slip/%2e%2e/%2e%2e/index.html", 307, "", "/index.html", ""},
		{"/index.html/", 307, "", "/index.html", ""},
		{"/slip/consistency.html?mass=1", 200, "text/html; charset=utf-8", "", "consistency"},
		{"/assets/page-1A2B.css", 200, "text/css; charset=utf-8", "", "body{}"},
		{"/assets/page-1A2B.js", 200, "text/javascript; charset=utf-8", "", "0"},
		{"/assets/desk-1A2B.bin", 200, "application/octet-stream", "", "\x1f\x8b"},
		{"/assets/icon.svg", 200, "image/svg+xml", "", "<svg/>"},
		{"/pictures/jar.png", 200, "image/png", "", "png"},
		{"/pictures/jar.jpg", 200, "image/jpeg", "", "jpg"},
		{"/site.webmanifest", 200, "application/manifest+json", "", "{}"},
		{"/nowhere", 404, "text/html; charset=utf-8", "", "nothing here"},
		{"/assets/", 404, "text/html; charset=utf-8", "", "nothing here"},
		{"/../../etc/passwd", 404, "text/html; charset=utf-8", "", "nothing here"},
		{scriptAt, 200, "text/javascript; charset=utf-8", "", "EventSource"},
		{styleAt, 200, "text/css; charset=utf-8", "", "iframe"},
	} {
		t.Run(c.target, func(t *testing.T) {
			w := get(p, "GET", c.target)
			if w.Code != c.status {
				t.Errorf("status %d, want %d", w.Code, c.status)
			}
			if got := w.Header().Get("Content-Type"); c.kind != "" && got != c.kind {
				t.Errorf("content type %q, want %q", got, c.kind)
			}
			if got := w.Header().Get("Location"); got != c.location {
				t.Errorf("location %q, want %q", got, c.location)
			}
			if !strings.Contains(w.Body.String(), c.holds) {
				t.Errorf("body %q, want %q in it", w.Body, c.holds)
			}
			private(t, w)
			head := get(p, "HEAD", c.target)
			if head.Code != w.Code || head.Body.Len() != 0 && c.location == "" {
				t.Errorf("HEAD answers %d and %d bytes", head.Code, head.Body.Len())
			}
		})
	}
}

// private wants an answer to be kept by nobody, taken for nothing else than it
// says it is, and read or framed by no page of another server.
func private(t *testing.T, w *httptest.ResponseRecorder) {
	t.Helper()
	for name, want := range map[string]string{"Cache-Control": "no-store", "X-Content-Type-Options": "nosniff", "Cross-Origin-Resource-Policy": "same-origin",
		"X-Frame-Options": "SAMEORIGIN", "Content-Security-Policy": "frame-ancestors 'self'"} {
		if got := w.Header().Get(name); got != want {
			t.Errorf("%s is %q, want %q", name, got, want)
		}
	}
}

func TestOnlyReading(t *testing.T) {
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS", "PATCH"} {
		w := get(shown(handbook), method, "/")
		if w.Code != 405 || w.Header().Get("Allow") != "GET, HEAD" {
			t.Errorf("%s answers %d, Allow %q", method, w.Code, w.Header().Get("Allow"))
		}
		private(t, w)
	}
}

func TestNoPageForAMissingAddress(t *testing.T) {
	w := get(shown(book{"index.html": nil}), "GET", "/nowhere")
	if w.Code != 404 || !strings.Contains(w.Body.String(), "no page at this address") {
		t.Errorf("%d %q", w.Code, w.Body)
	}
}

// TestWaitingPageHearsThatThePreviewLives wants a sign of life for a page to
// which nothing happens, often enough that no connection in between gives up, and
// an end when the page has gone.
func TestWaitingPageHearsThatThePreviewLives(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		p := shown(handbook)
		page, leave := context.WithCancel(t.Context())
		heard := httptest.NewRecorder()
		ended := make(chan struct{})
		go func() {
			p.ServeHTTP(heard, httptest.NewRequest("GET", eventsAt, nil).WithContext(page))
			close(ended)
		}()
		time.Sleep(2*time.Minute + time.Second)
		leave()
		<-ended
		if n := strings.Count(heard.Body.String(), ": still here\n\n"); n < 4 || n > 24 {
			t.Errorf("%d signs of life in two minutes", n)
		}
		if n := strings.Count(heard.Body.String(), "event: version\n"); n != 1 {
			t.Errorf("one version is told %d times", n)
		}
		private(t, heard)
	})
}

func TestWithScript(t *testing.T) {
	const tag = `<script src="/.preview/follow.js" data-version="v-1" defer></script>`
	for _, c := range []struct{ name, page, want string }{
		{"a.html", "<head></head><body></body>", "<head>" + tag + "</head><body></body>"},
		{"a.html", "<body>x</body>", "<body>x" + tag + "</body>"},
		{"a.html", "x", "x" + tag},
		{"a.css", "</head>", "</head>"},
		{"a.svg", "</head>", "</head>"},
	} {
		if got := withScript(c.name, []byte(c.page), "v-1"); string(got) != c.want {
			t.Errorf("%s %q became %q, want %q", c.name, c.page, got, c.want)
		}
	}
}

var testRule = &finding.Rule{ID: "missing-page", Severity: finding.Error, Means: "Links lead somewhere."}

var broken = &failure{Findings: finding.List{{
	File: "units/slip/<b>.md", Line: 3, Column: 31, Rule: testRule, Text: "no page at nope.md", Do: "Write the name of a page.",
}}}

func TestFailurePage(t *testing.T) {
	p := shown(handbook)
	p.current.report(broken)
	for _, c := range []struct {
		target string
		last   string
	}{
		{"/", "/.preview/last/index.html"},
		{"/slip/", "/.preview/last/slip/index.html"},
		{"/slip", "/.preview/last/slip/index.html"},
		{"/slip/consistency.html", "/.preview/last/slip/consistency.html"},
		{"/slip/new.html", ""},
		{"/new/", ""},
	} {
		w := get(p, "GET", c.target)
		body := w.Body.String()
		for _, part := range []string{
			"units/slip/&lt;b&gt;.md:3:31", "error: no page at nope.md", "Write the name of a page.", "One thing to mend", scriptAt,
		} {
			if !strings.Contains(body, part) {
				t.Errorf("%s: %q is not on the page:\n%s", c.target, part, body)
			}
		}
		if w.Code != 500 || strings.Contains(body, "<iframe") != (c.last != "") || !strings.Contains(body, c.last) {
			t.Errorf("%s: status %d, want %q as last page:\n%s", c.target, w.Code, c.last, body)
		}
	}
	if w := get(p, "GET", "/assets/page-1A2B.css"); w.Code != 200 {
		t.Errorf("style of the last page: %d", w.Code)
	}
	w := get(p, "GET", "/.preview/last/slip/consistency.html")
	if w.Code != 200 || w.Body.String() != "consistency" {
		t.Errorf("last page: %d %q", w.Code, w.Body)
	}
	w = get(p, "GET", "/.preview/last/slip")
	if w.Code != 307 || w.Header().Get("Location") != "/.preview/last/slip/" {
		t.Errorf("last folder: %d %q", w.Code, w.Header().Get("Location"))
	}
	w = get(p, "GET", "/.preview/last/nowhere.html")
	if w.Code != 404 || strings.Contains(w.Body.String(), scriptAt) {
		t.Errorf("last missing page: %d %q", w.Code, w.Body)
	}
	p.current.print(handbook)
	if w := get(p, "GET", "/"); w.Code != 200 || strings.Contains(w.Body.String(), "to mend") {
		t.Errorf("after mending: %d %q", w.Code, w.Body)
	}
}

func TestFailureBeforeTheFirstPage(t *testing.T) {
	p := &pages{current: newCurrent(), say: &saying{to: io.Discard}}
	two := append(append(finding.List{}, broken.Findings...), broken.Findings...)
	p.current.report(&failure{Findings: two})
	if w := get(p, "GET", "/"); w.Code != 500 || !strings.Contains(w.Body.String(), "2 things to mend") || strings.Contains(w.Body.String(), "iframe") {
		t.Errorf("%d %q", w.Code, w.Body)
	}
	if w := get(p, "GET", "/assets/x.css"); w.Code != 404 {
		t.Errorf("a style that was never made: %d", w.Code)
	}
	p.current.report(&failure{Words: "the disk <says> no"})
	if w := get(p, "GET", "/"); !strings.Contains(w.Body.String(), "the disk &lt;says&gt; no") || !strings.Contains(w.Body.String(), "could not be printed") {
		t.Errorf("%q", w.Body)
	}
}

func TestRequestWaitsForTheFirstBuild(t *testing.T) {
	p := &pages{current: newCurrent(), say: &saying{to: io.Discard}}
	done := make(chan string)
	go func() { done <- get(p, "GET", "/").Body.String() }()
	p.current.print(handbook)
	if body := <-done; !strings.Contains(body, "home") {
		t.Errorf("body %q", body)
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	empty := &pages{current: newCurrent(), say: &saying{to: io.Discard}}
	empty.ServeHTTP(httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil).WithContext(ctx)) // returns
}
