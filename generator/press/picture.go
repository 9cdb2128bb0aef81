package press

import (
	"crypto/sha256"
	"encoding/base32"
	"path"
	"strings"

	"slipbook/generator/course"
)

// PictureAddress gives the address of a picture that is not drawn into its
// page. The name is made from the content, so that a browser may keep the file
// for ever. It is empty for a drawing and for a path that Picture does not
// find.
func (p *Press) PictureAddress(file string) string { return p.pictures[file] }

// pictureAddress makes the address of a picture's file.
func pictureAddress(picture *course.Picture) string {
	sum := sha256.Sum256(picture.Data)
	ext := path.Ext(picture.Path)
	name := strings.TrimSuffix(path.Base(picture.Path), ext)
	return "pictures/" + name + "-" + base32.StdEncoding.EncodeToString(sum[:5]) + ext
}

// shownPictures gives the files of the pictures that pages show beside their
// words, by address. Drawings are part of their pages already.
func (i *impression) shownPictures() map[string][]byte {
	files := make(map[string][]byte)
	for _, d := range i.documents {
		for _, file := range d.Shown {
			if address := i.pictures[file]; address != "" {
				files[address] = i.course.Pictures[file].Data
			}
		}
	}
	return files
}
