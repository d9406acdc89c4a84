package book

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// pieces draws the pieces with id, ply and side; it gives those that are too
// small to write on. A piece that lies in two rows is lettered where most of it
// lies.
func (r *rollRow) pieces(pieces []laminate.Piece) (small []laminate.Piece) {
	band := orb.Bound{Min: orb.Point{r.from, -1e9}, Max: orb.Point{r.to, 1e9}}
	shapes := make([]geometry.Region, len(pieces))
	for i, piece := range pieces {
		class := "up"
		if piece.Mirrored {
			class = "down"
		}
		shapes[i] = clipped(piece.Shape, band)
		r.text(`<path class="`, class, `" d="`)
		r.region(shapes[i], r.at)
		r.text(`"/>`)
	}
	r.text(`<path class="cut" d="`)
	for _, piece := range pieces {
		for _, ring := range piece.Shape.Rings() {
			r.cuts(ring)
		}
	}
	r.text(`"/>`)
	for i, piece := range pieces {
		b, s := piece.Shape.Bounds(), shapes[i].Bounds()
		here, all := s.Max[0]-s.Min[0], b.Max[0]-b.Min[0]
		if 2*here < all && here < 0.4*(r.to-r.from) {
			r.goesOn(piece, shapes[i])
			continue
		}
		if !r.letter(piece, shapes[i]) {
			small = append(small, piece)
		}
	}
	return small
}

// cuts draws what of an outline lies in this row; where the row ends there is no
// cut, and no line.
func (r *rollRow) cuts(ring orb.Ring) {
	points := make([]orb.Point, len(ring))
	for i, p := range ring {
		points[i] = r.at(p)
	}
	points = plainer(points)
	row := orb.Bound{Min: orb.Point{rollLeft, -1e9}, Max: orb.Point{rollLeft + (r.to-r.from)/r.k, 1e9}}
	var line []orb.Point
	for i, p := range points {
		from, to, ok := within(p, points[(i+1)%len(points)], row)
		if !ok || len(line) > 0 && line[len(line)-1] != from {
			r.lines(line, false)
			line = nil
		}
		if ok && len(line) == 0 {
			line = append(line, from)
		}
		if ok {
			line = append(line, to)
		}
	}
	r.lines(line, false)
}

// letter writes id, and ply and side below it, into a piece; the side of one laid
// face down always.
func (r *rollRow) letter(piece laminate.Piece, shape geometry.Region) bool {
	under := plyWords(piece)
	if r.into(shape, piece.ID, under, 30, 13) {
		return true
	}
	return !piece.Mirrored && r.into(shape, piece.ID, "", 24, 13)
}

// goesOn letters the lesser part of a piece that lies in two rows, where there is
// room.
func (r *rollRow) goesOn(piece laminate.Piece, shape geometry.Region) {
	under := ""
	if piece.Mirrored {
		under = plyWords(piece)
	}
	r.into(shape, piece.ID+" …", under, 20, 13)
}

func (r *rollRow) into(shape geometry.Region, id, under string, most, least float64) bool {
	long, lines := wide(id, 1, true), 1.15
	if under != "" {
		long, lines = math.Max(long, wide(under, 0.7, true)), 2.1
	}
	at, h := sheet.Spot(shape, (long+0.3)/lines, most*lines*r.k, least*lines*r.k)
	if h == 0 {
		return false
	}
	size, c := h/lines/r.k, r.at(at)
	if under == "" {
		r.centred(c, size, "b", 0, id)
		return true
	}
	r.centred(orb.Point{c[0], c[1] - float64(0.45*size)}, size, "b", 0, id)
	r.centred(orb.Point{c[0], c[1] + float64(0.55*size)}, 0.7*size, "b", 0, under)
	return true
}

// plyWords says of which ply a piece is and which face is up when it is laid.
func plyWords(piece laminate.Piece) string {
	if piece.Mirrored {
		return "lay FACE DOWN"
	}
	return "lay face up"
}

// callOut names pieces too small to write on over the cloth, each with a line to
// it.
func (r *rollRow) callOut(small []laminate.Piece) {
	sort.SliceStable(small, func(i, j int) bool {
		return small[i].Shape.Bounds().Center()[0] < small[j].Shape.Bounds().Center()[0]
	})
	free := []float64{}
	for _, piece := range small {
		words := piece.ID
		if piece.Mirrored {
			words += " FACE DOWN"
		}
		long := wide(words, fromSize, true)
		at := r.at(sheet.Inside(piece.Shape))
		at[0] = math.Max(rollLeft+2, math.Min(at[0], across-rollRight-2))
		line := 0
		for line < len(free) && free[line] > at[0]-float64(long/2) {
			line++
		}
		if line == len(free) {
			free = append(free, 0)
		}
		x := math.Min(math.Max(at[0]-float64(long/2), free[line]), across-long-4)
		free[line] = x + long + 14
		y := -58 - float64(26*float64(line))
		r.above = math.Max(r.above, float64(26*float64(line+1))+4)
		r.text(`<path class="lead" d="`)
		r.lines([]orb.Point{at, {x + float64(long/2), y + 10}}, false)
		r.text(`"/><circle class="dot"`)
		r.attr("cx", at[0])
		r.attr("cy", at[1])
		r.text(` r="3"/>`)
		r.centred(orb.Point{x + float64(long/2), y}, fromSize, "b back", 0, words)
	}
}
