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

// register reads each file of a folder of the register. A course may do without.
func (l *loader) register(folder, example string, read func(id string, root source.Value)) {
	for _, name := range l.listing(folder).names() {
		file := path.Join(folder, name)
		id, ok := strings.CutSuffix(name, ".yaml")
		switch {
		case !ok:
			l.stray(file, "Rename it so that it ends in .yaml, or move it out of the content folder.")
			continue
		case !source.IsID(id) || source.IsDevice(id):
			l.report(file, finding.IDForm, "`"+id+"` cannot be an id", "Rename the file: small letters a to z, digits, and single hyphens between them, such as `river-ball-clay.yaml`.")
			continue
		case id == "index":
			l.report(file, finding.SharedAddress, "`index` is the address of the list of them all", "Rename the file after what it is of.")
			continue
		}
		if root := l.yaml(file, example); !root.Absent() {
			read(id, root)
		}
	}
}
