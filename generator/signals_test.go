//go:build unix

package main

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// signals is how many publishes each signal is sent to. A long trial is
//
//	go test ./generator -run TestSignals -v -signals 60
var signals = flag.Int("signals", 2, "how many publishes are sent each signal")

// slipbook makes this test program run as the program itself.
func slipbook(t *testing.T, arguments ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	return &exec.Cmd{Path: self, Args: append([]string{"slipbook"}, arguments...), Dir: ".."}
}

// writing reports whether a publish has begun to write beside a folder.
func writing(parent string) bool {
	found, err := filepath.Glob(filepath.Join(parent, ".slipbook-new-*"))
	return err == nil && len(found) > 0
}

// TestSignals sends a publish each signal that ends programs as soon as it
// writes. It has finished, or says so, ends with the signal's status and has
// changed nothing; nothing is left beside the folder.
func TestSignals(t *testing.T) {
	for _, signal := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP} {
		finished, stopped := 0, 0
		for range *signals {
			parent := t.TempDir()
			var said bytes.Buffer
			c := slipbook(t, "publish", "--to", filepath.Join(parent, "public"))
			c.Stderr = &said
			if err := c.Start(); err != nil {
				t.Fatal(err)
			}
			ended := make(chan error, 1)
			go func() { ended <- c.Wait() }()
			var err error
			for waiting := true; waiting; {
				select {
				case err = <-ended:
					t.Fatalf("it ended before it could be stopped: %v\n%s", err, said.String())
				case <-time.After(time.Millisecond / 2):
				}
				waiting = !writing(parent)
			}
			_ = c.Process.Signal(signal)
			err = <-ended
			entries, failed := os.ReadDir(parent)
			if failed != nil {
				t.Fatal(failed)
			}
			exit, _ := errors.AsType[*exec.ExitError](err)
			switch {
			case err == nil && len(entries) == 1 && entries[0].Name() == "public":
				finished++
			case exit != nil && exit.ExitCode() == 128+int(signal) && len(entries) == 0 && strings.Contains(said.String(), "nothing was published"):
				stopped++
			default:
				t.Errorf("%v: ended with %v, %d names beside the folder, and said %q", signal, err, len(entries), said.String())
			}
		}
		t.Logf("%v: %d finished, %d stopped", signal, finished, stopped)
	}
}

// TestIgnoredSignalsStayIgnored publishes as nohup lets a program run: the end
// of the terminal does not stop it.
func TestIgnoredSignalsStayIgnored(t *testing.T) {
	parent := t.TempDir()
	program := filepath.Join(parent, "slipbook") // by this name the test program is the program itself
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(self, program); err != nil {
		t.Fatal(err)
	}
	c := exec.Command("sh", "-c", `trap '' HUP; exec "$0" publish --to "$1"`, program, filepath.Join(parent, "site", "public"))
	c.Dir = ".."
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	for start := time.Now(); !writing(filepath.Join(parent, "site")) && time.Since(start) < time.Minute; {
		time.Sleep(time.Millisecond / 2)
	}
	_ = c.Process.Signal(syscall.SIGHUP)
	if err := c.Wait(); err != nil {
		t.Errorf("it ended with %v", err)
	}
	if _, err := os.Stat(filepath.Join(parent, "site", "public", "index.html")); err != nil {
		t.Error(err)
	}
}

// Statuses tell a signal from a failure.
func TestStatusOfASignal(t *testing.T) {
	err := &interruption{syscall.SIGTERM, "nothing was published"}
	if status(err) != 143 || !strings.Contains(err.Error(), "stopped (terminated): nothing was published") {
		t.Errorf("status %d, words %q", status(err), err)
	}
}

// A signal is heard while it is caught, and the context ends with it. It is not the
// end of the terminal: under nohup that is ignored, here as anywhere.
func TestSignalsAreCaught(t *testing.T) {
	ctx, caught := catchSignals()
	defer caught.release()
	if err := syscall.Kill(os.Getpid(), syscall.SIGTERM); err != nil {
		t.Fatal(err)
	}
	select {
	case <-ctx.Done():
	case <-time.After(10 * time.Second):
		t.Fatal("the signal was not heard")
	}
	if got := status(caught.stopped("")); got != 143 {
		t.Errorf("status %d", got)
	}
}
