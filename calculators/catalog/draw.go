package catalog

import "slipbook/calculators/sketch"

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
	d.Words(b.shown("solids-by-volume")+" of the volume is clay,", 262, jarFloor-solids/2-8, textSize, "start")
	d.Words(b.shown("solids-by-mass")+" of the weight", 262, jarFloor-solids/2+24, textSize, "start")
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
		scale := (jarFloor - jarTop) / after.Value
		pair(d, b, float64(before*scale), layer{"water", float64((after.Value - before) * scale)}, "+ "+b.shown("water-to-add"))
		return d.String()
	}
	after, _ := b.result("volume-after-powder")
	d := b.sheet("The bucket before, and after {powder-to-add} of dry mix, to one scale.")
	scale := (jarFloor - jarTop) / after.Value
	pair(d, b, float64(before*scale), layer{"clay", float64((after.Value - before) * scale)}, "+ "+b.shown("powder-to-add"))
	return d.String()
}

// pair draws one vessel with a level and a second with more in it.
func pair(d *sketch.Drawing, b *bench, level float64, more layer, words string) {
	jar(d, 30, jarWidth, jarTop-20, layer{"slip", level})
	jar(d, 290, jarWidth, jarTop-20, layer{"slip", level}, more)
	d.Path("ink", "M", 205.0, 160.0, "H", 262.0, "M", 248.0, 148.0, "L", 262.0, 160.0, "L", 248.0, 172.0)
	d.Words(b.shown("from"), 30+jarWidth/2, jarFloor+32, textSize, "middle")
	d.Words(b.shown("to"), 290+jarWidth/2, jarFloor+32, textSize, "middle")
	d.Words(words, 460, jarFloor-level-more.height/2+9, textSize, "start")
}

// drawMix shows the wash as if its powders had sunk.
func drawMix(b *bench) string {
	stain, _ := b.result("stain-mass")
	flux, _ := b.result("flux-mass")
	water, _ := b.result("water")
	rooms := [3]float64{stain.Value / b.value("stain-density"), flux.Value / b.value("flux-density"), water.Value}
	scale := (jarFloor - jarTop) / (rooms[0] + rooms[1] + rooms[2])
	d := b.sheet("The wash as if its powder had sunk: {stain-mass} of stain and {flux-mass} of flux under {water} of water.")
	jar(d, 60, jarWidth, jarTop-20, layer{"colour", float64(rooms[0] * scale)}, layer{"glaze", float64(rooms[1] * scale)}, layer{"water", float64(rooms[2] * scale)})
	for i, words := range []string{"water " + b.shown("water"), "flux " + b.shown("flux-mass"), "stain " + b.shown("stain-mass")} {
		d.Words(words, 262, 130+float64(float64(i)*64), textSize, "start")
	}
	surface := jarFloor - float64(rooms[0]*scale)
	d.Line("fine", 210, surface-float64(rooms[1]*scale/2), 254, 185)
	d.Line("fine", 210, (surface+jarFloor)/2, 254, 249)
	return d.String()
}

// drawDilute shows the cups, each with its share of strong wash below and
// water above; or the one vessel before and after.
func drawDilute(b *bench) string {
	if len(b.answer.Rows) == 0 {
		after, _ := b.result("new-volume")
		d := b.sheet("The wash before, and after {water-to-add} of water, to one scale.")
		scale := (jarFloor - jarTop) / after.Value
		level := float64(b.value("volume") * scale)
		pair(d, b, level, layer{"water", jarFloor - jarTop - level}, "+ "+b.shown("water-to-add"))
		return d.String()
	}
	rows := b.answer.Rows
	shown := rows
	if len(shown) > 8 {
		shown = rows[:8] // more would be too narrow to read; the table has them all
	}
	d := b.sheet("The cups, strong wash below and water above: {}.", ladderWords(rows))
	room := (sheetWidth - 40) / float64(len(shown))
	for i, row := range shown {
		full := row[2].Value + row[3].Value
		stock := (jarFloor - jarTop) * row[2].Value / full
		x := 20 + float64(float64(i)*room)
		jar(d, x+8, room-16, jarTop-20, layer{"colour", stock}, layer{"water", jarFloor - jarTop - stock})
		d.Words(row[1].Text, x+room/2, jarFloor+32, 24, "middle")
	}
	return d.String()
}

func ladderWords(rows [][]Cell) string {
	var cups []string
	for _, row := range rows {
		cups = append(cups, "strength "+row[1].Text)
	}
	return listing(cups)
}

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

// drawSize shows the outline now and, inside it, fired, to one scale.
func drawSize(b *bench) string {
	remaining, _ := b.result("remaining")
	left := 1 - remaining.Value/100
	d := b.sheet("The outline of the pot now, and inside it, to the same scale, the fired pot: {remaining} smaller each way.")
	const height = 250.0
	outline(d, "ghost", 200, jarFloor, height)
	outline(d, "clay", 200, jarFloor, float64(height*left))
	outline(d, "ink", 200, jarFloor, float64(height*left))
	d.Words(b.sized("wet-size", "now"), 400, 60, textSize, "start")
	d.Line("fine", 392, 52, 330, 44)
	d.Words(b.sized("fired-size", "fired"), 400, 160, textSize, "start")
	d.Line("fine", 392, 152, 200+float64(104*left), 140)
	return d.String()
}

// sized words a size with its state, or the state alone when the sum was of
// capacities only.
func (b *bench) sized(name, state string) string {
	if _, ok := b.result(name); ok {
		return state + " " + b.shown(name)
	}
	if b.has(name) {
		return state + " " + withUnit(b.text(b.value(name), 4), "mm")
	}
	return state
}

// outline draws a beaker standing on the floor, its middle at x.
func outline(d *sketch.Drawing, class string, x, floor, height float64) {
	half := float64(height * 0.52)
	foot := float64(height * 0.36)
	d.Path(class, "M", x-half, floor-height, "L", x-foot, floor-float64(0.1*height), "Q", x-foot, floor, x-foot+float64(0.12*height), floor,
		"H", x+foot-float64(0.12*height), "Q", x+foot, floor, x+foot, floor-float64(0.1*height), "L", x+half, floor-height, "Z")
}
