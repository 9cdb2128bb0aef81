package catalog

import "slipbook/calculators/sketch"

// drawSize shows the outline now and, inside it, fired, to one scale.
func drawSize(b *bench) string {
	remaining, _ := b.result("remaining")
	left := 1 - remaining.Value/100
	d := b.sheet("The outline of the pot now, and inside it, to the same scale, the fired pot: {remaining} smaller each way.")
	const height = 250.0
	outline(d, "ghost", 200, jarFloor, height)
	outline(d, "clay", 200, jarFloor, float64(height*left))
	outline(d, "ink", 200, jarFloor, float64(height*left))
	b.aside(d, b.sized("wet-size", "now"), 400, 60)
	d.Line("fine", 392, 52, 330, 44)
	b.aside(d, b.sized("fired-size", "fired"), 400, 160)
	d.Line("fine", 392, 152, 200+float64(104*left), 140)
	return d.String()
}

// sized words a size with its state, or the state alone when the sum was of
// capacities only.
func (b *bench) sized(name, state string) string {
	if _, ok := b.result(name); ok || b.has(name) {
		return state + " {" + name + "}"
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
