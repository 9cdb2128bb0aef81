// Package pool does many pieces of work at once and hands their results back
// in order. It exists so that reading, checking, printing and writing share one
// way of using every processor, and so that none of them can answer differently
// because one piece was finished before another. Kept is what such work may share
// from one time to the next.
//
// pool is a leaf: it imports nothing else of the program.
package pool

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// Each calls work with 0 to n-1, as many at once as there are processors, and
// returns when all are done. Each call writes only to its own place.
func Each(n int, work func(i int)) {
	_ = Try(n, 1, func(i int) error {
		work(i)
		return nil
	})
}

// Map returns what work answers to 0 to n-1, in that order, whichever was
// finished first.
func Map[T any](n int, work func(i int) T) []T {
	results := make([]T, n)
	Each(n, func(i int) { results[i] = work(i) })
	return results
}

// Try calls work with 0 to n-1, share times as many at once as there are
// processors: more than 1 where the work waits for a disk. No piece is begun
// after one has failed; of several errors that of the lowest number is
// returned. Pieces are begun in order, so that is always the same one where
// work fails alike every time. A panic in a piece goes on in Try's own goroutine.
func Try(n, share int, work func(i int) error) error {
	failures := make([]error, n)
	var next atomic.Int64
	var failed atomic.Bool
	var workers sync.WaitGroup
	for range min(n, share*runtime.GOMAXPROCS(0)) {
		workers.Go(func() {
			for !failed.Load() {
				i := int(next.Add(1)) - 1
				if i >= n {
					return
				}
				if failures[i] = try(i, work); failures[i] != nil {
					failed.Store(true)
				}
			}
		})
	}
	workers.Wait()
	for _, err := range failures {
		if p, ok := err.(*panicked); ok {
			panic(p)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// panicked is a panic in a piece of work.
type panicked struct {
	value any
	stack []byte
}

// Error returns what was said, and below it where.
func (p *panicked) Error() string { return fmt.Sprintf("%v\n\n%s", p.value, p.stack) }

// try does one piece of work. A panic in a goroutine of its own would end the
// program whatever its caller does about panics.
func try(i int, work func(i int) error) (err error) {
	defer func() {
		if p := recover(); p != nil {
			err = &panicked{p, debug.Stack()}
		}
	}()
	return work(i)
}
