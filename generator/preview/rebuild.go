package preview

import (
	"context"
	"fmt"
	"runtime/debug"
	"strings"
	"time"

	"slipbook/generator/finding"
)

// rebuilder builds the handbook again after each save.
type rebuilder struct {
	build    Build
	current  *current
	say      *saying
	progress bool
}

// outcome is what one build led to.
type outcome struct {
	handbook Handbook
	findings finding.List
	err      error
	took     time.Duration
}

// run builds after each save, the first of which is the watcher's being ready,
// until ctx ends. A build that a newer save overtakes is told to give up and
// its outcome is dropped. run returns when no build is under way any more.
func (r rebuilder) run(ctx context.Context, saves <-chan struct{}) {
	for {
		select {
		case <-saves:
		case <-ctx.Done():
			return
		}
		out, overtaken := r.turn(ctx, saves)
		for overtaken && ctx.Err() == nil {
			out, overtaken = r.turn(ctx, saves)
		}
		if !overtaken {
			r.post(out)
		}
	}
}

// turn runs one build to its end and reports whether a save, or the end of the
// preview, has overtaken it.
func (r rebuilder) turn(ctx context.Context, saves <-chan struct{}) (out outcome, overtaken bool) {
	building, cancel := context.WithCancel(ctx)
	defer cancel()
	done := make(chan outcome, 1)
	go func() { done <- attempt(building, r.build) }()
	for {
		select {
		case <-saves:
			overtaken = true
			cancel()
		case out = <-done:
			return out, overtaken || ctx.Err() != nil
		}
	}
}

// attempt runs a build and turns a panic in it into an error: a mistake in the
// program must not take the instructor's preview away.
func attempt(ctx context.Context, build Build) (out outcome) {
	start := time.Now()
	defer func() {
		if p := recover(); p != nil {
			out = outcome{err: crashed(p)}
		}
		out.took = time.Since(start)
	}()
	out.handbook, out.findings, out.err = build(ctx)
	return out
}

// crash is the error for a panic in a build, or in the making of a page.
type crash struct {
	what  string
	where string
}

// crashed makes one of what was recovered. Of several lines the first says what.
func crashed(recovered any) *crash {
	what, where, _ := strings.Cut(fmt.Sprint(recovered), "\n")
	return &crash{what, where + string(debug.Stack())}
}

// Error returns the words for the page.
func (c *crash) Error() string {
	return "slipbook itself failed: " + c.what + ". The mistake is in the program, not in your lesson; what you changed last shows the way to it. Details stand in the terminal."
}

// post makes an outcome the current state and tells the terminal.
func (r rebuilder) post(out outcome) {
	out.findings.Sort()
	for _, f := range out.findings {
		r.say.line("%s", f)
	}
	switch {
	case out.err != nil:
		r.say.failed(out.err)
		r.current.report(&failure{Findings: out.findings, Words: out.err.Error()})
	case out.findings.Stop():
		r.current.report(&failure{Findings: out.findings})
	default:
		if r.progress {
			r.say.line("%s, ready in %d ms.", count(out.handbook.Pages()), out.took.Milliseconds())
		}
		r.current.print(out.handbook)
	}
}

// count says how many pages there are.
func count(pages int) string {
	if pages == 1 {
		return "1 page"
	}
	return fmt.Sprintf("%d pages", pages)
}
