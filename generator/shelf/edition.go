package shelf

import "crypto/sha256"

// Edition is what a folder shall hold.
type Edition struct {
	Names []string // of its files: clean relative paths with slashes
	// File makes the file of a name, the same bytes whenever it is asked. Several
	// are asked for at once, and none is kept: a large handbook need not be in
	// memory as a whole.
	File func(name string) ([]byte, error)
	Copy Copy // whom it is for
	// Shared reports whether a file may be asked for by pages of the edition
	// before, and never changes under its name. It is written before the pages
	// and stays for one edition more. nil stands for none.
	Shared func(name string) bool
	// Last is the name of a file that is made when all others are, from the list of
	// them, sorted by name, and that comes last into a folder that is updated file by
	// file; it is none of Names. Without a name there is no such file.
	Last     string
	LastFile func(all []Made) ([]byte, error)
}

// Made is a file of an edition that was made.
type Made struct {
	Name string
	Size int // bytes
	Sum  [sha256.Size]byte
}

// Changes are what a publish did to a folder. All lists are sorted.
type Changes struct {
	New, Changed, Gone []string // addresses of files
	Same               int      // how many files did not change; they keep their times
	Kept               []string // shared files of the edition before, which stay for one edition more
	InPlace            bool     // the folder could not be moved: it was updated file by file
	Aside              string   // where the old folder stands whole, because its marker listed nothing
}
