// Package shelf puts named bytes into a folder on disk, all or nothing. It
// exists because a half-written handbook on a live web server is worse than an
// old one, and because a mistyped folder must not cost anybody their files.
package shelf

// Replace writes files, by slash-separated address, so that dir holds exactly
// them and the marker of a publish afterwards.
//
//	func Replace(dir string, files map[string][]byte) error
