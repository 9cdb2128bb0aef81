package shelf

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
)

// Refusal is the error for a folder that must not be replaced: nothing went
// wrong, another folder has to be chosen.
type Refusal struct{ words string }

// Error returns the words for a person.
func (r *Refusal) Error() string { return r.words }

func refuse(format string, args ...any) error {
	return &Refusal{fmt.Sprintf(format, args...)}
}

// unwritten explains why the new tree could not be finished.
func unwritten(path string, err error) error {
	if _, ok := errors.AsType[*Refusal](err); ok || errors.Is(err, context.Canceled) {
		return err
	}
	return fmt.Errorf("the new handbook could not be written, and %q was left as it was: %w", path, plain(err))
}

// plain drops the operation from an error of the operating system, and of a link
// the paths, where the sentence around it already says them.
func plain(err error) error {
	switch e := err.(type) {
	case *fs.PathError:
		return fmt.Errorf("%s: %w", e.Path, e.Err)
	case *os.LinkError:
		return e.Err
	case interface{ Unwrap() []error }:
		if all := e.Unwrap(); len(all) == 1 {
			return plain(all[0])
		}
	}
	return err
}
