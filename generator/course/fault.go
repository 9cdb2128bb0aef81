package course

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/source"
)

// Fault is something that goes wrong, as a student sees it: not what caused it, of
// which the lessons tell.
type Fault struct {
	ID      string // its address within the page of what goes wrong
	Sees    string // what one sees, in a few words
	When    string // one of FaultTimes: when one sees it first
	Picture string // content path of a drawing of it; empty where that is not there
	Alt     string // what the drawing shows, for whoever cannot see it
	Looks   string // how to tell it from its neighbours
	Else    []string
	Spot    finding.Spot // of its id
}

// FaultTimes are the times at which one sees what went wrong, in the order of the
// work: while it is wet or drying, after the bisque, after the glaze firing.
var FaultTimes = []string{"wet", "bisque", "glaze"}

// faults reads the list of what students see go wrong, once the pictures are known.
// A course may do without.
func (l *loader) faults() {
	if !source.Exists(l.fsys, faultsFile) {
		return
	}
	ids, seen := unique{}, unique{}
	var likes [][]source.Value
	root := l.yaml(faultsFile, "faults:")
	for _, item := range root.Fields("faults").Need("faults", "faults:").List() {
		f := item.Fields("id", "sees", "when", "picture", "alt", "looks", "else")
		id := f.Need("id", "id: crawling")
		fault := l.fault(id, f)
		seen.addWord(f.Get("sees"), fault.Sees)
		if ids.add(id, fault.ID) {
			l.course.Faults = append(l.course.Faults, fault)
			likes = append(likes, f.Get("else").List())
		}
	}
	for n, fault := range l.course.Faults {
		fault.Else = readOthers("else", "fault", fault.ID, likes[n], ids)
	}
}

// fault reads one entry.
func (l *loader) fault(id source.Value, f source.Fields) *Fault {
	return &Fault{
		ID:      id.ID(),
		Sees:    f.Need("sees", "sees: Bare round spots").Text(),
		When:    f.Need("when", "when: glaze").Choice(FaultTimes...),
		Picture: l.shown(f.Need("picture", "picture: pictures/fault-crawling.svg")),
		Alt:     f.Need("alt", "alt: The glaze has drawn back into thick edges round bare clay.").Text(),
		Looks:   f.Need("looks", "looks: The edges of the glaze are thick and round.").Text(),
		Spot:    id.Spot(),
	}
}

// shown returns the content path of a picture that is there. Of one that was read and
// is no picture the finding stands at its own file.
func (l *loader) shown(v source.Value) string {
	file := v.Text()
	if _, there := l.course.Pictures[file]; there || file == "" {
		return file
	}
	if !strings.HasPrefix(file, picturesFolder+"/") || !source.Exists(l.fsys, file) {
		v.Report(finding.PictureFile, fmt.Sprintf("there is no picture %s", file), source.Meant(file, slices.Sorted(maps.Keys(l.course.Pictures)))+"Write the path of a file of the pictures folder, such as pictures/fault-crawling.svg.")
	}
	return ""
}

// FindFault finds a fault by its id.
func (c *Course) FindFault(id string) (*Fault, bool) {
	for _, f := range c.Faults {
		if f.ID == id {
			return f, true
		}
	}
	return nil, false
}
