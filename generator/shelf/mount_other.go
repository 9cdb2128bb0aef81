//go:build !linux

package shelf

// mounted reports false: the system is asked by trying to move the folder.
func mounted(string) bool { return false }
