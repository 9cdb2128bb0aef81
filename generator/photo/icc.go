package photo

import (
	"encoding/binary"
	"math"
	"slices"
)

// A profile says what the numbers of a picture's colours mean (ICC.1:2022). It is
// kept, not converted: phones write Display P3, whose strong reds and greens sRGB
// does not hold, so converting would dull just the glazes that are shown, and a
// screen that has no more than sRGB converts by itself. sRGB is what a picture
// without a profile means, so that one is left out. The profile is written anew
// with the parts that colours need alone: others name the camera, the program, the
// hour, and may hold any words.

// mostProfile bounds a profile, in bytes. Those of cameras and screens have some
// hundreds; tables for print have megabytes, and print no page of a handbook.
const mostProfile = 256 << 10

// profileParts are the tags of a profile that colours need.
var profileParts = []string{"wtpt", "chad", "rXYZ", "gXYZ", "bXYZ", "rTRC", "gTRC", "bTRC", "kTRC", "A2B0", "A2B1", "A2B2", "B2A0", "B2A1", "B2A2", "cicp"}

const (
	profileHead = 128
	tagLength   = 12 // of an entry of the table of tags
)

// shownProfile returns the profile to be written beside colours of a kind, "RGB " or
// "GRAY": nil for sRGB, and for one that is damaged or of other colours.
func shownProfile(profile []byte, colours string) []byte {
	tags := profileTags(profile)
	if tags == nil || string(profile[16:20]) != colours || isSRGB(tags) {
		return nil
	}
	head := slices.Clone(profile[:profileHead])
	clear(head[4:8])   // who made it
	clear(head[24:36]) // when
	clear(head[40:64]) // on what, for which device
	clear(head[80:])   // by which program, and a sum over all of it
	copy(head[36:], "acsp")
	parts := [][2]string{{"desc", textPart("colours", profile[8])}, {"cprt", textPart("none", profile[8])}}
	for _, name := range profileParts {
		if words, ok := tags[name]; ok {
			parts = append(parts, [2]string{name, string(words)})
		}
	}
	return assembled(head, parts)
}

// assembled writes a profile of its parts.
func assembled(head []byte, parts [][2]string) []byte {
	table := binary.BigEndian.AppendUint32(nil, uint32(len(parts)))
	var words []byte
	first := profileHead + 4 + tagLength*len(parts)
	for _, p := range parts {
		table = append(table, p[0]...)
		table = binary.BigEndian.AppendUint32(table, uint32(first+len(words)))
		table = binary.BigEndian.AppendUint32(table, uint32(len(p[1])))
		words = append(words, p[1]...)
		words = append(words, make([]byte, -len(words)&3)...)
	}
	all := slices.Concat(head, table, words)
	binary.BigEndian.PutUint32(all, uint32(len(all)))
	return all
}

// textPart is a text of a profile, in the form of its version.
func textPart(text string, version byte) string {
	if version < 4 {
		n := string(binary.BigEndian.AppendUint32(nil, uint32(len(text)+1)))
		return "desc\x00\x00\x00\x00" + n + text + "\x00" + string(make([]byte, 4+4+2+1+67))
	}
	var wide []byte
	for _, c := range text {
		wide = binary.BigEndian.AppendUint16(wide, uint16(c))
	}
	return "mluc\x00\x00\x00\x00\x00\x00\x00\x01\x00\x00\x00\x0cenUS" + string(binary.BigEndian.AppendUint32(nil, uint32(len(wide)))) + "\x00\x00\x00\x1c" + string(wide)
}

// profileTags returns the parts of a profile by name; nil where it is damaged.
func profileTags(profile []byte) map[string][]byte {
	if len(profile) < profileHead+4 || len(profile) > mostProfile || string(profile[36:40]) != "acsp" {
		return nil
	}
	n := int64(binary.BigEndian.Uint32(profile[profileHead:]))
	table := profile[profileHead+4:]
	if n*tagLength > int64(len(table)) {
		return nil
	}
	tags := map[string][]byte{}
	for range n {
		at, size := int64(binary.BigEndian.Uint32(table[4:])), int64(binary.BigEndian.Uint32(table[8:]))
		if at+size > int64(len(profile)) {
			return nil
		}
		tags[string(table[:4])] = profile[at : at+size]
		table = table[tagLength:]
	}
	return tags
}

// primaries are those of sRGB as a profile holds them, each as x, y, z.
var primaries = map[string][3]float64{"rXYZ": {0.4361, 0.2225, 0.0139}, "gXYZ": {0.3851, 0.7169, 0.0971}, "bXYZ": {0.1431, 0.0606, 0.7141}}

// isSRGB reports whether colours mean what they mean without a profile, to less than
// anybody sees.
func isSRGB(tags map[string][]byte) bool {
	for name, want := range primaries {
		words := tags[name]
		if len(words) < 20 {
			return false
		}
		for i, w := range want {
			if math.Abs(fixed(words[8+4*i:])-w) > 0.003 {
				return false
			}
		}
	}
	for _, name := range []string{"rTRC", "gTRC", "bTRC"} {
		for _, x := range []float64{0.1, 0.25, 0.5, 0.75} {
			if math.Abs(lightOf(tags[name], x)-math.Pow((x+0.055)/1.055, 2.4)) > 0.005 {
				return false
			}
		}
	}
	return true
}

// fixed reads a number of 16 bits before its point and 16 behind it.
func fixed(b []byte) float64 { return float64(int32(binary.BigEndian.Uint32(b))) / 65536 }

// lightOf returns how much light a number from 0 to 1 means by a curve; -1 where
// the curve is none that is known.
func lightOf(curve []byte, x float64) float64 {
	if len(curve) < 12 {
		return -1
	}
	if string(curve[:4]) == "para" {
		return lightOfFormula(curve, x)
	}
	n := int(binary.BigEndian.Uint32(curve[8:]))
	switch {
	case string(curve[:4]) != "curv" || n < 0 || len(curve)-12 < 2*n:
		return -1
	case n == 0:
		return x
	case n == 1:
		return math.Pow(x, float64(binary.BigEndian.Uint16(curve[12:]))/256)
	}
	at := int(math.Round(x * float64(n-1)))
	return float64(binary.BigEndian.Uint16(curve[12+2*at:])) / 65535
}

// lightOfFormula is lightOf for the formula of sRGB with its own numbers.
func lightOfFormula(curve []byte, x float64) float64 {
	if kind := binary.BigEndian.Uint16(curve[8:]); kind != 3 && kind != 4 || len(curve) < 32 {
		return -1
	}
	g, a, b, c, d := fixed(curve[12:]), fixed(curve[16:]), fixed(curve[20:]), fixed(curve[24:]), fixed(curve[28:])
	if x < d {
		return c * x
	}
	return math.Pow(float64(a*x)+b, g)
}

// profileSegment is the segment of a JPEG with a profile, several where one does not
// hold it; empty without one.
func profileSegment(profile []byte) []byte {
	const most = 65519
	var out []byte
	all := (len(profile) + most - 1) / most
	for n := 1; len(profile) > 0; n++ {
		part := profile[:min(most, len(profile))]
		profile = profile[len(part):]
		out = append(out, 0xff, jpegICC)
		out = binary.BigEndian.AppendUint16(out, uint16(2+len(iccName)+2+len(part)))
		out = append(out, iccName...)
		out = append(out, byte(n), byte(all))
		out = append(out, part...)
	}
	return out
}
