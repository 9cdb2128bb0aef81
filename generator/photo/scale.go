package photo

// plane is one channel of a picture: of its light, of one of its colours, or of how
// much it covers.
type plane struct {
	pix          []byte
	stride, step int // from a row to the next, from a point to the next
	w, h         int
}

func newPlane(w, h int) plane { return plane{make([]byte, w*h), w, 1, w, h} }

// ratio is how many points of a source one point takes: num/den.
type ratio struct{ num, den int }

// A photo is made smaller by averaging: each point is the mean of the area that it
// stands for, parts of points counted as parts. Of a photo with three times the
// points each way or more nothing sharper can be seen (CatmullRom of x/image/draw
// takes four times as long, and its sums differ between processors); whole numbers
// alone make the bytes the same everywhere.

// share is which points of a row one new point is made of.
type share struct {
	from, to    int // the first, and the one after the last
	first, last uint32
	inner       uint32 // weight of those between
	sum         uint64
}

// shares divides a source of some length among n new points, from its end where it
// is to be mirrored.
func shares(length, n int, r ratio, mirrored bool) []share {
	all := make([]share, n)
	whole := length * r.den
	for i := range all {
		a, b := i*r.num, (i+1)*r.num
		if a, b = min(a, whole-1), min(b, whole); mirrored {
			a, b = whole-b, whole-a
		}
		s := share{from: a / r.den, to: (b + r.den - 1) / r.den, inner: uint32(r.den), sum: uint64(b - a)}
		s.first = uint32(min(b, (s.from+1)*r.den) - a)
		s.last = uint32(b - max(a, (s.to-1)*r.den))
		all[i] = s
	}
	return all
}

// weight is how much of a point belongs to a share.
func (s share) weight(at int) uint32 {
	switch {
	case at == s.from:
		return s.first
	case at == s.to-1:
		return s.last
	}
	return s.inner
}

// scaled returns a plane made smaller to w by h points, rows and columns taken by
// their ratios and mirrored where asked for.
func (p plane) scaled(w, h int, x, y ratio, t turn) plane {
	out := newPlane(w, h)
	across, down := shares(p.w, w, x, t.mirrored), shares(p.h, h, y, t.upsideDown)
	row, sums := make([]uint32, w), make([]uint64, w)
	for i, d := range down {
		clear(sums)
		for at := d.from; at < d.to; at++ {
			p.across(row, across, at)
			weight := uint64(d.weight(at))
			for n, sum := range row {
				sums[n] += weight * uint64(sum)
			}
		}
		line := out.pix[i*w : (i+1)*w]
		for n, sum := range sums {
			all := across[n].sum * d.sum
			line[n] = byte((sum + all/2) / all)
		}
	}
	return out
}

// across adds up a row of the plane by shares.
func (p plane) across(row []uint32, across []share, at int) {
	line := p.pix[at*p.stride:]
	for n := range row {
		s := &across[n]
		i, end := s.from*p.step, (s.to-1)*p.step
		sum := s.first * uint32(line[i])
		if i < end {
			var inner uint32
			for i += p.step; i < end; i += p.step {
				inner += uint32(line[i])
			}
			sum += s.inner*inner + s.last*uint32(line[end])
		}
		row[n] = sum
	}
}

// turn is how a photo that was taken with the phone on its side is put upright:
// mirrored each way, then its rows made columns.
type turn struct{ mirrored, upsideDown, onItsSide bool }

// turns are what the eight values of the orientation tag ask for.
var turns = [9]turn{1: {}, 2: {true, false, false}, 3: {true, true, false}, 4: {false, true, false},
	5: {false, false, true}, 6: {false, true, true}, 7: {true, true, true}, 8: {true, false, true}}

// transposed makes the rows of a plane its columns.
func (p plane) transposed() plane {
	out := newPlane(p.h, p.w)
	for y := range p.h {
		line := p.pix[y*p.w : (y+1)*p.w]
		for x, v := range line {
			out.pix[x*p.h+y] = v
		}
	}
	return out
}
