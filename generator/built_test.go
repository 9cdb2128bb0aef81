package main

import (
	"bufio"
	"errors"
	"io"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// built builds the program as a reader of the README does.
func built(t *testing.T) string {
	t.Helper()
	program := filepath.Join(t.TempDir(), "slipbook")
	if said, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, said)
	}
	return program
}

// The built program, not the test program under its name, ends with the
// promised statuses, and a show that is interrupted ends well.
func TestBuiltProgram(t *testing.T) {
	program := built(t)
	for _, c := range []struct {
		name   string
		args   []string
		status int
	}{
		{"an answer", []string{"calc", "slip-density", "mass=150", "volume=100"}, 0},
		{"refused input", []string{"calc", "slip-density", "mass=-150"}, 2},
		{"refused input in JSON", []string{"calc", "slip-density", "--json", "mass=-150"}, 2},
		{"wrong use", []string{"publish", "--nothing"}, 2},
		{"findings", []string{"proof", "--content", t.TempDir()}, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			status := 0
			if err := exec.Command(program, c.args...).Run(); err != nil {
				exit, ok := errors.AsType[*exec.ExitError](err)
				if !ok {
					t.Fatal(err)
				}
				status = exit.ExitCode()
			}
			if status != c.status {
				t.Errorf("ended with %d, want %d", status, c.status)
			}
		})
	}
	t.Run("show until Ctrl-C", func(t *testing.T) { showUntilInterrupted(t, program) })
}

func showUntilInterrupted(t *testing.T, program string) {
	command := exec.Command(program, "show", "--content", filepath.Join("..", "content"), "--address", "127.0.0.1:0")
	say, err := command.StderrPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := command.Start(); err != nil {
		t.Fatal(err)
	}
	lines := bufio.NewReader(say)
	first, err := lines.ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	address := regexp.MustCompile(`http://127\.0\.0\.1:\d+/`).FindString(first)
	answer, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	page, err := io.ReadAll(answer.Body)
	answer.Body.Close()
	if err != nil || answer.StatusCode != http.StatusOK || !strings.Contains(string(page), `data-version=`) {
		t.Errorf("%s: status %d, %v:\n%s", address, answer.StatusCode, err, page)
	}
	if err := command.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	rest, err := io.ReadAll(lines)
	if err != nil {
		t.Error(err)
	}
	if err := command.Wait(); err != nil {
		t.Errorf("interrupted, it ends with %v:\n%s", err, rest)
	}
}
