//go:build wasm

package form

// Pages is false in the reactor: what stands under it is not built in.
const Pages = false
