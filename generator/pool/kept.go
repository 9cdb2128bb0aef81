package pool

import "sync"

// Kept keeps results for as long as they are asked for: what a whole round of work
// did not use is forgotten after the next has begun. Pieces of work share it.
type Kept[K comparable, V any] struct {
	mu       sync.Mutex
	old, now map[K]V
}

// Begin begins a round. No piece of work may be under way.
func (c *Kept[K, V]) Begin() { c.old, c.now = c.now, make(map[K]V, len(c.now)) }

// Get returns what is kept for a key.
func (c *Kept[K, V]) Get(key K) (V, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	v, ok := c.now[key]
	if !ok {
		if v, ok = c.old[key]; ok {
			c.now[key] = v
		}
	}
	return v, ok
}

// Put keeps something. It needs a round to have begun.
func (c *Kept[K, V]) Put(key K, v V) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now[key] = v
}
