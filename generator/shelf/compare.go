package shelf

import (
	"bytes"
	"context"
	"crypto/sha256"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// plan is what has to be done to a folder.
type plan struct {
	idle    bool     // nothing
	put     []string // to be written, in this order: shared files, pages, the rest, the last one
	same    []string // stand in the folder already, byte for byte
	drop    []string // to be removed, sorted
	next    *marker
	changes Changes
}

// compare makes every file of an edition, works out the plan for it, and writes
// what has to be put into the folder into a tree of its own. It refuses a folder in
// which somebody has changed a file by hand.
func (m *maker) compare(ctx context.Context, t *target, e Edition) (*plan, error) {
	p := &plan{next: &marker{copy: e.Copy, files: map[string]listed{}}}
	made, err := m.files(ctx, t, e)
	if err != nil {
		return p, err
	}
	states := map[string]state{}
	for i, name := range e.Names {
		p.next.files[name] = listed{digests: []digest{made[i].Sum}}
		states[name] = made[i].old
	}
	if err := p.sortOld(ctx, t, e, states); err != nil {
		return p, err
	}
	p.sortNew(t, e)
	p.idle = t.marker != nil && t.marker.files != nil && len(p.put)+len(p.drop) == 0 && bytes.Equal(t.marker.text(), p.next.text())
	return p, nil
}

// sortOld decides for each file of the folder whether it stays. states has those of
// the files that the edition has too.
func (p *plan) sortOld(ctx context.Context, t *target, e Edition, states map[string]state) error {
	old := slices.Sorted(maps.Keys(t.files))
	gone := slices.DeleteFunc(slices.Clone(old), func(name string) bool { _, wanted := states[name]; return wanted })
	of := make([]state, len(gone))
	err := each(ctx, len(gone), func(i int) (err error) {
		of[i], err = t.state(gone[i], nil)
		return err
	})
	if err != nil {
		return err
	}
	var edited []string
	renewed := p.renews(t.marker)
	for _, name := range old {
		stands, wanted := states[name]
		if n, found := slices.BinarySearch(gone, name); found {
			stands = of[n]
		}
		was := t.marker.files[name]
		switch {
		case stands == byHand:
			edited = append(edited, name)
		case stands == asWanted:
			p.same = append(p.same, name)
		case wanted:
		case e.Shared != nil && e.Shared(name) && (!was.before || !renewed):
			p.same = append(p.same, name)
			p.changes.Kept = append(p.changes.Kept, name)
			p.next.files[name] = listed{was.digests, true}
		default:
			p.drop = append(p.drop, name)
		}
	}
	if len(edited) > 0 {
		return refuse("somebody changed files in %q after slipbook wrote them, and nothing was published, which would undo the change: %s; make the change in the lessons, then remove these files and publish again", t.path, quoted(edited))
	}
	return nil
}

// renews reports whether an edition differs from the one that a marker lists:
// publishing the same once more lets nothing grow old.
func (p *plan) renews(m *marker) bool {
	if m == nil {
		return true
	}
	now := 0
	for name, was := range m.files {
		if was.before {
			continue
		}
		now++
		if !slices.Equal(was.digests, p.next.files[name].digests) {
			return true
		}
	}
	return now != len(p.next.files)
}

// sortNew decides for each file of the edition whether it is written, and
// counts what changes for readers.
func (p *plan) sortNew(t *target, e Edition) {
	for _, name := range e.Names {
		if _, found := slices.BinarySearch(p.same, name); found {
			p.changes.Same++
			continue
		}
		p.put = append(p.put, name)
		if t.files[name] != nil {
			p.changes.Changed = append(p.changes.Changed, name)
		} else {
			p.changes.New = append(p.changes.New, name)
		}
	}
	for _, name := range p.drop {
		if !t.marker.files[name].before {
			p.changes.Gone = append(p.changes.Gone, name)
		}
	}
	turn := func(name string) int {
		switch {
		case name == e.Last:
			return 3
		case e.Shared != nil && e.Shared(name):
			return 0
		case strings.HasSuffix(name, ".html"):
			return 1
		}
		return 2
	}
	slices.SortStableFunc(p.put, func(a, b string) int { return turn(a) - turn(b) })
}

// state is how a file in the folder stands to what it was and shall be.
type state int

const (
	asWritten state = iota // as slipbook wrote it, and to be replaced or removed
	asWanted               // as it shall be, readable by all
	byHand                 // neither
)

// state compares a file of the folder with what it shall hold, nil for nothing, and
// what the marker says that it holds.
func (t *target) state(name string, wanted *digest) (state, error) {
	s, err := stateOf(filepath.Join(t.path, filepath.FromSlash(name)), wanted, t.marker.files[name].digests)
	if s == asWanted && t.files[name].Mode().Perm() != 0o644 {
		s = asWritten
	}
	return s, err
}

func stateOf(file string, wanted *digest, was []digest) (state, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return 0, err
	}
	sum := digest(sha256.Sum256(data))
	switch {
	case wanted != nil && sum == *wanted:
		return asWanted, nil
	case slices.Contains(was, sum):
		return asWritten, nil
	}
	return byHand, nil
}
