package photo

import "sync"

// budget is memory that is shared by those who work at once.
type budget struct {
	mutex sync.Mutex
	back  sync.Cond // somebody gave some back
	used  int64
}

// reserve waits until size bytes are free, or all are, and returns what gives them
// back: what is larger than the whole budget goes alone.
func (b *budget) reserve(size int64) (release func()) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	b.back.L = &b.mutex
	for b.used > 0 && b.used+size > mostAtOnce {
		b.back.Wait()
	}
	b.used += size
	return func() {
		b.mutex.Lock()
		defer b.mutex.Unlock()
		b.used -= size
		b.back.Broadcast()
	}
}
