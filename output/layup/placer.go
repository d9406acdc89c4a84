package layup

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/sheet"
)

// placer keeps the room that is taken on a sheet, so that no lettering lies
// over other lettering. Turned lettering takes a chain of squares. Room is
// looked up by tiles of the sheet.
type placer struct {
	tile  float64
	taken map[[2]int][]orb.Bound
	limit *orb.Bound // nothing lies outside it; nil: no limit
}

func newPlacer(k float64) *placer {
	return &placer{tile: 25 * k, taken: map[[2]int][]orb.Bound{}}
}

// try takes the room of all texts together, if it is free.
func (p *placer) try(texts ...sheet.Text) bool {
	var boxes []orb.Bound
	for _, t := range texts {
		boxes = append(boxes, chain(t)...)
	}
	for _, b := range boxes {
		if !p.free(b) {
			return false
		}
	}
	for _, b := range boxes {
		p.take(b)
	}
	return true
}

// tryBox takes a box, if it is free.
func (p *placer) tryBox(b orb.Bound) bool {
	if !p.free(b) {
		return false
	}
	p.take(b)
	return true
}

func (p *placer) tiles(b orb.Bound, visit func([2]int) bool) bool {
	x1, y1 := int(math.Floor(b.Max[0]/p.tile)), int(math.Floor(b.Max[1]/p.tile))
	for x := int(math.Floor(b.Min[0] / p.tile)); x <= x1; x++ {
		for y := int(math.Floor(b.Min[1] / p.tile)); y <= y1; y++ {
			if !visit([2]int{x, y}) {
				return false
			}
		}
	}
	return true
}

// inside says whether a box lies within the limit.
func (p *placer) inside(b orb.Bound) bool {
	return p.limit == nil || p.limit.Contains(b.Min) && p.limit.Contains(b.Max)
}

func (p *placer) free(b orb.Bound) bool {
	if !p.inside(b) {
		return false
	}
	return p.tiles(b, func(tile [2]int) bool {
		for _, other := range p.taken[tile] {
			if b.Min[0] < other.Max[0] && other.Min[0] < b.Max[0] && b.Min[1] < other.Max[1] && other.Min[1] < b.Max[1] {
				return false
			}
		}
		return true
	})
}

func (p *placer) take(b orb.Bound) {
	p.tiles(b, func(tile [2]int) bool {
		p.taken[tile] = append(p.taken[tile], b)
		return true
	})
}

// chain covers a text with boxes: one where it lies straight, squares along it
// where it is turned.
func chain(t sheet.Text) []orb.Bound {
	if math.Mod(t.Turn, 90) == 0 {
		return []orb.Bound{t.Bounds()}
	}
	sin, cos := math.Sincos(t.Turn * math.Pi / 180)
	d, square := orb.Point{cos, sin}, orb.Point{0.65 * t.Height, 0.65 * t.Height}
	start, w := t.Start(), t.Width()
	n := int(math.Ceil(w/(0.7*t.Height))) + 1
	boxes := make([]orb.Bound, n)
	for i := range boxes {
		along, up := w*float64(i)/float64(n-1), t.Height/2
		c := sheet.Beside(start, d, along, up)
		boxes[i] = orb.Bound{Min: sheet.Along(c, square, -1), Max: sheet.Along(c, square, 1)}
	}
	return boxes
}
