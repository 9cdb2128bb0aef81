package shelf

import (
	"context"
	"errors"
	"path/filepath"
	"testing"

	"golang.org/x/sys/unix"
)

// TestSwapWhereFoldersCannotBeExchanged wants the new tree in the old one's
// place whatever a file system says that cannot exchange two folders, and
// nothing moved when it says that something else is wrong.
func TestSwapWhereFoldersCannotBeExchanged(t *testing.T) {
	for _, c := range []struct {
		said   unix.Errno
		stands string
	}{
		{unix.ENOSYS, "new"}, {unix.EINVAL, "new"}, {unix.EOPNOTSUPP, "new"},
		{unix.EACCES, "old"}, {unix.EBUSY, "old"}, {unix.EXDEV, "old"},
	} {
		t.Run(c.said.Error(), func(t *testing.T) {
			parent := t.TempDir()
			put(t, parent, map[string]string{"work/tree/a": "new", "old/a": "old"})
			_, err := exchanged(work(filepath.Join(parent, "work")), filepath.Join(parent, "old"), c.said)
			if failed := errors.Is(err, c.said); failed != (c.stands == "old") {
				t.Errorf("error %v", err)
			}
			same(t, tree(t, filepath.Join(parent, "old")), map[string]string{"a": c.stands})
		})
	}
}

// TestPublishMakesTheDiskSafe counts the calls that make the file system safe.
func TestPublishMakesTheDiskSafe(t *testing.T) {
	calls := 0
	syncfs = func(fd int) error {
		calls++
		return unix.Syncfs(fd)
	}
	defer func() { syncfs = unix.Syncfs }()
	dir := filepath.Join(t.TempDir(), "public")
	_, err := Replace(context.Background(), dir, students(pages))
	must(t, err)
	if calls != 1 {
		t.Errorf("%d calls for a new folder", calls)
	}
	_, err = Replace(context.Background(), dir, students(map[string][]byte{"index.html": []byte("other")}))
	must(t, err)
	if calls != 3 {
		t.Errorf("%d calls more for one that was there: want one for each of the two trees", calls-1)
	}
}
