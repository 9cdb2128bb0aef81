package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"syscall"

	"slipbook/generator/preview"
	"slipbook/generator/shelf"
)

// The statuses that slipbook ends with.
const (
	done    = 0
	failed  = 1 // findings that stop the work, or work that failed
	refused = 2 // wrong use, or refused input
)

// streams are where a command writes: results to out, the rest to say.
type streams struct{ out, say io.Writer }

// progress prints a line for somebody who watches, and nothing for a file or
// another program.
func (s *streams) progress(format string, args ...any) {
	if s.watched() {
		fmt.Fprintf(s.say, format+"\n", args...)
	}
}

// watched reports whether a terminal shows what is said.
func (s *streams) watched() bool {
	file, ok := s.say.(*os.File)
	if !ok {
		return false
	}
	info, err := file.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}

// errSaid is the error of a command that has said what is wrong already.
var errSaid = errors.New("said already")

// refusal is the error for a command that was asked for what it cannot do.
type refusal struct{ error }

func (r refusal) Unwrap() error { return r.error }

// refuse makes a refusal of words for a person.
func refuse(format string, args ...any) error {
	return refusal{fmt.Errorf(format, args...)}
}

// interruption is the error for a command that was asked to end.
type interruption struct {
	by    syscall.Signal
	words string
}

// Error returns the words for a person.
func (i *interruption) Error() string { return fmt.Sprintf("stopped (%v): %s", i.by, i.words) }

// status is that of a program ended by the signal, as shells count it.
func (i *interruption) status() int { return 128 + int(i.by) }

// status returns the program's status for the error of a command.
func status(err error) int {
	var own refusal
	var folder *shelf.Refusal
	var address *preview.Refusal
	var stop *interruption
	switch {
	case err == nil:
		return done
	case errors.As(err, &stop):
		return stop.status()
	case errors.As(err, &own), errors.As(err, &folder), errors.As(err, &address):
		return refused
	}
	return failed
}
