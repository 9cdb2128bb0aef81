package catalog

// drawBars shows a bar fresh, dry and fired, to one scale.
func drawBars(b *bench) string {
	drying, _ := b.result("drying")
	total, _ := b.result("total")
	d := b.sheet("A bar fresh, {drying} shorter when dry, and {total} shorter when fired, to scale.")
	const full = 440.0
	for i, bar := range []struct {
		words string
		lost  float64
	}{{"fresh", 0}, {"dry", drying.Value}, {"fired", total.Value}} {
		left := 1 - bar.lost/100
		y := 30 + float64(float64(i)*96)
		length, height := float64(full*left), float64(64*left)
		d.Box("clay", 30, y, length, height)
		d.Box("ink", 30, y, length, height)
		d.Line("fine", 30+float64(0.06*length), y+12, 30+float64(0.06*length), y+height-12)
		d.Line("fine", 30+float64(0.94*length), y+12, 30+float64(0.94*length), y+height-12)
		d.Words(bar.words, 490, y+40, textSize, "start")
	}
	d.Line("ghost", 30+full, 16, 30+full, 300)
	return d.String()
}
