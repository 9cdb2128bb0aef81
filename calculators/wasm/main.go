//go:build wasip1

// Package main is the calculators as a WebAssembly reactor: the catalog behind
// three exported functions and one buffer. It exists so that the page computes
// with the very code that the tests run natively. It is small on purpose:
// nothing here, and nothing it imports, uses fmt, reflection or the tables of
// Unicode.
//
// The page writes a request into the buffer that reserve gave, calls work with
// its length, and reads the answer from the address that work's caller asks
// with reserve(0). Memory may grow in any call: take a new view each time.
package main

import (
	"unsafe"

	"slipbook/calculators/catalog"
	"slipbook/calculators/form"
)

// most is the largest buffer handed out: far more than any request, and a
// bound on what a page can make the reactor keep.
const most = 1 << 20

var (
	buffer   = make([]byte, 4096)
	settings = form.Plain()
)

// reserve makes the buffer at least n bytes long, keeps what is in it, and
// gives its address; 0 when n is negative or unreasonably large.
//
//go:wasmexport reserve
func reserve(n int32) int32 {
	if n < 0 || n > most {
		return 0
	}
	if int(n) > len(buffer) {
		grown := make([]byte, n)
		copy(grown, buffer)
		buffer = grown
	}
	return int32(uintptr(unsafe.Pointer(&buffer[0])))
}

// configure takes the course's settings from the first n bytes of the buffer.
// It returns 0, or the length of a message in the buffer, negated.
//
//go:wasmexport configure
func configure(n int32) (result int32) {
	defer func() {
		if recover() != nil {
			result = -leave([]byte("settings"))
		}
	}()
	if n < 0 || int(n) > len(buffer) {
		return -leave([]byte("length"))
	}
	s, err := form.Configure(buffer[:n])
	if err != nil {
		return -leave([]byte(err.Error()))
	}
	settings = s
	return 0
}

// work answers the request in the first n bytes of the buffer and returns the
// length of the answer, which stands in the buffer at the address reserve(0)
// gives afterwards.
//
//go:wasmexport work
func work(n int32) (result int32) {
	defer func() {
		if recover() != nil {
			result = leave(settings.Failed())
		}
	}()
	if n < 0 || int(n) > len(buffer) {
		n = 0
	}
	return leave(catalog.Respond(buffer[:n], settings))
}

// leave puts bytes into the buffer and gives their number.
func leave(answer []byte) int32 {
	reserve(int32(len(answer)))
	return int32(copy(buffer, answer))
}

func main() {}
