package shelf

import "os"

// twoRenames puts fresh where old is by moving the old tree aside first. It
// serves where no single step can exchange two folders: between its two steps
// nothing stands at old, for as long as a rename takes. When the second step
// fails the first is taken back.
func twoRenames(fresh, old string) (spent string, err error) {
	aside := fresh + "-old"
	if err := os.Rename(old, aside); err != nil {
		return "", err
	}
	if err := os.Rename(fresh, old); err != nil {
		if back := os.Rename(aside, old); back != nil {
			return "", &stranded{aside, plain(back)}
		}
		return "", err
	}
	return aside, nil
}

// stranded is the error for an old tree that was moved aside and could not be
// moved back.
type stranded struct {
	aside string
	error
}

// settle asks the disk to remember the names in a folder. Systems that cannot
// do so for folders (Windows) say no, and then nothing more can be done.
func settle(dir string) {
	d, err := os.Open(dir)
	if err != nil {
		return
	}
	defer d.Close()
	_ = d.Sync()
}
