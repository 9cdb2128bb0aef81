package press

import (
	"slipbook/generator/address"
	"slipbook/generator/course"
	"slipbook/generator/markup"
)

// shownPictures returns the files of the pictures that pages show beside their
// words, and of those that show what goes wrong, by address. Drawings are part of their pages already. What stands in notes
// for teaching alone is no part of a students' copy: whoever guessed its address
// would find it.
func (i *impression) shownPictures() map[string]course.PictureFile {
	files := make(map[string]course.PictureFile)
	for _, page := range i.reading.Pages {
		hidden := map[int]bool{}
		if !i.forTeaching {
			for _, b := range page.Document.Named(markup.TeachingBlock) {
				picturesIn(b.Pieces, hidden)
			}
		}
		for n, t := range page.Targets {
			if t.Picture == nil || hidden[n] {
				continue
			}
			for _, f := range t.Picture.Files {
				files[address.OfPicture(t.Picture, f)] = f
			}
		}
	}
	for _, picture := range i.listedPictures() {
		for _, f := range picture.Files {
			files[address.OfPicture(picture, f)] = f
		}
	}
	return files
}

// listedPictures are those that no lesson need show: of what goes wrong, and of tiles.
func (i *impression) listedPictures() []*course.Picture {
	shown := i.register.Pictures()
	for _, f := range i.course.Faults {
		if picture := i.course.Pictures[f.Picture]; picture != nil {
			shown = append(shown, picture)
		}
	}
	return shown
}

// picturesIn notes the references to pictures in pieces and in the blocks among them.
func picturesIn(pieces []markup.Piece, found map[int]bool) {
	for _, p := range pieces {
		switch {
		case p.Block != nil:
			picturesIn(p.Block.Pieces, found)
		case p.Ref != nil && p.Ref.Kind == markup.PictureRef:
			found[p.Ref.Number] = true
		}
	}
}
