package course

import (
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/photo"
	"slipbook/generator/pool"
	"slipbook/generator/source"
)

// pictureKinds are the formats that the endings of pictures promise.
var pictureKinds = map[string]string{".svg": "svg", ".png": "png", ".jpg": "jpeg", ".jpeg": "jpeg", ".gif": "gif", ".webp": "webp"}

const (
	pictureHelp = "Save a photo as JPEG, a screen or a scan as PNG, and draw a drawing as SVG."
	phoneHelp   = "In the settings of the phone's camera choose JPEG, often called “most compatible”. Send a photo that is there already to yourself as JPEG, and put that file here."
)

// What the pictures of a course may hold. A course with a photo of 12 million points
// in each of 300 lessons takes little more than a third of it. The files of photos
// are made once and kept; a course of the largest size takes some four minutes then.
const (
	mostPoints       = 10_000_000_000 // of all photos together
	mostPictureBytes = 4 << 30        // of all files together
	mostOutlineBytes = 64 << 20       // of all drawings that stand beside their pages, which stay in memory
)

const smallerHelp = "Make it smaller: 1600 points are wide enough for a page, also in print."

// pictures reads the pictures folder with its folders. A course may do without.
func (l *loader) pictures() {
	files := l.pictureFiles()
	read := pool.Map(len(files), func(i int) *photograph { return l.picture(files[i]) })
	all, names := totals{}, map[string]string{}
	for _, p := range read {
		small := strings.ToLower(p.Path)
		if other, there := names[small]; there {
			p.fail(finding.SharedAddress, fmt.Sprintf("this name differs from that of %s in capital letters alone", other), "Rename one of the two: many disks and memory sticks hold only one.")
		}
		names[small] = p.Path
		all.add(p)
	}
	pool.Each(len(read), func(i int) { l.develop(read[i]) })
	l.reader.Lab.Tidy()
	for i, p := range read {
		l.open = append(l.open, p.Text)
		if p.sound {
			l.course.Pictures[p.Path] = p.picture
		}
		if p.sound && files[i].mayKeep && p.kind != "svg" {
			l.reader.photos.Put(files[i].key, p.picture)
		}
	}
}

// totals is what the pictures up to one hold together.
type totals struct{ points, outlines int }

// add counts a picture, and refuses it where it is too much.
func (t *totals) add(p *photograph) {
	most, what := 0, ""
	t.points += p.points
	if p.picture != nil && p.kind == "svg" {
		for _, f := range p.picture.Files {
			t.outlines += f.size
		}
	}
	switch {
	case p.points > 0 && t.points > mostPoints:
		most, what = mostPoints/1_000_000, "million points"
	case p.kind == "svg" && t.outlines > mostOutlineBytes:
		most, what = mostOutlineBytes>>20, "MiB of drawings"
	}
	if p.sound && what != "" {
		p.fail(finding.PictureSize, fmt.Sprintf("up to this one, all pictures together have more than %d %s", most, what), smallerHelp)
	}
}

// pictureFile is a file of the pictures folder.
type pictureFile struct {
	path    string
	size    int64 // as the disk says; 0 where it does not
	key     fileKey
	mayKeep bool // it has a key
}

// picture looks at a picture, or takes it as it was made before.
func (l *loader) picture(f pictureFile) *photograph {
	if f.mayKeep {
		if kept, ok := l.reader.photos.Get(f.key); ok {
			return &photograph{Text: source.New(f.path, nil), kind: kindOf(f.path), picture: kept, points: kept.points, sound: true}
		}
	}
	return l.readPicture(f)
}

// kindOf returns the format that the ending of a file promises; "" for none.
func kindOf(file string) string { return pictureKinds[strings.ToLower(path.Ext(file))] }

// pictureFiles lists the files of the pictures folder, up to the size that all
// may have together.
func (l *loader) pictureFiles() []pictureFile {
	var files []pictureFile
	size := int64(0)
	// Nothing stops the walk: of a folder that cannot be read, the pictures are
	// missing where they are shown.
	_ = fs.WalkDir(l.fsys, picturesFolder, func(file string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			l.unreadable(file, err)
			return fs.SkipDir
		case strings.HasPrefix(e.Name(), ".") && e.IsDir():
			return fs.SkipDir
		case strings.HasPrefix(e.Name(), ".") || e.IsDir():
			return nil
		}
		info, err := e.Info()
		own := int64(0)
		if err == nil {
			own = info.Size()
		}
		size += own
		if size > mostPictureBytes {
			l.report(file, finding.PictureSize, fmt.Sprintf("up to this one, all pictures together are larger than %d GiB", mostPictureBytes>>30), smallerHelp)
			return fs.SkipAll
		}
		key, ok := keyOf(file, info)
		files = append(files, pictureFile{file, own, key, ok})
		return nil
	})
	return files
}

var pictureName = regexp.MustCompile(`^[A-Za-z0-9]+([._-][A-Za-z0-9]+)*$`)

// photograph is a picture being read.
type photograph struct {
	*source.Text
	kind    string
	picture *Picture // nil until it is made
	points  int      // of a photo
	sound   bool     // nothing is wrong with it so far
	key     photo.Key
	head    photo.Head
	memory  int64 // that it takes to make it
}

func (p *photograph) fail(rule *finding.Rule, text, do string) *photograph {
	p.Report(-1, rule, text, do)
	p.sound = false
	return p
}

// readPicture reads one picture of a course: a drawing whole, of any other its head,
// or what was made of it before. Nothing of a photo stays in memory.
func (l *loader) readPicture(f pictureFile) *photograph {
	p := &photograph{Text: source.New(f.path, nil), kind: kindOf(f.path)}
	base := path.Base(f.path)
	stem, _, _ := strings.Cut(base, ".")
	switch {
	case p.kind == "" && phoneOnly[strings.ToLower(path.Ext(base))]:
		return p.fail(finding.PictureKind, fmt.Sprintf("many browsers cannot show a picture with the ending `%s`", path.Ext(base)), phoneHelp)
	case p.kind == "":
		return p.fail(finding.PictureKind, fmt.Sprintf("the handbook cannot show a picture with the ending `%s`", path.Ext(base)), pictureHelp)
	case !pictureName.MatchString(base):
		return p.fail(finding.IDForm, "a picture cannot have this name", "Name it with letters a to z, digits and single hyphens, such as jar-and-scale.jpg.")
	case source.IsDevice(stem):
		return p.fail(finding.IDForm, fmt.Sprintf("Windows keeps the name `%s` for itself", stem), source.DeviceHelp)
	case p.kind == "svg":
		p.picture, p.Text = readDrawing(l.fsys, f.path, l.course.Language)
	default:
		l.look(p, f)
	}
	p.sound = p.Found == nil
	return p
}
