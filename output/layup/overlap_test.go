package layup

import (
	"testing"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/internal/handmade"
	"stripwright/output/sheet"
)

// No lettering of a drawing lies over other lettering: measures, corners,
// strips and joints. (A turned width under its id is left out: squares along
// both are wider than the letters.)
func TestNoLetteringOverlaps(t *testing.T) {
	for name, p := range map[string]laminate.Plan{
		"hatch": handmade.Hatch(), "disc": handmade.Disc(), "inch": handmade.Inch(), "small": handmade.Small(),
		"tape": handmade.Plate(4, 3000, 2000, 100), "batten": handmade.Batten(),
	} {
		measured := Measure(p)
		for i := range p.Plies {
			scene := Ply(p, i, measured[i], handmade.Hash)
			var boxes []orb.Bound
			var texts []string
			var last sheet.Text
			for _, layer := range []string{"MEASURES", "TEXT", "DATUM"} {
				for _, text := range scene.Layer(layer).Texts {
					for _, b := range chain(text) {
						shrunk := b.Pad(-0.02 * (b.Max[1] - b.Min[1]))
						for k, other := range boxes {
							under := last.Turn == text.Turn && text.Turn != 0 && texts[k] == last.Words
							if texts[k] != text.Words && !under && overlap(shrunk, other) {
								t.Errorf("%s ply %d: %q lies over %q", name, i+1, text.Words, texts[k])
							}
						}
						boxes, texts = append(boxes, shrunk), append(texts, text.Words)
					}
					last = text
				}
			}
			if len(texts) < len(p.Plies[i].Strips) {
				t.Errorf("%s ply %d: %d texts on a drawing of %d strips", name, i+1, len(texts), len(p.Plies[i].Strips))
			}
		}
	}
}

func overlap(a, b orb.Bound) bool {
	return a.Min[0] < b.Max[0] && b.Min[0] < a.Max[0] && a.Min[1] < b.Max[1] && b.Min[1] < a.Max[1]
}

// The datum's pennant looks the same neither mirrored nor turned.
func TestPennantIsUnsymmetric(t *testing.T) {
	b := newBoard(handmade.Hatch(), "")
	b.pennant(orb.Point{})
	points := b.s.Layer("DATUM").Shapes[0].Lines[0].Points
	same := func(f func(orb.Point) orb.Point) bool {
		for _, p := range points {
			if !nearAnyPoint(points, f(p)) {
				return false
			}
		}
		return true
	}
	box := sheet.Shape{Lines: []sheet.Line{{Points: points}}}.Lines[0]
	w, h := box.Points[2][0], box.Points[1][1]
	if same(func(p orb.Point) orb.Point { return orb.Point{w - p[0], p[1]} }) ||
		same(func(p orb.Point) orb.Point { return orb.Point{p[0], h - p[1]} }) ||
		same(func(p orb.Point) orb.Point { return orb.Point{w - p[0], h - p[1]} }) {
		t.Error("the datum's mark cannot be told from its mirror image")
	}
}
