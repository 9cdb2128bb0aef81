package main

import (
	"context"
	"os"
	"os/signal"
	"sync"
	"syscall"
)

// endings are the signals that ask a program to end: Ctrl-C, a system that
// shuts down, a terminal that was closed.
var endings = []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGHUP}

// catching holds signals back from ending the program.
type catching struct {
	cancel context.CancelFunc
	heard  chan os.Signal

	mu    sync.Mutex
	first syscall.Signal // 0 while none has come
}

// catchSignals returns a context that ends when the program is asked to end,
// which it then does not do by itself until release is called. A signal that
// is ignored already, as under nohup, stays so.
func catchSignals() (context.Context, *catching) {
	ctx, cancel := context.WithCancel(context.Background())
	c := &catching{cancel: cancel, heard: make(chan os.Signal, 1)}
	for _, s := range endings {
		if !signal.Ignored(s) {
			signal.Notify(c.heard, s)
		}
	}
	go func() {
		for s := range c.heard {
			c.mu.Lock()
			if number, ok := s.(syscall.Signal); ok && c.first == 0 {
				c.first = number
			}
			c.mu.Unlock()
			cancel()
		}
	}()
	return ctx, c
}

// release lets signals end the program again. It may be called more than once.
func (c *catching) release() {
	signal.Stop(c.heard)
	c.cancel()
}

// stopped is the error for a command that a signal has ended, with what is left
// of its work in words.
func (c *catching) stopped(words string) error {
	c.mu.Lock()
	defer c.mu.Unlock()
	return &interruption{c.first, words}
}
