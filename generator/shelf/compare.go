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
	put     []string // to be written, in this order: shared files, pages, the rest
	same    []string // stand in the folder already, byte for byte
	drop    []string // to be removed, sorted
	next    *marker
	changes Changes
}

// compare works out the plan for an edition. It refuses a folder in which
// somebody has changed a file by hand.
func compare(ctx context.Context, t *target, names []string, e Edition) (*plan, error) {
	p := &plan{next: &marker{copy: e.Copy, files: map[string]listed{}}}
	sums := make([]digest, len(names))
	err := each(ctx, len(names), func(i int) error {
		sums[i] = sha256.Sum256(e.Files[names[i]])
		return nil
	})
	if err != nil {
		return p, err
	}
	for i, name := range names {
		p.next.files[name] = listed{digests: []digest{sums[i]}}
	}
	if err := p.sortOld(ctx, t, e); err != nil {
		return p, err
	}
	p.sortNew(t, names, e)
	p.idle = t.marker != nil && t.marker.files != nil && len(p.put)+len(p.drop) == 0 && bytes.Equal(t.marker.text(), p.next.text())
	return p, nil
}

// sortOld decides for each file of the folder whether it stays.
func (p *plan) sortOld(ctx context.Context, t *target, e Edition) error {
	old := slices.Sorted(maps.Keys(t.files))
	states := make([]state, len(old))
	err := each(ctx, len(old), func(i int) (err error) {
		data, wanted := e.Files[old[i]]
		states[i], err = stateOf(filepath.Join(t.path, filepath.FromSlash(old[i])), data, wanted, t.marker.files[old[i]].digests)
		return err
	})
	if err != nil {
		return err
	}
	var edited []string
	renewed := p.renews(t.marker)
	for i, name := range old {
		_, wanted := e.Files[name]
		was := t.marker.files[name]
		switch {
		case states[i] == byHand:
			edited = append(edited, name)
		case states[i] == asWanted && t.files[name].Mode().Perm() == 0o644:
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
func (p *plan) sortNew(t *target, names []string, e Edition) {
	for _, name := range names {
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
	asWanted               // as it shall be
	byHand                 // neither
)

// stateOf compares a file with what it shall hold and what the marker says that
// it holds.
func stateOf(name string, wanted []byte, known bool, was []digest) (state, error) {
	data, err := os.ReadFile(name)
	switch {
	case err != nil:
		return 0, err
	case known && bytes.Equal(data, wanted):
		return asWanted, nil
	case slices.Contains(was, sha256.Sum256(data)):
		return asWritten, nil
	}
	return byHand, nil
}
