package press

import (
	"bytes"
	"image"
	"image/jpeg"
	"strings"
	"testing"
	"testing/fstest"

	"slipbook/generator/course"
	"slipbook/generator/course/coursetest"
	"slipbook/generator/press/setting"
)

func TestPictureBesideItsPage(t *testing.T) {
	c := small(t)
	c.Pictures["pictures/kiln.png"] = course.Whole("pictures/kiln.png", 8, 6, []byte("a kiln"))
	c.Pictures["pictures/unshown.png"] = course.Whole("pictures/unshown.png", 8, 6, []byte("nobody looks"))
	c.Home.Source = append(c.Home.Source, "\n\n![A kiln](pictures/kiln.png)\n"...)
	e := printed(t, c)
	var found []string
	for address := range e {
		if strings.HasPrefix(address, "pictures/") {
			found = append(found, address)
		}
	}
	if len(found) != 1 || !strings.HasPrefix(found[0], "pictures/kiln-") || !strings.HasSuffix(found[0], ".png") || string(e[found[0]]) != "a kiln" {
		t.Fatalf("picture files: %q", found)
	}
	shown := elements(pageOf(t, e, "index.html"), called("img"))
	if len(shown) != 1 || attribute(shown[0], "src") != found[0] {
		t.Errorf("the page does not show %s", found[0])
	}
}

// TestPicturesOfTeachingNotes wants a picture that only a note for teaching shows to
// be in the instructor's copy alone, and one that others show too in both.
func TestPicturesOfTeachingNotes(t *testing.T) {
	c := small(t)
	for _, name := range []string{"hidden", "both", "asked"} {
		file := "pictures/" + name + ".png"
		c.Pictures[file] = course.Whole(file, 8, 6, []byte("picture "+name))
	}
	lesson := c.Units[0].Lessons[0]
	lesson.Source = append(bytes.Clone(lesson.Source), "\n\n![A jar](../../pictures/both.png)\n\n```teaching\n![A kiln](../../pictures/hidden.png)\n\n- ![A jar](../../pictures/both.png)\n```\n\n```asked Why is it so?\n![A sieve](../../pictures/asked.png)\n```\n"...)
	for _, copy := range []Copy{{}, {Teaching: true}} {
		there := map[string]bool{}
		for address, data := range map[bool]func(testing.TB, *course.Course) edition{false: printed, true: forTeaching}[copy.Teaching](t, c) {
			if words, ok := strings.CutPrefix(string(data), "picture "); ok {
				there[words] = true
				if !strings.Contains(address, words) {
					t.Errorf("%s is at %s", words, address)
				}
			}
		}
		if !there["both"] || !there["asked"] || there["hidden"] != copy.Teaching {
			t.Errorf("%+v has %v", copy, there)
		}
	}
}

// TestWidthsOfAPhoto wants an img with all its files, and the size at which it is
// shown.
func TestWidthsOfAPhoto(t *testing.T) {
	var photo bytes.Buffer
	if err := jpeg.Encode(&photo, image.NewGray(image.Rect(0, 0, 900, 600)), nil); err != nil {
		t.Fatal(err)
	}
	files := coursetest.Small()
	files["pictures/kiln.jpg"] = &fstest.MapFile{Data: photo.Bytes()}
	files["home.md"].Data = append(bytes.Clone(files["home.md"].Data), "\n\n![A kiln](pictures/kiln.jpg)\n"...)
	c, _ := new(course.Reader).Load(files)
	e := printed(t, c)
	shown := elements(pageOf(t, e, "index.html"), called("img"))
	if len(shown) != 1 {
		t.Fatalf("%d pictures", len(shown))
	}
	narrow, wide, ok := strings.Cut(attribute(shown[0], "srcset"), ", ")
	small, isSmall := strings.CutSuffix(narrow, " 544w")
	large, isLarge := strings.CutSuffix(wide, " 900w")
	if !ok || !isSmall || !isLarge || attribute(shown[0], "src") != large || e[small] == nil || e[large] == nil || attribute(shown[0], "sizes") != setting.PictureSizes {
		t.Errorf("src %q, srcset %q", attribute(shown[0], "src"), attribute(shown[0], "srcset"))
	}
	if w, h := attribute(shown[0], "width"), attribute(shown[0], "height"); w != "544" || h != "363" || attribute(shown[0], "loading") != "lazy" {
		t.Errorf("shown %s by %s", w, h)
	}
}
