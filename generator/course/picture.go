package course

import (
	"bytes"
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

const picturesFolder = "pictures"

// pictureKinds gives the format that a picture's ending promises.
var pictureKinds = map[string]string{".svg": "svg", ".png": "png", ".jpg": "jpeg", ".jpeg": "jpeg", ".gif": "gif"}

const pictureHelp = "Save a photo as JPEG, a screen or a scan as PNG, and draw a drawing as SVG."

// pictures reads the pictures folder with its folders. A course may do without.
func (l *loader) pictures() {
	var files []string
	// Nothing stops the walk: of a folder that cannot be read, the pictures are
	// missing where they are shown.
	_ = fs.WalkDir(l.fsys, picturesFolder, func(file string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			l.unreadable(file, err)
			return fs.SkipDir
		case strings.HasPrefix(e.Name(), ".") && e.IsDir():
			return fs.SkipDir
		case !strings.HasPrefix(e.Name(), ".") && !e.IsDir():
			files = append(files, file)
		}
		return nil
	})
	sources := make([]*source.Text, len(files))
	pictures := pool.Map(len(files), func(i int) (p *Picture) {
		p, sources[i] = readPicture(l.fsys, files[i], l.course.Language)
		return p
	})
	l.open = append(l.open, sources...)
	for i, p := range pictures {
		if p != nil {
			l.course.Pictures[files[i]] = p
		}
	}
}

var pictureName = regexp.MustCompile(`^[A-Za-z0-9]+([._-][A-Za-z0-9]+)*$`)

// readPicture reads one picture of a course in a language; it is nil when the source has an error.
func readPicture(fsys fs.FS, file, language string) (*Picture, *source.Text) {
	ending := path.Ext(file)
	kind := pictureKinds[strings.ToLower(ending)]
	switch {
	case kind == "":
		s := source.New(file, nil)
		s.Report(-1, finding.PictureKind, fmt.Sprintf("the handbook cannot show a picture with the ending `%s`", ending), pictureHelp)
		return nil, s
	case !pictureName.MatchString(path.Base(file)):
		s := source.New(file, nil)
		s.Report(-1, finding.IDForm, "a picture cannot have this name", "Name it with letters a to z, digits and single hyphens, such as jar-and-scale.jpg.")
		return nil, s
	case kind == "svg":
		return readDrawing(fsys, file, language)
	}
	s := source.ReadBytes(fsys, file, pictureLimit)
	if s.Found != nil {
		return nil, s
	}
	config, format, err := image.DecodeConfig(bytes.NewReader(s.Bytes))
	switch {
	case err != nil || config.Width < 1 || config.Height < 1:
		s.Report(-1, finding.PictureKind, "the picture is damaged, or not of the kind its name says", pictureHelp)
		return nil, s
	case format != kind:
		s.Report(-1, finding.PictureKind, fmt.Sprintf("the name says %s, but the picture is %s", strings.ToUpper(kind), strings.ToUpper(format)), "Rename the file to fit, or save it again.")
		return nil, s
	}
	return &Picture{Path: file, Width: config.Width, Height: config.Height, Data: s.Bytes}, s
}
