// Package preview serves a handbook to its instructor's own browser while it
// is being written: from memory, to this machine only, new after each save. It
// exists so that a mistake is seen a moment after it is made, and never ends
// the server.
package preview
