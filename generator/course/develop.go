package course

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"slipbook/generator/finding"
	"slipbook/generator/photo"
	"slipbook/generator/source"
)

// phoneOnly are endings of photos that a phone shows and few browsers do.
var phoneOnly = map[string]bool{".heic": true, ".heif": true, ".avif": true}

// look reads a photo to know its size and whether it was made before. Its bytes are
// dropped again: those of all photos of a course may be more than the memory.
func (l *loader) look(p *photograph, f pictureFile) {
	defer l.reader.Lab.Reserve(min(f.size, pictureLimit))()
	p.Text = source.ReadBytes(l.fsys, f.path, pictureLimit)
	data := p.Bytes
	p.Bytes = nil
	if p.Found != nil {
		return
	}
	p.key = photo.KeyOf(data)
	if made, ok := l.reader.Lab.Known(p.key); ok && photo.KindOf(data) == p.kind {
		p.points, p.picture = made.Points, l.pictureOf(p, made)
		return
	}
	h, err := photo.Look(data)
	p.head, p.points, p.memory = h, h.Points(), int64(len(data))+h.Memory
	p.judge(h, err)
}

// judge refuses a picture by its head.
func (p *photograph) judge(h photo.Head, err error) {
	switch {
	case h.Kind == "heic" || h.Kind == "avif":
		p.fail(finding.PictureKind, fmt.Sprintf("the name says %s, but the picture is %s, which many browsers cannot show", strings.ToUpper(p.kind), strings.ToUpper(h.Kind)), phoneHelp)
	case err != nil:
		p.damaged(err)
	case h.Kind != p.kind:
		p.fail(finding.PictureKind, fmt.Sprintf("the name says %s, but the picture is %s", strings.ToUpper(p.kind), strings.ToUpper(h.Kind)), "Rename the file to fit, or save it again.")
	case h.TooLarge():
		p.fail(finding.PictureSize, fmt.Sprintf("the picture has %d × %d points, more than %d million or more than 30,000 in a row", h.Width, h.Height, photo.MostPoints/1_000_000), smallerHelp)
	case h.Memory > photo.MostMemory && h.Progressive:
		p.fail(finding.PictureSize, fmt.Sprintf("a progressive JPEG of %d × %d points takes too much memory to read", h.Width, h.Height), "Save it without “progressive”, or make it smaller: 1600 points are wide enough for a page.")
	case h.Memory > photo.MostMemory:
		p.fail(finding.PictureSize, fmt.Sprintf("a picture of %d × %d points of this kind takes too much memory to read", h.Width, h.Height), "Save it as JPEG, or make it smaller: 1600 points are wide enough for a page.")
	}
}

func (p *photograph) damaged(err error) {
	text := "the picture is damaged, or not of the kind its name says"
	if said := strings.TrimPrefix(err.Error(), photo.ErrDamaged.Error()); said != "" {
		text += said
	}
	p.fail(finding.PictureKind, text, "Copy it anew from the phone or the camera. "+pictureHelp)
}

// develop makes the files of a photo, if they were not made before: then it is known
// that no photo is published that breaks off.
func (l *loader) develop(p *photograph) {
	if !p.sound || p.picture != nil {
		return
	}
	defer l.reader.Lab.Reserve(p.memory)()
	data, err := l.again(p.Path)
	if err == nil && photo.KeyOf(data) != p.key {
		err = errors.New("it was changed while it was read; do it again")
	}
	if err != nil {
		p.fail(finding.Unreadable, "the picture cannot be read: "+source.Reason(err), "Check its name and who may read it.")
		return
	}
	made, err := l.reader.Lab.Make(p.head, data)
	if err != nil {
		p.damaged(err)
		return
	}
	p.picture = l.pictureOf(p, made)
}

// again reads a photo once more.
func (l *loader) again(file string) ([]byte, error) {
	t := source.ReadBytes(l.fsys, file, pictureLimit)
	if t.Found != nil {
		return nil, errors.New(t.Found[0].Text)
	}
	return t.Bytes, nil
}

// pictureOf is a photo of which files were made. They are read when somebody asks,
// which may be after the content folder was closed.
func (l *loader) pictureOf(p *photograph, made *photo.Made) *Picture {
	picture := &Picture{Path: p.Path, Width: made.Width, Height: made.Height, points: made.Points}
	read := l.reader.Again
	if read == nil {
		fsys := l.fsys
		read = func(file string) ([]byte, error) { return fs.ReadFile(fsys, file) }
	}
	lab, key, file := &l.reader.Lab, p.key, p.Path
	for n, v := range made.Versions {
		picture.Files = append(picture.Files, PictureFile{Width: v.Width, Ending: v.Ending, Sum: v.Sum, size: v.Size,
			data: func() ([]byte, error) { return lab.File(key, n, func() ([]byte, error) { return read(file) }) }})
	}
	return picture
}
