package shelf

import "golang.org/x/sys/unix"

// mounted reports whether something is mounted on a folder: another disk, or
// another folder of the same one, as for a container.
func mounted(path string) bool {
	var at unix.Statx_t
	err := unix.Statx(unix.AT_FDCWD, path, unix.AT_SYMLINK_NOFOLLOW, unix.STATX_BASIC_STATS, &at)
	return err == nil && at.Attributes_mask&at.Attributes&unix.STATX_ATTR_MOUNT_ROOT != 0
}
