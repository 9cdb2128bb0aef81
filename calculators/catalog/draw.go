package catalog

import (
	"slipbook/calculators/letters"
	"slipbook/calculators/sketch"
)

// The drawings share one sheet: 640 wide, text of 26 (13 px on a 360 px
// phone), a cylinder's body 150 wide.
const (
	sheetWidth  = 640.0
	sheetHeight = 320.0
	textSize    = 26.0
	jarWidth    = 150.0
	jarTop      = 40.0
	jarFloor    = 280.0
)

// sheet starts a drawing with its text alternative.
func (b *bench) sheet(alternative string, texts ...string) *sketch.Drawing {
	return sketch.New(sheetWidth, sheetHeight, b.words(alternative, texts...))
}

// layer is one filled part of a vessel, from the floor up.
type layer struct {
	class  string
	height float64 // in drawing units
}

// jar draws a straight-sided vessel with its layers, left edge at x, its
// inside reaching from the floor up to rim.
func jar(d *sketch.Drawing, x, width, rim float64, layers ...layer) {
	level := jarFloor
	for _, l := range layers {
		d.Box(l.class, x, level-l.height, width, l.height)
		level -= l.height
	}
	d.Path("ink", "M", x-6, rim, "H", x, "V", jarFloor, "H", x+width, "V", rim, "H", x+width+6)
}

// drawDensity shows the jar as if all had settled: the grains below, the water
// above, to scale.
func drawDensity(b *bench) string {
	share, _ := b.result("solids-by-volume")
	whole := jarFloor - jarTop
	solids := float64(whole * share.Value / 100)
	d := b.sheet("The jar as if all had settled: the dry clay alone fills {solids-by-volume} of it, water the rest. By weight the clay is {solids-by-mass}.")
	jar(d, 60, jarWidth, jarTop-20, layer{"clay", solids}, layer{"water", whole - solids})
	d.Line("fine", 210, jarFloor-solids, 250, jarFloor-solids)
	d.Words("water", 262, (jarTop+jarFloor-solids)/2+9, textSize, "start")
	b.aside(d, "{solids-by-volume} of the volume is clay,", 262, jarFloor-solids/2-8)
	b.aside(d, "{solids-by-mass} of the weight", 262, jarFloor-solids/2+24)
	return d.String()
}

// drawAdjust shows the bucket before and after, to one scale.
func drawAdjust(b *bench) string {
	before := b.value("volume")
	if b.has("slip-mass") {
		before = b.value("slip-mass") / b.value("from")
	}
	if after, thinner := b.result("new-volume"); thinner {
		d := b.sheet("The bucket before, and after {water-to-add} of water, to one scale.")
		more := "+ {water-to-add}"
		if after.Value == before {
			d, more = b.sheet("The bucket, right as it is."), "right as it is"
		}
		scale := (jarFloor - jarTop) / after.Value
		b.pair(d, float64(before*scale), more, "{from}", "{to}", layer{"water", float64((after.Value - before) * scale)})
		return d.String()
	}
	after, _ := b.result("volume-after-powder")
	d := b.sheet("The bucket before, and after {powder-to-add} of dry mix, to one scale.")
	scale := (jarFloor - jarTop) / after.Value
	b.pair(d, float64(before*scale), "+ {powder-to-add}", "{from}", "{to}", layer{"clay", float64((after.Value - before) * scale)})
	return d.String()
}

// pair draws one vessel with a level and a second with more in it, the last
// layer in words beside it, and words below each.
func (b *bench) pair(d *sketch.Drawing, level float64, words, before, after string, more ...layer) {
	jar(d, 30, jarWidth, jarTop-20, layer{"slip", level})
	jar(d, 290, jarWidth, jarTop-20, append([]layer{{"slip", level}}, more...)...)
	d.Path("ink", "M", 205.0, 160.0, "H", 262.0, "M", 248.0, 148.0, "L", 262.0, 160.0, "L", 248.0, 172.0)
	d.Words(b.words(before), 30+jarWidth/2, jarFloor+32, textSize, "middle")
	d.Words(b.words(after), 290+jarWidth/2, jarFloor+32, textSize, "middle")
	height := 0.0
	for _, l := range more {
		height += l.height
	}
	b.aside(d, words, 460, jarFloor-level-height/2+9)
}

// aside writes a sentence to the right of what is drawn, its amounts in the
// reader's measures alone, and smaller where it needs more than the room that
// the sheet has there.
func (b *bench) aside(d *sketch.Drawing, sentence string, x, y float64) {
	text := b.words(sentence)
	for _, long := range []string{" to measure", " to weigh"} {
		text = letters.TrimSuffix(text, long)
	}
	text, _, _ = letters.Cut(text, " (")
	const wide = 0.55 // of its height a letter is wide, in the mean
	size := (sheetWidth - 8 - x) / (wide * float64(len([]rune(text))))
	d.Words(text, x, y, min(size, textSize), "start")
}

// drawColour shows the bucket before and after, to one scale: the stain lies
// on the slip as a thin layer, its water above.
func drawColour(b *bench) string {
	stain, _ := b.result("stain-mass")
	water, _ := b.result("water-to-hold")
	after, _ := b.result("new-volume")
	room := stain.Value / b.value("stain-density")
	scale := (jarFloor - jarTop) / after.Value
	d := b.sheet("The bucket before, and after {stain-mass} of stain and {water-to-hold} of water, to one scale.")
	b.pair(d, float64((after.Value-room-water.Value)*scale), "+ {stain-mass}", "{stain-now}", "{stain}",
		layer{"colour", float64(room * scale)}, layer{"water", float64(water.Value * scale)})
	d.Words("of stain", 460, jarTop+float64((room+water.Value)*scale/2)+41, textSize, "start")
	return d.String()
}

// drawMix shows the wash as if its powders had sunk.
func drawMix(b *bench) string {
	stain, _ := b.result("stain-mass")
	flux, _ := b.result("flux-mass")
	water, _ := b.result("water")
	d := b.sheet("The wash as if its powder had sunk: {stain-mass} of stain and {flux-mass} of flux under {water} of water.")
	b.sunk(d, powder{"colour", stain.Value / b.value("stain-density"), "stain {stain-mass}"},
		powder{"glaze", flux.Value / b.value("flux-density"), "flux {flux-mass}"}, water.Value)
	return d.String()
}

// drawBatch shows the slip as if all had settled.
func drawBatch(b *bench) string {
	base, _ := b.result("dry-base")
	stain, _ := b.result("stain-mass")
	water, _ := b.result("water")
	d := b.sheet("The slip as if all had settled: {dry-base} of dry base and {stain-mass} of stain under {water} of water.")
	b.sunk(d, powder{"clay", base.Value / b.value("solids-density"), "base {dry-base}"},
		powder{"colour", stain.Value / b.value("stain-density"), "stain {stain-mass}"}, water.Value)
	return d.String()
}

// powder is one of two powders at the bottom of a jar.
type powder struct {
	class string
	room  float64 // mL
	words string
}

// sunk draws a jar with one powder on another under water, to scale by room,
// and the output "water" named with them.
func (b *bench) sunk(d *sketch.Drawing, lower, upper powder, water float64) {
	scale := (jarFloor - jarTop) / (lower.room + upper.room + water)
	low, up := float64(lower.room*scale), float64(upper.room*scale)
	jar(d, 60, jarWidth, jarTop-20, layer{lower.class, low}, layer{upper.class, up}, layer{"water", float64(water * scale)})
	for i, words := range []string{"water {water}", upper.words, lower.words} {
		b.aside(d, words, 262, 130+float64(float64(i)*64))
	}
	d.Line("fine", 210, jarFloor-low-up/2, 254, 185)
	d.Line("fine", 210, jarFloor-low/2, 254, 249)
}
