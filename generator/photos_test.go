package main

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"

	"slipbook/generator/course/coursetest"
)

// photosOfACourse is how many photos of 12 million points BenchmarkPhotos publishes.
const photosOfACourse = 300

// BenchmarkPhotos publishes a course of 300 photos as a phone makes them, about 5 MB
// each, with the built program: first with nothing kept, then anew into another
// folder with what was kept, then over what stands there.
func BenchmarkPhotos(b *testing.B) {
	dir := fastDir(b)
	content, program := filepath.Join(dir, "content"), filepath.Join(dir, "slipbook")
	writePhotos(b, content)
	timed(b, nil, "go", "build", "-o", program, ".")
	timed(b, []string{"XDG_CACHE_HOME=" + filepath.Join(dir, "cache")}, program, "publish", "--content", "../content", "--to", filepath.Join(dir, "demo")) // the wasm is compiled and kept
	var first, second, third cost
	for b.Loop() {
		cache := filepath.Join(dir, "cache")
		if err := os.RemoveAll(filepath.Join(cache, "slipbook", "photos")); err != nil {
			b.Fatal(err)
		}
		publish := func(to string) cost {
			return timed(b, []string{"XDG_CACHE_HOME=" + cache, "GOMAXPROCS=2"}, program, "publish", "--content", content, "--to", to)
		}
		first.add(publish(fresh(b, dir)))
		second.add(publish(fresh(b, dir)))
		third.add(publish(filepath.Join(dir, "to")))
	}
	n := float64(b.N)
	b.ReportMetric(first.wall.Seconds()/n, "first-s")
	b.ReportMetric(first.cpu.Seconds()/n, "first-cpu-s")
	b.ReportMetric(second.wall.Seconds()/n, "second-s")
	b.ReportMetric(third.wall.Seconds()/n, "over-it-s")
	b.ReportMetric(float64(first.memory)/1024, "first-MB-peak")
	b.ReportMetric(float64(second.memory)/1024, "second-MB-peak")
	written, _ := sizes(b, filepath.Join(dir, "to"))
	b.ReportMetric(float64(written)/1e6, "MB-written")
	b.ReportMetric(0, "ns/op")
}

// writePhotos writes the small course with a lesson for each fifty of them.
func writePhotos(b *testing.B, dir string) {
	b.Helper()
	if err := os.CopyFS(dir, coursetest.Small()); err != nil {
		b.Fatal(err)
	}
	var kinds [][]byte
	for seed := range 4 {
		kinds = append(kinds, grainy(b, 4000, 3000, seed))
	}
	lessons, list := map[string]string{}, ""
	for i := range photosOfACourse {
		name := fmt.Sprintf("IMG_%04d.jpg", i)
		words := fmt.Sprintf("\xff\xfe\x00\x06%04d", i) // a comment, so that no two are the same
		data := bytes.Join([][]byte{kinds[i%4][:2], []byte(words), kinds[i%4][2:]}, nil)
		if err := os.WriteFile(filepath.Join(dir, "pictures", name), data, 0o644); err != nil {
			b.Fatal(err)
		}
		lesson := fmt.Sprintf("photos-%d", i/50)
		if lessons[lesson] == "" {
			lessons[lesson] = lessonHead
			list += ", " + lesson
		}
		lessons[lesson] += fmt.Sprintf("![A jar of slip on the scale before it is full](../../pictures/%s)\n\n", name)
	}
	lessons["unit"] = "---\ntitle: Slip\nlessons: [mix, measure" + list + "]\n---\n"
	for name, words := range lessons {
		if err := os.WriteFile(filepath.Join(dir, "units", "slip", name+".md"), []byte(words), 0o644); err != nil {
			b.Fatal(err)
		}
	}
}

// grainy makes a photo of soft shapes with the grain of a camera's sensor.
func grainy(b *testing.B, width, height, seed int) []byte {
	b.Helper()
	m := image.NewYCbCr(image.Rect(0, 0, width, height), image.YCbCrSubsampleRatio420)
	state := uint32(seed + 1)
	random := func(most uint32) int {
		state = state*1664525 + 1013904223
		return int(state >> 16 % most)
	}
	for y := range height {
		for x := range width {
			m.Y[y*m.YStride+x] = byte(60 + (x*x/9000+y*(seed+3)/20)%120 + random(24))
		}
	}
	for i := range m.Cb {
		m.Cb[i], m.Cr[i] = byte(110+i/m.CStride/40%30), byte(130+i%m.CStride/50%30+random(3))
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, m, &jpeg.Options{Quality: 90}); err != nil {
		b.Fatal(err)
	}
	return out.Bytes()
}
