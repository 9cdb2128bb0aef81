// Package preview serves a handbook to its instructor's own browser while it
// is being written: from memory, to this machine only, new after each save. It
// exists so that a mistake is seen a moment after it is made, and never ends
// the server.
//
// Four things run side by side, and Serve returns only when all have ended:
// the watcher notices saves (watch.go), the rebuild loop builds the handbook
// again (rebuild.go) and makes it the current state (current.go), and the server
// hands out that state (pages.go) and tells open pages of a new one (events.go).
// A state is never changed, only replaced.
package preview

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"sync"
	"time"

	"slipbook/generator/finding"
)

// Build makes the handbook. Findings that stop the work come without one; an
// error is anything else that failed. It is called again and again, never twice
// at once, and should give up when ctx ends.
type Build func(ctx context.Context) (Handbook, finding.List, error)

// Options are what a preview needs.
type Options struct {
	Address  string    // where to listen, "127.0.0.1:8300"; this machine only; port 0 takes a free one
	Folder   string    // the content folder, whose saves are followed
	Build    Build     // makes the handbook
	Say      io.Writer // gets the address to open, and what is wrong after each save
	Progress bool      // say also what went well
}

// Serve shows the handbook until ctx ends, which is no error. The error is a
// *Refusal when the address may not be served, else says what failed.
func Serve(ctx context.Context, o Options) error {
	listener, err := listen(o.Address)
	if err != nil {
		return err
	}
	ctx, end := context.WithCancel(ctx)
	defer end()
	now := newCurrent()
	saves := make(chan struct{}, 1)
	say := &saying{to: o.Say}
	server := newServer(ctx, guard(listener.Addr(), &pages{now, say, usual.write}), usual)
	say.line("Open http://%s/ to read the handbook; it follows every save. Ctrl-C ends it.", listener.Addr())

	var running sync.WaitGroup
	running.Go(func() { watch(ctx, o.Folder, saves, say) })
	running.Go(func() { rebuilder{o.Build, now, say, o.Progress}.run(ctx, saves) })
	running.Go(func() {
		<-ctx.Done()
		shut(server)
	})
	err = server.Serve(listener)
	end()
	running.Wait()
	if errors.Is(err, http.ErrServerClosed) {
		return nil
	}
	return fmt.Errorf("the handbook is no longer shown: %w; start slipbook again", err)
}

// limits are how long the server waits for a reader.
type limits struct {
	write time.Duration // to read an answer
	idle  time.Duration // to ask again
}

// usual are the limits of a preview. A page that listens for changes has none,
// as long as it hears the heartbeat.
var usual = limits{write: 30 * time.Second, idle: time.Minute}

// newServer returns a server that closes the connections of readers who do
// nothing.
func newServer(ctx context.Context, handler http.Handler, l limits) *http.Server {
	return &http.Server{
		Handler:           handler,
		ReadHeaderTimeout: 10 * time.Second,
		WriteTimeout:      l.write,
		IdleTimeout:       l.idle,
		BaseContext:       func(net.Listener) context.Context { return ctx },
		ErrorLog:          log.New(io.Discard, "", 0), // browsers that hang up do no harm
	}
}

// shut lets answers under way finish, for a moment.
func shut(server *http.Server) {
	ctx, cancel := context.WithTimeout(context.Background(), time.Second)
	defer cancel()
	if server.Shutdown(ctx) != nil {
		_ = server.Close()
	}
}

// saying prints whole lines from several goroutines.
type saying struct {
	mu sync.Mutex
	to io.Writer
}

func (s *saying) line(format string, args ...any) {
	s.mu.Lock()
	defer s.mu.Unlock()
	fmt.Fprintf(s.to, format+"\n", args...)
}

// failed prints an error, and where in the program it was if that is to blame.
func (s *saying) failed(err error) {
	var c *crash
	if errors.As(err, &c) {
		s.line("%s\n%s", c, c.where)
	} else {
		s.line("%s", err)
	}
}
