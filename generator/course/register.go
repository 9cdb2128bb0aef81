package course

import (
	"path"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// What a studio keeps: its materials and its recipes, a file each. What is wrong
// with a file by itself is said here; whether the studio may work with what it
// says, the proof decides, when all of them are read.

// Spots are the places of a file's keys, by key, and at "" of the whole.
type Spots map[string]finding.Spot

// Of returns the place of a key, or of the whole where the key is not there.
func (s Spots) Of(key string) finding.Spot {
	if spot, there := s[key]; there {
		return spot
	}
	return s[""]
}

// readStock reads each file of a folder of the register, or takes it as it was read
// before: at a save few of them change. A course may do without.
func readStock[T any](l *loader, folder, example string, read func(id string, root source.Value) T) []T {
	var all []T
	for _, entry := range l.listing(folder) {
		file := path.Join(folder, entry.Name())
		id, ok := l.stockID(file)
		if !ok {
			continue
		}
		info, _ := entry.Info() // without it nothing is kept
		key, mayKeep := keyOf(file, info)
		kept := pageKey{key, l.tables}
		if value, there := l.reader.stock.Get(kept); mayKeep && there {
			all = append(all, value.(T))
			continue
		}
		root := l.yaml(file, example)
		if root.Absent() {
			continue
		}
		value := read(id, root)
		if all = append(all, value); mayKeep && l.open[len(l.open)-1].Found == nil {
			l.reader.stock.Put(kept, value)
		}
	}
	return all
}

// stockID returns the id that the name of a file of the register gives to what it
// holds, and reports a name that gives none.
func (l *loader) stockID(file string) (id string, ok bool) {
	id, ok = strings.CutSuffix(path.Base(file), ".yaml")
	switch {
	case !ok:
		l.stray(file, "Rename it so that it ends in .yaml, or move it out of the content folder.")
	case !source.IsID(id) || source.IsDevice(id):
		l.report(file, finding.IDForm, "`"+id+"` cannot be an id", "Rename the file: small letters a to z, digits, and single hyphens between them, such as `river-ball-clay.yaml`.")
		ok = false
	case id == "index":
		l.report(file, finding.SharedAddress, "`index` is the address of the list of them all", "Rename the file after what it is of.")
		ok = false
	}
	return id, ok
}
