//go:build !wasm

package form

// Pages reports whether this build shows calculators on pages and on the
// command line: examples, printed tables and formulas. The WebAssembly reactor
// only answers, and is built without them.
const Pages = true
