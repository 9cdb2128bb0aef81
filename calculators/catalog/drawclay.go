package catalog

// drawClay shows a lump by weight: its dry clay, its water, the stain.
func drawClay(b *bench) string {
	d := b.sheet("The lump by weight, to scale: {dry-clay} of dry clay and {water-held} of water, and beside it {stain-mass} of stain.")
	x, total := 30.0, 0.0
	parts := [...]struct{ class, name, words string }{{"clay", "dry-clay", "dry clay"}, {"water", "water-held", "water"}, {"colour", "stain-mass", "stain"}}
	for _, part := range parts {
		r, _ := b.result(part.name)
		total += r.Value
	}
	for i, part := range parts {
		r, _ := b.result(part.name)
		width := 560 * r.Value / total
		d.Box(part.class, x, 30, width, 100)
		d.Box("ink", x, 30, width, 100)
		b.aside(d, part.words+" {"+part.name+"}", 90, 184+float64(float64(i)*48))
		d.Box(part.class, 40, 162+float64(float64(i)*48), 30, 30)
		d.Box("ink", 40, 162+float64(float64(i)*48), 30, 30)
		x += width
	}
	return d.String()
}
