package shelf

import (
	"bufio"
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync/atomic"
	"syscall"
	"testing"
	"time"
)

// kills is how many runs the trial kills in each of its parts. A long trial is
//
//	go test ./generator/shelf -run TestTrial -v -kills 500
var kills = flag.Int("kills", 6, "how many runs each part of the trial kills")

// trialFolder names, in the environment of a process that publishes without
// end, the folder and the way of doing so.
const trialFolder, trialWay = "SLIPBOOK_TRIAL_FOLDER", "SLIPBOOK_TRIAL_WAY"

// TestMain is such a process when it is asked to be.
func TestMain(m *testing.M) {
	if dir := os.Getenv(trialFolder); dir != "" {
		publishWithoutEnd(dir, trialWays[os.Getenv(trialWay)])
	}
	os.Exit(m.Run())
}

var trialWays = map[string]lastSteps{
	"one step":    {flush: func(string) error { return nil }, swap: swap},
	"two renames": {flush: func(string) error { return nil }, swap: twoRenames},
	"in place":    {flush: func(string) error { return nil }, swap: stuck(syscall.EBUSY)},
}

// trialEdition is one of many editions: every page names its edition and the
// shared file that it needs.
func trialEdition(n int) map[string][]byte {
	files := map[string][]byte{}
	for i := range 120 {
		files[fmt.Sprintf("unit-%d/page-%d.html", i%7, i)] = fmt.Appendf(nil, "%d assets/x-%d", n, n)
	}
	files["index.html"] = fmt.Appendf(nil, "%d assets/x-%d", n, n)
	files[fmt.Sprintf("only-%d/a.html", n%3)] = fmt.Appendf(nil, "%d assets/x-%d", n, n)
	files[fmt.Sprintf("assets/x-%d", n)] = []byte("x")
	return files
}

// publishWithoutEnd says a line before the first publish and after each.
func publishWithoutEnd(dir string, steps lastSteps) {
	fmt.Println("ready")
	for n := rand.IntN(1e9); ; n++ {
		if _, err := replace(context.Background(), dir, students(trialEdition(n)), steps); err != nil {
			fmt.Println("failed:", err)
			os.Exit(1)
		}
		fmt.Println(n)
	}
}

// trial is what came of killing.
type trial struct {
	killed, absent, whole, mixed, broken, left, after, failed int
}

func (r trial) String() string {
	return fmt.Sprintf("%d killed: %d folders absent, %d whole, %d of two editions, %d broken; %d leftovers, %d after the next publish; %d publishes failed",
		r.killed, r.absent, r.whole, r.mixed, r.broken, r.left, r.after, r.failed)
}

// TestTrial kills publishes at random moments and looks at what readers would
// find, and at what is left beside the folder.
func TestTrial(t *testing.T) {
	for way, steps := range trialWays {
		for _, first := range []bool{false, true} {
			if first && way == "in place" {
				continue // a folder that is not there has no place
			}
			name := way
			if first {
				name += ", the first publish"
			}
			t.Run(name, func(t *testing.T) {
				r := killMany(t, way, steps, first)
				t.Log(r)
				if r.broken+r.after+r.failed > 0 || r.mixed > 0 && way != "in place" || r.absent > 0 && way == "one step" && !first {
					t.Error("something was lost")
				}
			})
		}
	}
}

// killMany kills runs that publish in one way.
func killMany(t *testing.T, way string, steps lastSteps, first bool) (r trial) {
	parent := t.TempDir()
	dir := filepath.Join(parent, "public")
	prepare := func() {
		must(t, os.RemoveAll(dir))
		if !first {
			must(t, publish(dir, trialEdition(0)))
			put(t, dir, map[string]string{".htaccess": "deny", ".git/x": "1"})
		}
	}
	prepare()
	for range *kills {
		if first {
			prepare()
		}
		killOne(t, dir, way)
		r.killed++
		r.look(dir, !first)
		if left, err := filepath.Glob(filepath.Join(parent, workPrefix+"*")); err == nil {
			r.left += len(left)
		}
		if _, err := replace(context.Background(), dir, students(trialEdition(r.killed)), steps); err != nil {
			t.Error(err)
			r.failed++
		}
		if left, err := filepath.Glob(filepath.Join(parent, workPrefix+"*")); err == nil {
			r.after += len(left)
		}
		if left, err := filepath.Glob(filepath.Join(dir, workPrefix+"*")); err == nil {
			r.after += len(left)
		}
	}
	return r
}

// killOne lets a process publish and kills it after a random time.
func killOne(t *testing.T, dir, way string) {
	t.Helper()
	c := exec.Command(os.Args[0])
	c.Env = append(os.Environ(), trialFolder+"="+dir, trialWay+"="+way)
	out, err := c.StdoutPipe()
	must(t, err)
	must(t, c.Start())
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil || line != "ready\n" {
		t.Errorf("the process said %q, %v", line, err)
	}
	time.Sleep(time.Duration(rand.IntN(40_000)) * time.Microsecond)
	must(t, c.Process.Kill())
	if err := c.Wait(); err == nil || strings.Contains(err.Error(), "exit status") {
		t.Errorf("the process ended by itself: %v", err)
	}
}

// look finds out what a reader would find in the folder.
func (r *trial) look(dir string, dots bool) {
	editions := map[string]bool{}
	bad := false
	err := filepath.WalkDir(dir, func(name string, e fs.DirEntry, err error) error {
		if err == nil && strings.HasPrefix(e.Name(), workPrefix) {
			return fs.SkipDir
		}
		if err != nil || filepath.Ext(name) != ".html" {
			return err
		}
		data, err := os.ReadFile(name)
		edition, asset, ok := strings.Cut(string(data), " ")
		editions[edition] = true
		if _, missing := os.Stat(filepath.Join(dir, asset)); !ok || missing != nil {
			bad = true
		}
		return err
	})
	if data, err := os.ReadFile(filepath.Join(dir, ".git/x")); dots && (err != nil || string(data) != "1") {
		if _, gone := os.Stat(dir); gone == nil {
			bad = true
		}
	}
	switch {
	case errors.Is(err, fs.ErrNotExist):
		r.absent++
	case err != nil || bad || len(editions) == 0:
		r.broken++
	case len(editions) > 1:
		r.mixed++
	default:
		r.whole++
	}
}

// TestReadersMissNothing reads pages, and the shared files that they ask for a
// little later, while editions follow one another.
func TestReadersMissNothing(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "public")
	must(t, publish(dir, trialEdition(0)))
	var visits atomic.Int64
	stop, done := make(chan struct{}), make(chan int)
	go func() {
		missing := 0
		for {
			select {
			case <-stop:
				done <- missing
				return
			default:
			}
			page, err := os.ReadFile(filepath.Join(dir, "index.html"))
			time.Sleep(time.Duration(rand.IntN(3)) * time.Millisecond)
			_, asset, _ := strings.Cut(string(page), " ")
			if _, gone := os.Stat(filepath.Join(dir, asset)); err != nil || gone != nil {
				missing++
			}
			visits.Add(1)
		}
	}()
	for n := range 20 {
		must(t, publish(dir, trialEdition(n+1)))
		for seen := visits.Load(); visits.Load() < seen+2; { // one edition behind, not two
			time.Sleep(time.Millisecond)
		}
	}
	close(stop)
	if missing := <-done; missing > 0 {
		t.Errorf("%d visits missed something, of %d", missing, visits.Load())
	}
}

// TestTwoAtOnce publishes two editions at the same time, into a folder that is
// there and into one that is not: both succeed, and one of them stands whole.
func TestTwoAtOnce(t *testing.T) {
	for _, there := range []bool{true, false} {
		for range 4 {
			parent := t.TempDir()
			dir := filepath.Join(parent, "public")
			if there {
				must(t, publish(dir, trialEdition(0)))
			}
			ends := make(chan error, 2)
			for n := range 2 {
				go func() { ends <- publish(dir, trialEdition(n+1)) }()
			}
			must(t, errors.Join(<-ends, <-ends))
			var r trial
			r.look(dir, false)
			if r.whole != 1 {
				t.Errorf("it was there: %v; found: %v", there, r)
			}
			noLitter(t, parent, "public")
		}
	}
}
