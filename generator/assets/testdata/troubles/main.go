//go:build wasip1

// Package main asks of the runtime what it needs its tables of functions for: it
// panics in many ways and recovers, in functions that are inlined and methods
// that are wrapped, lets its stack grow and collects garbage while pointers are
// on it, and waits for another goroutine.
package main

import (
	"runtime"
	"strconv"
	"unsafe"
)

type figure struct{ first, second string }

// Said has a wrapper for pointers, which panics by its own name.
func (f figure) Said() string { return f.first + f.second }

type sayer interface{ Said() string }

var (
	none   *figure
	nobody sayer = none
	some         = []int{1, 2, 3}
	table  map[string]int
	kept   = &figure{"a", "bcd"}
	buffer [4096]byte
)

// troubles are what may happen; each ends in a text.
var troubles = []func() string{
	func() string { return strconv.Itoa(some[len(some)]) },
	func() string { return none.first },
	func() string { return strconv.Itoa(1 / len(table)) },
	func() string { return nobody.Said() },
	func() string { table["a"] = 1; return "" },
	func() string { panic("of our own") },
	func() string { return any(some).(sayer).Said() },
	func() string { defer func() { panic("again, after " + caught(recover())) }(); panic("once") },
	func() string { f := deep(20000, kept); return f.first + f.second },
	litter,
	elsewhere,
	overFunction,
}

// caught words what recover returned.
func caught(what any) string {
	switch what := what.(type) {
	case nil:
		return "nothing"
	case error:
		return what.Error()
	}
	return what.(string)
}

// deep needs a large stack, all of it full of pointers when garbage is collected.
func deep(n int, f *figure) *figure {
	if n == 0 {
		runtime.GC()
		return f
	}
	next := &figure{f.first, strconv.Itoa(n)}
	back := deep(n-1, next)
	return &figure{back.first, next.second + back.second[:1]}
}

// litter makes garbage enough for several collections.
func litter() string {
	for i := range 200_000 {
		kept = &figure{strconv.Itoa(i), kept.Said()[:2]}
	}
	return kept.Said()
}

// elsewhere panics and recovers in another goroutine.
func elsewhere() string {
	said := make(chan string)
	go func() {
		defer func() { said <- caught(recover()) }()
		panic("elsewhere")
	}()
	return <-said
}

// each is a loop over a function, whose body defers in the function around it.
func each(yield func(int) bool) {
	for i := range some {
		if !yield(i) {
			return
		}
	}
}

func overFunction() string {
	for i := range each {
		defer func() { some[0] += i }()
		if i == 1 {
			panic("within " + strconv.Itoa(some[0]))
		}
	}
	return ""
}

// try runs one of the troubles and returns the length of what it ended in,
// which stands at the address that place returns; -1 after the last.
//
//go:wasmexport try
func try(n int32) (size int32) {
	defer func() {
		if what := recover(); what != nil {
			size = int32(copy(buffer[:], "recovered from "+caught(what)))
		}
	}()
	if int(n) == len(troubles) {
		return -1
	}
	return int32(copy(buffer[:], troubles[n]()))
}

//go:wasmexport place
func place() int32 { return int32(uintptr(unsafe.Pointer(&buffer))) }

func main() {}
