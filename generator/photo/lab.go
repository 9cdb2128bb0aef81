package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"runtime"
	"slices"
	"sync"

	"slipbook/generator/keep"
)

// edition is of how pictures are made. Whoever changes the bytes of what is made
// counts it up, so that nothing made the old way is taken.
const edition = 1

// Key tells sources apart, and ways of making: the digest of a picture's bytes, of
// the edition, and of the version of Go, whose library encodes.
type Key [sha256.Size]byte

// KeyOf returns the key of a picture.
func KeyOf(data []byte) Key {
	sum := sha256.Sum256(data)
	return sha256.Sum256(fmt.Appendf(nil, "%d %v %d %s %x", edition, widths, quality, runtime.Version(), sum))
}

// Bounds of what is kept in the folder and in memory.
const (
	mostKept   = 1 << 30   // bytes in the folder: some thousand photos
	mostAtOnce = 192 << 20 // bytes of pictures that are read and made at once; one that takes more is made alone
	mostRecent = 8         // sets that were made or fetched a moment ago
)

// Lab makes pictures and keeps what it made: in memory what each picture is made
// into, in a folder the files themselves. Nobody needs the folder; what is missing
// there, or damaged, is made again. The zero Lab is ready and has no folder.
// Goroutines may share one.
type Lab struct {
	Folder string // "" for none

	budget budget
	mutex  sync.Mutex
	known  map[Key]*Made // without files
	recent []recent
	slow   sync.Mutex // held while a picture is made once more
	stored bool       // something was put into the folder
}

type recent struct {
	key  Key
	made *Made
}

// Reserve waits until some bytes of memory may be used, and returns what gives them
// back. What makes a picture asks for its bytes, read or about to be, and Head.Memory
// in one; whoever holds some asks for no more.
func (l *Lab) Reserve(size int64) (release func()) { return l.budget.reserve(size) }

// Known returns what is made of a picture, if it was made before.
func (l *Lab) Known(key Key) (*Made, bool) {
	l.mutex.Lock()
	m, ok := l.known[key]
	l.mutex.Unlock()
	if ok {
		return m, true
	}
	if m, ok = l.fetch(key); ok {
		l.note(key, m)
	}
	return m, ok
}

// Make makes the files of a picture and keeps them.
func (l *Lab) Make(h Head, data []byte) (*Made, error) {
	m, err := Make(h, data)
	if err != nil {
		return nil, err
	}
	key := KeyOf(data)
	if l.Folder != "" && keep.Put(l.Folder, name(key), m.pack()) == nil {
		l.mutex.Lock()
		l.stored = true
		l.mutex.Unlock()
	}
	l.note(key, m)
	return m, nil
}

// Tidy removes from the folder what was not used for longest, where it is too full.
func (l *Lab) Tidy() {
	l.mutex.Lock()
	stored := l.stored
	l.stored = false
	l.mutex.Unlock()
	if stored {
		keep.Thin(l.Folder, func(_ int, size int64) bool { return size <= mostKept })
	}
}

// File returns the bytes of the n-th version of a picture. Where they are kept no
// longer they are made again of what read returns; an error is read's, or says that
// the picture is another by now.
func (l *Lab) File(key Key, n int, read func() ([]byte, error)) ([]byte, error) {
	if m, ok := l.files(key); ok {
		return m.files[n], nil
	}
	l.slow.Lock()
	defer l.slow.Unlock()
	if m, ok := l.files(key); ok {
		return m.files[n], nil
	}
	data, err := read()
	if err != nil {
		return nil, err
	}
	if KeyOf(data) != key {
		return nil, errors.New("the picture was changed while the handbook was made; do it again")
	}
	h, err := Look(data)
	if err != nil {
		return nil, err
	}
	defer l.Reserve(int64(len(data)) + h.Memory)()
	m, err := l.Make(h, data)
	if err != nil {
		return nil, err
	}
	return m.files[n], nil
}

// files returns what was made of a picture with its files, from memory or the folder.
func (l *Lab) files(key Key) (*Made, bool) {
	l.mutex.Lock()
	at := slices.IndexFunc(l.recent, func(r recent) bool { return r.key == key })
	if at >= 0 {
		m := l.recent[at].made
		l.mutex.Unlock()
		return m, true
	}
	l.mutex.Unlock()
	m, ok := l.fetch(key)
	if ok {
		l.note(key, m)
	}
	return m, ok
}

// note remembers what was made: for good without its files, for a moment with them.
func (l *Lab) note(key Key, m *Made) {
	bare := *m
	bare.files = nil
	l.mutex.Lock()
	defer l.mutex.Unlock()
	if l.known == nil {
		l.known = map[Key]*Made{}
	}
	l.known[key] = &bare
	l.recent = append(l.recent, recent{key, m})
	l.recent = slices.Delete(l.recent, 0, max(0, len(l.recent)-mostRecent))
}

// fetch reads what is kept of a picture in the folder.
func (l *Lab) fetch(key Key) (*Made, bool) {
	if l.Folder == "" {
		return nil, false
	}
	entry, ok := keep.Get(l.Folder, name(key))
	if !ok {
		return nil, false
	}
	return unpack(entry)
}

func name(key Key) string { return hex.EncodeToString(key[:]) }

// pack writes what was made as one file: a line that says what follows, the files.
func (m *Made) pack() []byte {
	head, _ := json.Marshal(m) // numbers and words alone
	return bytes.Join([][]byte{append(head, '\n'), bytes.Join(m.files, nil)}, nil)
}

// unpack is the other way round.
func unpack(entry []byte) (*Made, bool) {
	head, rest, ok := bytes.Cut(entry, []byte("\n"))
	m := &Made{}
	if !ok || json.Unmarshal(head, m) != nil {
		return nil, false
	}
	for _, v := range m.Versions {
		if v.Size > len(rest) {
			return nil, false
		}
		m.files = append(m.files, rest[:v.Size:v.Size])
		rest = rest[v.Size:]
	}
	return m, len(m.files) > 0 && len(rest) == 0
}
