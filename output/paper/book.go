package paper

import (
	"stripwright/laminate"
	"stripwright/output/cutmap"
	"stripwright/output/layup"
	"stripwright/output/page"
	"stripwright/output/sheet"
)

// Sheets composes the lay-up book on a size of paper: cover, plies from the tool
// up, rolls, kit cards, record, cautions. Measured is what layup.Measure gives;
// sha the hash of the plan whose beginning stands on every page.
func Sheets(p laminate.Plan, measured []layup.PlyMeasures, sha string, size page.Size) []sheet.Scene {
	b := newPress(p, measured, sha, size)
	lay := layoutOf(p, size)
	for i := range p.Plies {
		b.plyPages(i, lay)
	}
	b.rollPages(cutmap.Lengths(p))
	b.kitPages()
	b.recordPages()
	b.cautionPages()
	front := b.coverPages(0)
	front = b.coverPages(len(front))
	pages := append(front, b.pages...)
	page.Number(pages, "lay-up sheets")
	return page.Scenes(pages)
}

func newPress(p laminate.Plan, measured []layup.PlyMeasures, sha string, size page.Size) *press {
	return &press{plan: p, measured: measured, sha: sha, size: size, cut: cutOf(p), starts: map[string]int{}}
}
