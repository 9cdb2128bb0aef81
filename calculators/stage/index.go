package stage

// index finds the pots that a search has reached: a hash table with linear
// probing, at most half full. Each place holds the number of a pot in
// search.reached, counted from 1, or 0 while it is free. The length is a power
// of two. Go's own map does the same with more than a pot needs, and a part of
// the runtime that nothing else in the reactor uses.
type index []int32

// spread is 2⁶⁴ over the golden ratio: multiplying by it moves what tells two
// numbers apart into the upper bits.
const spread = 0x9E37_79B9_7F4A_7C15

// hash is a number that is the same for equal pots, and seldom for others.
func (p *pot) hash() int {
	h := (uint64(p.loose)<<32 | uint64(p.open)) * spread
	h ^= uint64(p.done)<<32 | uint64(p.state)<<24 | uint64(p.part)<<16 | uint64(p.pending)<<8 | uint64(p.heat) + uint64(p.skin)<<7
	if p.damp {
		h = ^h
	}
	return int(h * spread >> 33)
}

// place is where a pot stands in the index, or would stand.
func (s *search) place(p *pot) int {
	last := len(s.index) - 1
	for i := p.hash() & last; ; i = (i + 1) & last {
		if n := s.index[i]; n == 0 || s.reached[n-1].pot == *p {
			return i
		}
	}
}

// grow makes the index twice as long.
func (s *search) grow() {
	s.index = make(index, 2*len(s.index))
	for n := range s.reached {
		s.index[s.place(&s.reached[n].pot)] = int32(n + 1)
	}
}
