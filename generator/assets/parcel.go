package assets

import (
	"crypto/sha256"
	"encoding/base64"
)

// carriedName is the one global that a carried script sets; the theme's
// scripts/engine.ts reads it.
const carriedName = "carried"

// Parcel is the addresses of data that scripts take in: gzipped under a .bin
// name, fetched over http(s), and in a classic script, for file:. Size is the bytes
// that are fetched.
type Parcel struct {
	Packed, Carried string
	Size            int
}

// wrapped is a parcel that was made, with its files by address.
type wrapped struct {
	of     [sha256.Size]byte
	parcel Parcel
	files  map[string][]byte
}

// Wrap makes a parcel of data and returns its files by address, not to be changed.
// The same data gives the same parcel; that of a name which was made last is kept,
// since packing takes longer than most saves.
func (b *Bundle) Wrap(name string, data []byte) (Parcel, map[string][]byte, error) {
	b.mutex.Lock()
	defer b.mutex.Unlock()
	sum := sha256.Sum256(data)
	if last, ok := b.wrapped[name]; ok && last.of == sum {
		return last.parcel, last.files, nil
	}
	packed, err := pack(data)
	if err != nil {
		return Parcel{}, nil, err
	}
	script := carriedScript(packed)
	p := Parcel{Address(name+".bin", packed), Address(name+".js", script), len(packed)}
	if b.wrapped == nil {
		b.wrapped = map[string]wrapped{}
	}
	b.wrapped[name] = wrapped{sum, p, map[string][]byte{p.Packed: packed, p.Carried: script}}
	return p, b.wrapped[name].files, nil
}

// carriedScript writes gzipped data as a classic script, which browsers run
// from a page opened as a file, where they refuse to fetch.
func carriedScript(packed []byte) []byte {
	return []byte("globalThis." + carriedName + "=\"" + base64.StdEncoding.EncodeToString(packed) + "\"\n")
}
