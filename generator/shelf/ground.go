package shelf

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Refusal is the error for a folder that must not be replaced: nothing went
// wrong, another folder has to be chosen.
type Refusal struct{ words string }

// Error gives the words for a person.
func (r *Refusal) Error() string { return r.words }

func refuse(format string, args ...any) error {
	return &Refusal{fmt.Sprintf(format, args...)}
}

// Check says whether Replace would accept dir, without touching anything. It
// lets a command refuse before it does the work.
func Check(dir string) error {
	_, err := survey(dir)
	return err
}

// Apart refuses dir when it is the folder other, lies in it, or holds it: a
// handbook written into its own lessons would be read as lessons the next
// time, and lessons inside a published folder would be lost with it. other
// must exist; when it does not, nothing can be lost.
func Apart(dir, other string) error {
	path, err := resolve(dir)
	if err != nil {
		return err
	}
	source, err := filepath.EvalSymlinks(other)
	if err != nil {
		return nil
	}
	if source, err = filepath.Abs(source); err != nil {
		return err
	}
	if within(source, path) || within(path, source) {
		return refuse("the folder %q and the folder of the lessons, %q, lie one in the other, and publishing would cost you one of them; choose a folder elsewhere", dir, other)
	}
	return nil
}

// ground is the place where a tree shall stand.
type ground struct {
	path   string      // absolute, links resolved
	absent bool        // nothing is there yet
	kept   []string    // names of its dot files and dot folders, sorted, marker excluded
	mode   fs.FileMode // for the new folder
}

// survey looks at dir and decides whether it may be replaced.
func survey(dir string) (ground, error) {
	path, err := resolve(dir)
	if err != nil {
		return ground{}, err
	}
	if err := spare(dir, path); err != nil {
		return ground{}, err
	}
	info, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return ground{path: path, absent: true, mode: 0o755}, nil
	}
	if err != nil {
		return ground{}, fmt.Errorf("the folder %q could not be looked at: %w", dir, plain(err))
	}
	if !info.IsDir() {
		return ground{}, refuse("%q is not a folder, and it was left alone; choose another name for the folder of the handbook", dir)
	}
	entries, err := os.ReadDir(path)
	if err != nil {
		return ground{}, fmt.Errorf("the folder %q could not be read: %w", dir, plain(err))
	}
	const asItWas = fs.ModePerm | fs.ModeSetgid | fs.ModeSticky
	g := ground{path: path, mode: info.Mode() & asItWas}
	ours := marked(path)
	for _, e := range entries {
		switch {
		case e.Name() == Marker && ours:
		case strings.HasPrefix(e.Name(), "."):
			g.kept = append(g.kept, e.Name())
		case !ours:
			return ground{}, refuse("the folder %q holds files that slipbook did not write, such as %q, and it was left alone; choose a new or an empty folder, or move those files away first", dir, e.Name())
		}
	}
	return g, nil
}

// resolve gives the absolute path of dir with links followed. The part of it
// that is absent stays as written.
func resolve(dir string) (string, error) {
	if dir == "" {
		return "", refuse("the folder for the handbook has no name; choose one, such as \"public\"")
	}
	path, err := filepath.Abs(dir)
	if err != nil {
		return "", fmt.Errorf("the folder %q could not be found: %w", dir, err)
	}
	if info, err := os.Lstat(path); err == nil && info.Mode()&fs.ModeSymlink != 0 {
		target, err := filepath.EvalSymlinks(path)
		if err != nil {
			return "", refuse("%q is a link to something that is not there; remove the link or make the folder that it means", dir)
		}
		return target, nil
	}
	existing, rest := path, ""
	for {
		if real, err := filepath.EvalSymlinks(existing); err == nil {
			return filepath.Join(real, rest), nil
		}
		above := filepath.Dir(existing)
		if above == existing {
			return path, nil
		}
		existing, rest = above, filepath.Join(filepath.Base(existing), rest)
	}
}

// spare refuses the places that nobody can mean, even when they look empty.
func spare(dir, path string) error {
	if path == filepath.Dir(path) {
		return refuse("%q is the root of the whole disk and cannot hold the handbook; choose a folder inside it", dir)
	}
	if home, err := os.UserHomeDir(); err == nil && within(home, path) {
		return refuse("%q holds your home folder and cannot be replaced by the handbook; choose a folder inside it", dir)
	}
	if here, err := os.Getwd(); err == nil && within(here, path) {
		return refuse("%q holds the folder you are working in and cannot be replaced by the handbook; choose a folder inside it, or start from elsewhere", dir)
	}
	return nil
}

// within says whether path is folder or lies below it. Folders are compared
// as the file system knows them, so that links and the case of letters do not
// hide a match.
func within(path, folder string) bool {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	want, err := os.Stat(folder)
	for at := path; ; at = filepath.Dir(at) {
		if at == folder {
			return true
		}
		if info, failed := os.Stat(at); err == nil && failed == nil && os.SameFile(info, want) {
			return true
		}
		if at == filepath.Dir(at) {
			return false
		}
	}
}
