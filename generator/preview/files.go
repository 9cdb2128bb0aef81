package preview

import (
	"bytes"
	"maps"
	"sync"
)

// Handbook is a handbook to show: pages and other files by address, from the
// root. Its pages are made when they are asked for, so that a save costs those
// that are looked at. Many goroutines may ask at once; the same address has the
// same bytes each time.
type Handbook interface {
	// File returns the bytes at an address; not ok where there is nothing. An
	// error says why the page there could not be made.
	File(address string) (data []byte, ok bool, err error)
	// Pages counts the pages.
	Pages() int
}

// files is a handbook with what was asked of it. A nil one has nothing.
type files struct {
	handbook Handbook

	mu    sync.Mutex
	asked map[string][]byte
}

func newFiles(h Handbook) *files { return &files{handbook: h, asked: map[string][]byte{}} }

// file returns the bytes at an address.
func (f *files) file(address string) (data []byte, ok bool, err error) {
	if f == nil {
		return nil, false, nil
	}
	f.mu.Lock()
	data, ok = f.asked[address]
	f.mu.Unlock()
	if ok {
		return data, true, nil
	}
	data, ok, err = f.make(address)
	if ok && err == nil {
		f.mu.Lock()
		f.asked[address] = data
		f.mu.Unlock()
	}
	return data, ok, err
}

// make has the handbook make what is at an address. A mistake in the program shows
// here as it does in a build.
func (f *files) make(address string) (data []byte, ok bool, err error) {
	defer func() {
		if p := recover(); p != nil {
			data, ok, err = nil, true, crashed(p)
		}
	}()
	return f.handbook.File(address)
}

// has reports whether there is something at an address, be it only an error.
func (f *files) has(address string) bool {
	_, ok, err := f.file(address)
	return ok || err != nil
}

// same reports whether another handbook holds what was asked of this one: then
// nobody who looks at it sees a difference. Of one that nobody looked at nothing
// is known.
func (f *files) same(other *files) bool {
	f.mu.Lock()
	asked := maps.Clone(f.asked) // whoever reads this handbook need not wait for the other
	f.mu.Unlock()
	for address, was := range asked {
		is, ok, err := other.file(address)
		if !ok || err != nil || !bytes.Equal(was, is) {
			return false
		}
	}
	return len(asked) > 0
}
