// Package assets makes the files that pages share: the theme's scripts and
// styles bundled by esbuild, the calculators compiled to WebAssembly, the
// icons. It exists so that everything a page loads has a name made from its
// content, and may be kept by a browser for ever.
package assets

// Shelf address and bytes of everything made, and where pages find it.
//
// Bundle is the shared files of a handbook.
type Bundle struct {
	Files map[string][]byte // by address from the handbook's root: "assets/page-1A2B3C4D.css"
	Style string            // address of the style sheet of every page
	Page  string            // address of the script of every page; empty when the theme has none
	Desk  Desk              // what a page with a calculator loads besides
	Icon  string            // address of the icon
}

// Desk is the addresses that a page with a calculator needs.
type Desk struct {
	Script  string // the classic script that drives the forms
	Engine  string // gzipped WebAssembly under a .bin name, fetched over http(s)
	Carried string // classic script with the same bytes in base64, for file:
}
