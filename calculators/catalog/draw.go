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
		b.pair(d, float64(before*scale), "+ {water-to-add}", "{from}", "{to}", layer{"water", float64((after.Value - before) * scale)})
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
	d.Words(b.words(words), 460, jarFloor-level-height/2+9, textSize, "start")
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
		d.Words(b.words(words), 262, 130+float64(float64(i)*64), textSize, "start")
	}
	d.Line("fine", 210, jarFloor-low-up/2, 254, 185)
	d.Line("fine", 210, jarFloor-low/2, 254, 249)
}

// drawDilute shows the cups, each with its share of strong wash below and
// water above; or the one vessel before and after.
func drawDilute(b *bench) string {
	if len(b.answer.Rows) == 0 {
		after, _ := b.result("new-volume")
		d := b.sheet("The wash before, and after {water-to-add} of water, to one scale.")
		scale := (jarFloor - jarTop) / after.Value
		level := float64(b.value("volume") * scale)
		b.pair(d, level, "+ {water-to-add}", "{from}", "{to}", layer{"water", jarFloor - jarTop - level})
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
		d.Words(part.words+" "+b.shown(part.name), 90, 184+float64(float64(i)*48), textSize, "start")
		d.Box(part.class, 40, 162+float64(float64(i)*48), 30, 30)
		d.Box("ink", 40, 162+float64(float64(i)*48), 30, 30)
		x += width
	}
	return d.String()
}

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

// mostDrawn is how many tiles fit into a drawing with their codes.
const mostDrawn = 12

// drawTile shows the mixes: a line of tiles, each filled as far up as its
// addition is of the highest, or the triangle of the blends.
func drawTile(b *bench) string {
	if b.word("kind") == "triaxial" {
		return drawTriangle(b)
	}
	rows := b.answer.Rows
	top := rows[len(rows)-1][1].Value
	d := b.sheet("The mixes from {} to {}, each tile filled as far up as its addition is of the highest.",
		withUnit(rows[0][1].Text, "%"), withUnit(rows[len(rows)-1][1].Text, "%"))
	if len(rows) > mostDrawn {
		rows = rows[:mostDrawn] // the table has them all
	}
	room := (sheetWidth - 20) / float64(len(rows))
	width := min(room-8, 90)
	for i, row := range rows {
		x := 10 + float64((float64(i)+0.5)*room) - width/2
		fill := 180 * row[1].Value / top
		d.Box("clay", x, 40, width, 180)
		d.Box("colour", x, 220-fill, width, fill)
		d.Box("ink", x, 40, width, 180)
		d.Words(row[0].Text, x+width/2, 256, 24, "middle")
	}
	return d.String()
}

// drawTriangle shows where each blend stands between the three mixes.
func drawTriangle(b *bench) string {
	rows, side := b.answer.Rows, b.value("points")
	d := b.sheet("A triangle of blends: A at the top, B at the left, C at the right, {points} along a side.")
	for _, row := range rows {
		across, down := (row[3].Value-row[2].Value)/200, 1-row[1].Value/100
		x, y := 320+float64(across*520), 40+float64(down*240)
		radius := min(24, 250/side)
		d.Dot("clay", x, y, radius)
		d.Dot("ink", x, y, radius)
		if side <= 7 {
			d.Words(row[0].Text, x, y+8, 22, "middle")
		}
	}
	d.Words("A", 364, 48, textSize, "start")
	d.Words("B", 22, 290, textSize, "middle")
	d.Words("C", 618, 290, textSize, "middle")
	return d.String()
}
