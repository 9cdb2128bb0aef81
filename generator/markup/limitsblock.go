package markup

// limits reads what a limits block asks for. Whether there is such a thing is for
// proof to say.
func (p *page) limits(b *Block, in *body) bool {
	if !p.noWords(b, "Write what the limits are of into the body, for example “about: silica-air”.") {
		return false
	}
	if !in.read("the limits block") {
		return false
	}
	f := in.root.Fields("about", "compare")
	b.Limits = &Limits{About: nameOf(f.Need("about", "about: silica-air")), Compare: f.Get("compare").Choice("yes", "no") == "yes"}
	return in.sound()
}
