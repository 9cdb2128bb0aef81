package sketch

import "slipbook/calculators/letters"

// The drawings of answers share one sheet: 640 wide, text of 26 (13 px on a
// 360 px phone), a cylinder's body 150 wide.
const (
	Width    = 640.0
	Height   = 320.0
	TextSize = 26.0

	LineHeight = 32.0 // from one line of words to the next
	JarWidth   = 150.0
	JarTop     = 40.0
	JarFloor   = 280.0
)

// Sheet starts a drawing on the shared sheet, with its text alternative.
func Sheet(alternative string) *Drawing { return New(Width, Height, alternative) }

// Layer is one filled part of a vessel, from the floor up.
type Layer struct {
	Class  string
	Height float64 // in drawing units
}

// Jar draws a straight-sided vessel with its layers, left edge at x, its
// inside reaching from the floor up to rim.
func (d *Drawing) Jar(x, width, rim float64, layers ...Layer) {
	level := JarFloor
	for _, l := range layers {
		d.Box(l.Class, x, level-l.Height, width, l.Height)
		level -= l.Height
	}
	d.Path("ink", "M", x-6, rim, "H", x, "V", JarFloor, "H", x+width, "V", rim, "H", x+width+6)
}

// Pair draws one vessel with a level and a second with more in it, the last
// layer in words beside it, and words below each.
func (d *Drawing) Pair(level float64, words, before, after string, more ...Layer) {
	d.Jar(30, JarWidth, JarTop-20, Layer{"slip", level})
	d.Jar(290, JarWidth, JarTop-20, append([]Layer{{"slip", level}}, more...)...)
	d.Path("ink", "M", 205.0, 160.0, "H", 262.0, "M", 248.0, 148.0, "L", 262.0, 160.0, "L", 248.0, 172.0)
	d.Words(before, 30+JarWidth/2, JarFloor+32, "middle")
	d.Words(after, 290+JarWidth/2, JarFloor+32, "middle")
	height := 0.0
	for _, l := range more {
		height += l.Height
	}
	d.Aside(words, 460, JarFloor-level-height/2+9)
}

// Aside writes words to the right of what is drawn, in as many lines as the room
// that the sheet has there makes of them; y is the middle one's. Letters are not
// made smaller: nobody could read them on a phone.
func (d *Drawing) Aside(words string, x, y float64) {
	const wide = 0.5 // of its height a letter is wide, in the mean
	lines := fold(words, int((Width-8-x)/(wide*TextSize)))
	for i, line := range lines {
		d.Words(line, x, y+float64((float64(i)-float64(len(lines)-1)/2)*LineHeight), "start")
	}
}

// fold breaks words into lines of at most so many letters, but for a word that is
// longer by itself.
func fold(words string, most int) (lines []string) {
	last := 0 // letters in the last line
	for _, word := range letters.Fields(words) {
		n := len([]rune(word))
		if len(lines) > 0 && last+1+n <= most {
			lines[len(lines)-1] += " " + word
			last += 1 + n
			continue
		}
		lines, last = append(lines, word), n
	}
	return lines
}

// Powder is one of two powders at the bottom of a jar.
type Powder struct {
	Class string
	Room  float64 // mL
	Words string
}

// Sunk draws a jar with one powder on another under water, to scale by room
// (mL), each with its words.
func (d *Drawing) Sunk(lower, upper, water Powder) {
	scale := (JarFloor - JarTop) / (lower.Room + upper.Room + water.Room)
	low, up := float64(lower.Room*scale), float64(upper.Room*scale)
	d.Jar(60, JarWidth, JarTop-20, Layer{lower.Class, low}, Layer{upper.Class, up}, Layer{water.Class, float64(water.Room * scale)})
	for i, words := range []string{water.Words, upper.Words, lower.Words} {
		d.Aside(words, 262, 130+float64(float64(i)*64))
	}
	d.Line("fine", 210, JarFloor-low-up/2, 254, 185)
	d.Line("fine", 210, JarFloor-low/2, 254, 249)
}

// Outline draws a beaker standing on the floor, its middle at x.
func (d *Drawing) Outline(class string, x, floor, height float64) {
	half := float64(height * 0.52)
	foot := float64(height * 0.36)
	d.Path(class, "M", x-half, floor-height, "L", x-foot, floor-float64(0.1*height), "Q", x-foot, floor, x-foot+float64(0.12*height), floor,
		"H", x+foot-float64(0.12*height), "Q", x+foot, floor, x+foot, floor-float64(0.1*height), "L", x+half, floor-height, "Z")
}
