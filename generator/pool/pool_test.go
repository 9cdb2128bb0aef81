package pool

import (
	"errors"
	"fmt"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
	"testing/synctest"
	"time"
)

func TestMapKeepsTheOrder(t *testing.T) {
	for _, n := range []int{0, 1, 2, 100} {
		got := Map(n, func(i int) int {
			if i%7 == 0 {
				runtime.Gosched()
			}
			return i * i
		})
		if len(got) != n {
			t.Fatalf("%d results of %d", len(got), n)
		}
		for i, square := range got {
			if square != i*i {
				t.Errorf("result %d is %d", i, square)
			}
		}
	}
}

// TestWorkersRunAtOnce counts how many pieces are under way together: as many
// as there are processors, times the share.
func TestWorkersRunAtOnce(t *testing.T) {
	for _, share := range []int{1, 3} {
		synctest.Test(t, func(t *testing.T) {
			var now, most atomic.Int64
			_ = Try(50*share, share, func(int) error {
				running := now.Add(1)
				for old := most.Load(); running > old && !most.CompareAndSwap(old, running); old = most.Load() {
				}
				time.Sleep(time.Second)
				now.Add(-1)
				return nil
			})
			if want := int64(min(50, runtime.GOMAXPROCS(0)) * share); most.Load() != want {
				t.Errorf("share %d: %d at once, want %d", share, most.Load(), want)
			}
		})
	}
}

func TestTryReturnsTheFirstFailure(t *testing.T) {
	third, later := errors.New("third"), errors.New("later")
	for range 50 {
		var begun atomic.Int64
		err := Try(1000, 1, func(i int) error {
			begun.Add(1)
			switch {
			case i == 3:
				return third
			case i > 3:
				return later
			}
			return nil
		})
		if !errors.Is(err, third) {
			t.Fatalf("%v", err)
		}
		if n, most := int(begun.Load()), 3+runtime.GOMAXPROCS(0); n > most {
			t.Errorf("%d pieces were begun, want %d at most", n, most)
		}
	}
}

// TestPanicReachesTheCaller wants a panic in a piece of work to go on in the
// goroutine that asked for the work, which may know what to do about it.
func TestPanicReachesTheCaller(t *testing.T) {
	defer func() {
		words := fmt.Sprint(recover())
		if first, rest, _ := strings.Cut(words, "\n"); first != "piece 3" || !strings.Contains(rest, "pool_test.go") {
			t.Errorf("recovered %q", words)
		}
	}()
	Each(5, func(i int) {
		if i == 3 {
			panic("piece 3")
		}
	})
	t.Error("nothing panicked")
}

// TestKeptForgetsWhatNobodyAsksFor wants what a round used to be there in the next,
// and the rest to be gone after it.
func TestKeptForgetsWhatNobodyAsksFor(t *testing.T) {
	var k Kept[string, int]
	k.Begin()
	k.Put("used", 1)
	k.Put("left", 2)
	for round := range 3 {
		k.Begin()
		if v, ok := k.Get("used"); v != 1 || !ok {
			t.Errorf("round %d: used is %d, %v", round, v, ok)
		}
	}
	if v, ok := k.Get("left"); ok {
		t.Errorf("left is still %d", v)
	}
}
