package preview

import (
	"context"
	"fmt"
	"hash/maphash"
	"io/fs"
	"path/filepath"
	"time"
)

const look = time.Second / 3

// poll sends on saves at once, and then when names, sizes or times below folder
// have changed, until ctx ends. It works for any folder, even one that comes and goes.
func poll(ctx context.Context, folder string, saves chan<- struct{}) {
	seed := maphash.MakeSeed()
	seen := fingerprint(seed, folder)
	signal(saves)
	tick := time.NewTicker(look)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		if now := fingerprint(seed, folder); now != seen {
			seen = now
			signal(saves)
		}
	}
}

// fingerprint is a number made of every name, size and time below folder.
func fingerprint(seed maphash.Seed, folder string) uint64 {
	var h maphash.Hash
	h.SetSeed(seed)
	if real, err := filepath.EvalSymlinks(folder); err == nil {
		folder = real
	}
	_ = filepath.WalkDir(folder, func(at string, e fs.DirEntry, err error) error {
		if err != nil {
			fmt.Fprintf(&h, "%s\x00%v\x00", at, err)
			return nil
		}
		if at != folder && ignored(e.Name()) {
			if e.IsDir() {
				return fs.SkipDir
			}
			return nil
		}
		if info, err := e.Info(); err == nil && !e.IsDir() {
			fmt.Fprintf(&h, "%s\x00%d\x00%d\x00", at, info.Size(), info.ModTime().UnixNano())
		} else {
			fmt.Fprintf(&h, "%s\x00", at)
		}
		return nil
	})
	return h.Sum64()
}
