package shelf

import "os"

// syncFolder asks the disk to remember the names in a folder. Systems that
// cannot do so for folders (Windows) say no, and then nothing more can be done.
func syncFolder(dir string) {
	d, err := os.Open(dir)
	if err != nil {
		return
	}
	defer d.Close()
	_ = d.Sync()
}
