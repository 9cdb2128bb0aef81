package catalog

// drawFit shows how long pot and slip would end, laid side by side at one
// scale. A slip that holds is stretched or pressed to the pot's length.
func drawFit(b *bench) string {
	mismatch, _ := b.result("mismatch")
	d := b.sheet("How long the pot and, by itself, the slip on it would end. {}", b.answer.Headline)
	pot, slip := 440.0, 440/(1+mismatch.Value/100)
	if slip > pot {
		pot, slip = 440*pot/slip, 440
	}
	for i, bar := range []struct {
		class, words string
		length       float64
	}{{"slip", "slip", slip}, {"clay", "pot", pot}} {
		y := 70 + float64(float64(i)*90)
		d.Box(bar.class, 30, y, bar.length, 80)
		d.Box("ink", 30, y, bar.length, 80)
		d.Words(bar.words, 490, y+50, textSize, "start")
	}
	d.Line("ghost", 30+pot, 40, 30+pot, 270)
	d.Line("ghost", 30+slip, 40, 30+slip, 270)
	return d.String()
}
