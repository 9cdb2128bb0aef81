package assets

import "encoding/base64"

// carriedName is the one global that a carried script sets; the theme's
// scripts/engine.ts reads it.
const carriedName = "carried"

// Parcel is the addresses of data that scripts take in: gzipped under a .bin
// name, fetched over http(s), and in a classic script, for file:.
type Parcel struct{ Packed, Carried string }

// Wrap makes a parcel of data and returns its files by address. The same data
// gives the same parcel.
func Wrap(name string, data []byte) (Parcel, map[string][]byte, error) {
	packed, err := pack(data)
	if err != nil {
		return Parcel{}, nil, err
	}
	script := carriedScript(packed)
	p := Parcel{Address(name+".bin", packed), Address(name+".js", script)}
	return p, map[string][]byte{p.Packed: packed, p.Carried: script}, nil
}

// carriedScript writes gzipped data as a classic script, which browsers run
// from a page opened as a file, where they refuse to fetch.
func carriedScript(packed []byte) []byte {
	return []byte("globalThis." + carriedName + "=\"" + base64.StdEncoding.EncodeToString(packed) + "\"\n")
}
