package shelf

import (
	"context"
	"crypto/sha256"
	"path/filepath"
	"slices"
	"sync"
)

// maker makes the files of an edition, one after the other on each worker, and
// writes those that the folder does not hold yet into the tree of a work folder, so
// that none stays in memory. The work folder is made for the first of them: where
// nothing changes, nothing is touched.
type maker struct {
	parent string // where the work folder is made
	path   string // for which folder
	once   sync.Once
	made   work // empty before
	err    error
}

// work returns the work folder, in whose tree stand the folders that an edition
// needs.
func (m *maker) work(e Edition) (work, error) {
	m.once.Do(func() {
		if m.made, m.err = newWork(m.parent, m.path); m.err != nil {
			return
		}
		if err := makeFolders(m.made.tree(), e.Names); err != nil {
			m.err = unwritten(m.path, err)
		}
	})
	return m.made, m.err
}

// remove removes the work folder if it was made.
func (m *maker) remove() {
	if m.made != "" {
		m.made.remove()
	}
}

// madeFile is a file of an edition that was made.
type madeFile struct {
	Made
	old state // of the file of this name in the folder, if there is one
}

// files makes the files of an edition, in the order of their names, and the last one
// when the others are made.
func (m *maker) files(ctx context.Context, t *target, e Edition) ([]madeFile, error) {
	all := make([]madeFile, len(e.Names))
	err := each(ctx, len(e.Names), func(i int) error {
		if e.Names[i] == e.Last {
			return nil
		}
		data, err := e.File(e.Names[i])
		if err != nil {
			return err
		}
		all[i], err = m.file(t, e, e.Names[i], data)
		return err
	})
	if err != nil || e.Last == "" {
		return all, err
	}
	last, _ := slices.BinarySearch(e.Names, e.Last)
	var others []Made
	for i := range all {
		if i != last {
			others = append(others, all[i].Made)
		}
	}
	data, err := e.LastFile(others)
	if err != nil {
		return nil, err
	}
	all[last], err = m.file(t, e, e.Last, data)
	return all, err
}

// file writes a file that was made into the tree, unless the folder holds it.
func (m *maker) file(t *target, e Edition, name string, data []byte) (f madeFile, err error) {
	f.Made = Made{name, len(data), sha256.Sum256(data)}
	if t.files[name] != nil {
		f.old, err = t.state(name, (*digest)(&f.Sum))
		if err != nil || f.old == asWanted {
			return f, err
		}
	}
	w, err := m.work(e)
	if err != nil {
		return f, err
	}
	if err := write(filepath.Join(w.tree(), filepath.FromSlash(name)), data); err != nil {
		return f, unwritten(m.path, err)
	}
	return f, nil
}
