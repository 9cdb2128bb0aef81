package course

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"image"
	_ "image/gif"
	_ "image/jpeg"
	_ "image/png"
	"io/fs"
	"path"
	"regexp"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/pool"
	"slipbook/generator/source"
)

// pictureKinds are the formats that the endings of pictures promise.
var pictureKinds = map[string]string{".svg": "svg", ".png": "png", ".jpg": "jpeg", ".jpeg": "jpeg", ".gif": "gif"}

const pictureHelp = "Save a photo as JPEG, a screen or a scan as PNG, and draw a drawing as SVG."

// What the pictures of a course may hold, far above what its pages need, so
// that reading them all takes neither a gigabyte nor ten seconds.
const (
	mostPicturePoints = 16_000_000  // of one: as a phone's camera makes them
	mostPoints        = 400_000_000 // of all together
	mostPictureBytes  = 256 << 20   // of all together
)

const smallerHelp = "Make it smaller: 1600 points are wide enough for a page, also in print."

// pictures reads the pictures folder with its folders. A course may do without.
func (l *loader) pictures() {
	files := l.pictureFiles()
	read := pool.Map(len(files), func(i int) *photo { return l.picture(files[i]) })
	points, names := 0, map[string]string{}
	for _, p := range read {
		small := strings.ToLower(p.Path)
		if other, there := names[small]; there {
			p.fail(finding.SharedAddress, fmt.Sprintf("this name differs from that of %s in capital letters alone", other), "Rename one of the two: many disks and memory sticks hold only one.")
		}
		names[small] = p.Path
		if p.sound && points+p.points() > mostPoints {
			p.Report(-1, finding.PictureSize, fmt.Sprintf("up to this one, all pictures together have more than %d million points", mostPoints/1_000_000), smallerHelp)
			p.sound = false
		}
		points += p.points()
	}
	pool.Each(len(read), func(i int) { read[i].decode() })
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

// pictureFile is a file of the pictures folder.
type pictureFile struct {
	path    string
	key     fileKey
	mayKeep bool // it has a key
}

// picture reads a picture, or takes it as it was read before.
func (l *loader) picture(f pictureFile) *photo {
	if f.mayKeep {
		if kept, ok := l.reader.photos.Get(f.key); ok {
			return &photo{Text: source.New(f.path, nil), kind: kindOf(f.path), picture: kept, sound: true, kept: true}
		}
	}
	return readPicture(l.fsys, f.path, l.course.Language)
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
		if err == nil {
			size += info.Size()
		}
		if size > mostPictureBytes {
			l.report(file, finding.PictureSize, fmt.Sprintf("up to this one, all pictures together are larger than %d MiB", mostPictureBytes>>20), smallerHelp)
			return fs.SkipAll
		}
		key, ok := keyOf(file, info)
		files = append(files, pictureFile{file, key, ok})
		return nil
	})
	return files
}

var pictureName = regexp.MustCompile(`^[A-Za-z0-9]+([._-][A-Za-z0-9]+)*$`)

// photo is a picture being read.
type photo struct {
	*source.Text
	kind    string
	picture *Picture
	sound   bool // nothing is wrong with it so far
	kept    bool // it was not read now
}

// points is how many points must be read to know that the picture is whole.
func (p *photo) points() int {
	if p.picture == nil || p.kind == "svg" {
		return 0
	}
	return p.picture.Width * p.picture.Height
}

func (p *photo) fail(rule *finding.Rule, text, do string) *photo {
	p.Report(-1, rule, text, do)
	p.sound = false
	return p
}

// readPicture reads one picture of a course in a language, all but its points.
func readPicture(fsys fs.FS, file, language string) *photo {
	p := &photo{Text: source.New(file, nil), kind: kindOf(file)}
	stem, _, _ := strings.Cut(path.Base(file), ".")
	switch {
	case p.kind == "":
		return p.fail(finding.PictureKind, fmt.Sprintf("the handbook cannot show a picture with the ending `%s`", path.Ext(file)), pictureHelp)
	case !pictureName.MatchString(path.Base(file)):
		return p.fail(finding.IDForm, "a picture cannot have this name", "Name it with letters a to z, digits and single hyphens, such as jar-and-scale.jpg.")
	case source.IsDevice(stem):
		return p.fail(finding.IDForm, fmt.Sprintf("Windows keeps the name `%s` for itself", stem), source.DeviceHelp)
	case p.kind == "svg":
		p.picture, p.Text = readDrawing(fsys, file, language)
	default:
		p.Text = source.ReadBytes(fsys, file, pictureLimit)
		p.head()
	}
	p.sound = p.Found == nil
	return p
}

// head reads the size of a picture and takes out what is not seen.
func (p *photo) head() {
	if p.Found != nil {
		return
	}
	config, format, err := image.DecodeConfig(bytes.NewReader(p.Bytes))
	switch {
	case err != nil || config.Width < 1 || config.Height < 1:
		p.damaged()
		return
	case format != p.kind:
		p.fail(finding.PictureKind, fmt.Sprintf("the name says %s, but the picture is %s", strings.ToUpper(p.kind), strings.ToUpper(format)), "Rename the file to fit, or save it again.")
		return
	case config.Width > mostPicturePoints/config.Height:
		p.fail(finding.PictureSize, fmt.Sprintf("the picture has %d × %d points, more than %d million", config.Width, config.Height, mostPicturePoints/1_000_000), smallerHelp)
		return
	}
	plain, onItsSide, err := plainPicture(p.kind, p.Bytes)
	if err != nil {
		p.damaged()
		return
	}
	p.picture = &Picture{Path: p.Path, Width: config.Width, Height: config.Height, Data: plain}
	if onItsSide {
		p.picture.Width, p.picture.Height = config.Height, config.Width
	}
}

func (p *photo) damaged() {
	p.fail(finding.PictureKind, "the picture is damaged, or not of the kind its name says", pictureHelp)
}

// decode reads the points, so that no picture is published that breaks off.
func (p *photo) decode() {
	if !p.sound || p.kept || p.kind == "svg" {
		return
	}
	digest := sha256.Sum256(p.picture.Data)
	if sound.has(digest) {
		return
	}
	if _, _, err := image.Decode(bytes.NewReader(p.picture.Data)); err != nil {
		p.damaged()
		return
	}
	sound.keep(digest, nil)
}
