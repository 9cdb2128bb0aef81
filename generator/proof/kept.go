package proof

import "sync"

// cache keeps what was worked out for as long as it is asked for: what a whole
// reading did not use is forgotten after it. Goroutines share it.
type cache[K comparable, V any] struct {
	mu       sync.Mutex
	old, now map[K]V
}

// get returns what is kept for a key.
func (c *cache[K, V]) get(key K) (V, bool) {
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

// put keeps something.
func (c *cache[K, V]) put(key K, v V) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.now[key] = v
}

// begin begins a reading.
func (c *cache[K, V]) begin() {
	c.old, c.now = c.now, make(map[K]V, len(c.now))
}
