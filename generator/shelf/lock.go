package shelf

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"
)

// patience is how long a publish waits for another one to end.
var patience = 30 * time.Second

// errLocked is the error of lockFolder for a folder that another run has locked.
var errLocked = errors.New("locked")

// lock keeps other publishes out of a folder and away from what stands beside
// it, until release is called or the program ends, however it ends. Where the
// system has no such locks, alone is false: another run may be at work.
func lock(ctx context.Context, parent, path string) (release func(), alone bool, err error) {
	alone = true
	var held []*os.File
	release = func() {
		for _, f := range held {
			_ = f.Close()
		}
	}
	for _, dir := range []string{parent, path} {
		f, err := waitFor(ctx, dir)
		switch {
		case f != nil:
			held = append(held, f)
		case err == nil:
			alone = alone && dir != parent
		default:
			release()
			return nil, false, err
		}
	}
	return release, alone, nil
}

// waitFor locks one folder. It returns neither a lock nor an error when the
// folder is not there, or cannot be locked by anybody.
func waitFor(ctx context.Context, dir string) (*os.File, error) {
	for start := time.Now(); ; {
		if info, err := os.Lstat(dir); err != nil || !info.IsDir() {
			return nil, nil // opening something else might never end
		}
		f, err := os.Open(dir)
		if err != nil {
			return nil, nil
		}
		switch err := lockFolder(f); {
		case err == nil:
			return f, nil
		case !errors.Is(err, errLocked):
			_ = f.Close()
			return nil, nil
		}
		_ = f.Close()
		if time.Since(start) > patience {
			return nil, fmt.Errorf("another slipbook has been publishing into %q, or a folder beside it, for a while; wait until it has ended, or end it, and publish again", dir)
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(20 * time.Millisecond):
		}
	}
}
