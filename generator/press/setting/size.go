package setting

import (
	"slipbook/generator/markup"
	"slipbook/generator/proof"
)

// ownBlock is how many bytes a block is thought to take beside its words.
const ownBlock = 600

// ownAnswer is how many bytes an answer of a question is thought to take.
const ownAnswer = 300

// Size is the size of words of a page with the drawings that stand in them.
func Size(page *proof.Page, pieces []markup.Piece) int {
	size := 0
	for _, p := range pieces {
		size += len(p.HTML)
		switch {
		case p.Block != nil:
			size += ownBlock + Size(page, p.Block.Pieces)
			if q := p.Block.Ask; q != nil {
				size += len(q.Answers) * ownAnswer // told there, and apart on paper
			}
		case p.Ref != nil && p.Ref.Kind == markup.PictureRef:
			size += len(page.Targets[p.Ref.Number].Picture.SVG)
		}
	}
	return size
}
