package theme

// use is what the templates of a theme are used for.
type use int

const (
	onPages use = iota
	inBook      // without what only a screen shows, for paper
	inEbook     // likewise, as XHTML
)
