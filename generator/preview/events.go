package preview

import (
	"context"
	"fmt"
	"net/http"
	"time"
)

// heartbeat is how often a waiting page is told that the preview still lives,
// so that connections whose page has gone come to an end.
const heartbeat = 15 * time.Second

// events tells an open page, as server-sent events, which version is shown: at
// once, and again at each change. The page compares it with its own, so that
// nothing is lost between its being sent and its asking.
func (p *pages) events(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Content-Type", "text/event-stream")
	if r.Method == http.MethodHead {
		return
	}
	out := http.NewResponseController(w)
	text, known := "retry: 300\n\n", ""
	for {
		p.extend(w) // a page that waits is not one that does not read
		if _, err := fmt.Fprint(w, text); err != nil || out.Flush() != nil {
			return
		}
		beat, cancel := context.WithTimeout(r.Context(), heartbeat)
		s := p.current.wait(beat, known)
		cancel()
		switch {
		case s != nil:
			known = s.version
			text = "event: version\ndata: " + known + "\n\n"
		case r.Context().Err() != nil:
			return
		default:
			text = ": still here\n\n"
		}
	}
}
