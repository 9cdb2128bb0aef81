package photo

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/jpeg"
	"image/png"
	"slices"
	"testing"
)

// A profile's numbers of 16 bits and 16 behind the point.
func xyz(x, y, z float64) string {
	b := []byte("XYZ \x00\x00\x00\x00")
	for _, n := range []float64{x, y, z} {
		b = binary.BigEndian.AppendUint32(b, uint32(int32(n*65536)))
	}
	return string(b)
}

// profileOf makes a profile with primaries, the curve of sRGB, and words where a
// profile may hold them.
func profileOf(r, g, b, words string) []byte {
	curve := []byte("para\x00\x00\x00\x00\x00\x03\x00\x00")
	for _, n := range []float64{2.4, 1 / 1.055, 0.055 / 1.055, 1 / 12.92, 0.04045} {
		curve = binary.BigEndian.AppendUint32(curve, uint32(int32(n*65536)))
	}
	head := make([]byte, profileHead)
	copy(head[4:], "made")
	copy(head[8:], "\x04\x00\x00\x00mntrRGB XYZ ")
	copy(head[24:], "year and hour")
	copy(head[36:], "acspHOMEcamera model")
	copy(head[80:], words)
	return assembled(head, [][2]string{{"desc", words}, {"dmdd", words}, {"rXYZ", r}, {"gXYZ", g}, {"bXYZ", b}, {"rTRC", string(curve)}, {"gTRC", string(curve)}, {"bTRC", string(curve)}})
}

// wide is a profile of wider colours, as phones write it.
func wide(words string) []byte {
	return profileOf(xyz(0.5151, 0.2412, -0.0011), xyz(0.2919, 0.6922, 0.0419), xyz(0.1572, 0.0666, 0.7841), words)
}

// usual is a profile of sRGB.
func usual(words string) []byte {
	return profileOf(xyz(0.4361, 0.2225, 0.0139), xyz(0.3851, 0.7169, 0.0971), xyz(0.1431, 0.0606, 0.7141), words)
}

// TestProfiles wants the profile of wider colours in each file made of a photo,
// without a word of who made it, and none where it says sRGB or nothing of use.
func TestProfiles(t *testing.T) {
	var photo, screen bytes.Buffer
	if err := jpeg.Encode(&photo, corners(1300, 700), nil); err != nil {
		t.Fatal(err)
	}
	if err := png.Encode(&screen, corners(1300, 700)); err != nil {
		t.Fatal(err)
	}
	long := segment(jpegICC, iccName+"\x01\x02"+string(wide(secret)[:200]))
	long = append(long, segment(jpegICC, iccName+"\x02\x02"+string(wide(secret)[200:]))...)
	for _, c := range []struct {
		name string
		data []byte
		kept bool
	}{
		{"wide", slices.Concat(photo.Bytes()[:2], profileSegment(wide(secret)), photo.Bytes()[2:]), true},
		{"wide in two", slices.Concat(photo.Bytes()[:2], long, photo.Bytes()[2:]), true},
		{"sRGB", slices.Concat(photo.Bytes()[:2], profileSegment(usual(secret)), photo.Bytes()[2:]), false},
		{"damaged", slices.Concat(photo.Bytes()[:2], profileSegment(wide(secret)[:150]), photo.Bytes()[2:]), false},
		{"none", photo.Bytes(), false},
		{"a wide screen", slices.Concat(screen.Bytes()[:33], profileChunk(wide(secret)), screen.Bytes()[33:]), true},
		{"a screen of sRGB", slices.Concat(screen.Bytes()[:33], profileChunk(usual(secret)), screen.Bytes()[33:]), false},
	} {
		m := made(t, c.data)
		for n, file := range m.files {
			profile := profileIn(t, file)
			tags := profileTags(profile)
			if (tags != nil) != c.kept || bytes.Contains(profile, []byte(secret)) || bytes.Contains(profile, []byte("camera")) || bytes.Contains(profile, []byte("year")) {
				t.Errorf("%s, %d wide: profile %q", c.name, m.Versions[n].Width, profile)
			}
			if c.kept && string(tags["rXYZ"]) != xyz(0.5151, 0.2412, -0.0011) {
				t.Errorf("%s: other colours: %q", c.name, tags["rXYZ"])
			}
			if _, _, err := image.Decode(bytes.NewReader(file)); err != nil {
				t.Errorf("%s: %v", c.name, err)
			}
		}
	}
}

// profileIn returns the profile of a file that was made.
func profileIn(t *testing.T, file []byte) []byte {
	t.Helper()
	if KindOf(file) == "png" {
		p, err := openPNG(file)
		if err != nil {
			t.Fatal(err)
		}
		return p.profile
	}
	j, err := openJPEG(file)
	if err != nil {
		t.Fatal(err)
	}
	return j.profile
}
