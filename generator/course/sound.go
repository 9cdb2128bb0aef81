package course

import (
	"crypto/sha256"
	"slices"
	"sync"

	"slipbook/generator/source"
)

// sound keeps what was found to be sound, by digest: a course is read again at
// every save, and its pictures and tables hardly ever change.
var sound = cache{kept: map[[sha256.Size]byte]*Picture{}}

// mostSound is when the cache is emptied: drawings that were changed a thousand
// times while they are shown must not fill the memory.
const mostSound = 4000

// cache is safe for several goroutines.
type cache struct {
	mutex sync.Mutex
	kept  map[[sha256.Size]byte]*Picture // nil where only the soundness counts
}

func (c *cache) keep(digest [sha256.Size]byte, p *Picture) {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	if len(c.kept) >= mostSound {
		clear(c.kept)
	}
	c.kept[digest] = p
}

func (c *cache) has(digest [sha256.Size]byte) bool {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	_, there := c.kept[digest]
	return there
}

// drawing returns a drawing that was read before.
func (c *cache) drawing(digest [sha256.Size]byte) (*Picture, bool) {
	c.mutex.Lock()
	defer c.mutex.Unlock()
	p := c.kept[digest]
	return p, p != nil
}

// digest returns the digest of some of the files read.
func (l *loader) digest(paths ...string) [sha256.Size]byte {
	h := sha256.New()
	for _, path := range paths {
		if i := slices.IndexFunc(l.open, func(t *source.Text) bool { return t.Path == path }); i >= 0 {
			h.Write(l.open[i].Bytes)
		}
		h.Write([]byte{0})
	}
	return [sha256.Size]byte(h.Sum(nil))
}
