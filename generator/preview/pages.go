package preview

import (
	"bytes"
	"embed"
	"fmt"
	"net/http"
	"net/url"
	"path"
	"strings"
	"time"
)

// Addresses of the preview's own files. No page of a handbook starts with a
// dot, so they hide none.
const (
	own      = "/.preview/"
	eventsAt = own + "events"
	scriptAt = own + "follow.js"
	styleAt  = own + "failure.css"
	lastAt   = own + "last" // the handbook as it last printed, below the list of failures
)

//go:embed page/follow.js page/failure.css page/failure.html
var carried embed.FS

// kinds says what a file is by the end of its name. The table is fixed, so
// that a preview shows the same on every machine.
var kinds = map[string]string{
	".epub":        "application/epub+zip",
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".webmanifest": "application/manifest+json",
	".svg":         "image/svg+xml",
	".png":         "image/png",
	".jpg":         "image/jpeg",
	".webp":        "image/webp",
	".avif":        "image/avif",
	".ico":         "image/x-icon",
	".txt":         "text/plain; charset=utf-8",
	".xml":         "application/xml",
	".csv":         "text/csv; charset=utf-8",
	".pdf":         "application/pdf",
}

// kind returns the content type for a name.
func kind(name string) string {
	if k, ok := kinds[path.Ext(name)]; ok {
		return k
	}
	return "application/octet-stream"
}

// pages answers requests from the current state.
type pages struct {
	current *current
	say     *saying
	write   time.Duration // how long a reader may take to read one answer; 0 is no limit
}

func (p *pages) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	// The page of failures shows the last good page in a frame of its own.
	h.Set("X-Frame-Options", "SAMEORIGIN")
	h.Set("Content-Security-Policy", "frame-ancestors 'self'")
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		h.Set("Allow", "GET, HEAD")
		http.Error(w, "A handbook can only be read.", http.StatusMethodNotAllowed)
		return
	}
	switch r.URL.Path {
	case eventsAt:
		p.events(w, r)
		return
	case scriptAt, styleAt:
		name := "page/" + strings.TrimPrefix(r.URL.Path, own)
		data, err := carried.ReadFile(name)
		if err != nil {
			panic(err) // it is embedded
		}
		send(w, r, name, http.StatusOK, data)
		return
	}
	if s := p.current.wait(r.Context(), ""); s != nil {
		p.extend(w) // the wait was ours, not the reader's
		p.page(w, r, s)
	}
}

// extend gives a reader the whole time from now on.
func (p *pages) extend(w http.ResponseWriter) {
	if p.write > 0 {
		_ = http.NewResponseController(w).SetWriteDeadline(time.Now().Add(p.write))
	}
}

// page answers with a file of the state, or with its failures where a page of
// the handbook was asked for.
func (p *pages) page(w http.ResponseWriter, r *http.Request, s *state) {
	at, last := strings.CutPrefix(r.URL.Path, lastAt+"/")
	if last {
		at = "/" + at
	}
	name, right := find(s.files, at)
	data, _, err := s.files.file(name)
	switch {
	case s.failure != nil && !last && mayBePage(at):
		send(w, r, "index.html", http.StatusInternalServerError, failurePage(s, name))
	case name == "":
		missing(w, r, s, last)
	case at != right:
		redirect(w, r, right, last)
	case err != nil:
		p.say.failed(err)
		send(w, r, "index.html", http.StatusInternalServerError, failurePage(&state{version: s.version, failure: &failure{Words: err.Error()}}, name))
	case last:
		send(w, r, name, http.StatusOK, data)
	default:
		send(w, r, name, http.StatusOK, withScript(name, data, s.version))
	}
}

// mayBePage reports whether an address could be that of a page, now or once the
// handbook is mended.
func mayBePage(at string) bool {
	end := path.Ext(strings.TrimSuffix(at, "/"))
	return end == "" || end == ".html"
}

// find returns the name of the file that an address means, "" for none, and the
// address in its right form: clean, a folder with its slash. A folder means
// its index.html.
func find(f *files, at string) (name, right string) {
	right = path.Clean("/" + at)
	name = right[1:]
	if f.has(name) {
		return name, right
	}
	name = path.Join(name, "index.html")
	if f.has(name) {
		return name, strings.TrimSuffix(right, "/") + "/"
	}
	return "", right
}

// missing answers for an address that nothing has, with the handbook's own
// page for that.
func missing(w http.ResponseWriter, r *http.Request, s *state, last bool) {
	data, ok, err := s.files.file("404.html")
	if !ok || err != nil {
		http.Error(w, "There is no page at this address.", http.StatusNotFound)
		return
	}
	if !last {
		data = withScript("404.html", data, s.version)
	}
	send(w, r, "404.html", http.StatusNotFound, data)
}

// redirect sends the browser to the address in its one right form, for links
// in a page count from its folder.
func redirect(w http.ResponseWriter, r *http.Request, clean string, last bool) {
	if last {
		clean = lastAt + clean
	}
	to := url.URL{Path: clean, RawQuery: r.URL.RawQuery}
	http.Redirect(w, r, to.String(), http.StatusTemporaryRedirect)
}

// send writes one answer.
func send(w http.ResponseWriter, r *http.Request, name string, status int, data []byte) {
	w.Header().Set("Content-Type", kind(name))
	if status != http.StatusOK {
		w.WriteHeader(status)
		if r.Method != http.MethodHead {
			_, _ = w.Write(data) // a reader who has gone needs no answer
		}
		return
	}
	http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(data))
}

// withScript adds to a page the script that follows saves, and which version
// of the handbook the page belongs to.
func withScript(name string, page []byte, version string) []byte {
	if kind(name) != kinds[".html"] {
		return page
	}
	tag := fmt.Appendf(nil, `<script src="%s" data-version="%s" defer></script>`, scriptAt, version)
	for _, mark := range []string{"</head>", "</body>"} {
		if at := bytes.Index(page, []byte(mark)); at >= 0 {
			return bytes.Join([][]byte{page[:at], tag, page[at:]}, nil)
		}
	}
	return append(bytes.Clone(page), tag...)
}
