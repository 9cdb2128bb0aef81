// Package catalog declares every calculator once, each in a file of its own:
// its inputs with their units and limits, its outputs, its notes, the arithmetic
// behind it, its drawing, and what its page shows: a worked example, a printed
// table and formulas. The form on the page, the command line, the WebAssembly
// reactor, the documentation and the tests are all made from this one
// declaration by package form, so that none of them can disagree. Its words
// stand in package words under its name; In fills them in.
//
// It is part of the WebAssembly reactor: no fmt, no encoding/json, no reflect,
// no sort, no net/url. Arithmetic is + - * / and math.Sqrt, each product in
// float64(a*b), so that amd64, arm64 and wasm agree to the last bit.
package catalog

import "slipbook/calculators/form"

// all is the handbook's calculators in its order. A new calculator is a file
// of this package with one declaration, named here.
var all = form.List{
	slipDensity,
	slipAdjust,
	slipBatch,
	slipColour,
	recipeScale,
	bucketMix,
	bucketTopUp,
	wetBlend,
	slipCoverage,
	flowLog,
	clayWater,
	clayColour,
	washMix,
	washDilute,
	shrinkageBars,
	shrinkageSize,
	slipFit,
	absorption,
	tilePlan,
	stagePlan,
}

// Solve answers a request in the course's style. It never panics: what the
// arithmetic cannot do is an error of the answer.
func Solve(calculator string, given []form.Setting, s form.Settings) *form.Answer {
	return all.Solve(calculator, given, s)
}

// Respond answers an encoded request with an encoded answer: the reactor's
// work, and what the tests compare byte for byte. A request that cannot be
// read is answered with an error of the input "calculator".
func Respond(request []byte, s form.Settings) []byte { return all.Respond(request, s) }
