package cutmap

import (
	"math"
	"sort"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Pieces are laid out in rows apart from each other.
const (
	apartMM = 50.0
	rowMM   = 12000.0
)

// Pieces draws every piece of a plan on its own, as it is cut, face up, each a
// closed outline with its id: in rows, in the order of their ids.
func Pieces(p laminate.Plan) sheet.Scene {
	s := sheet.Scene{Title: "Pieces", About: "Every piece as it is cut, face up; unit mm. " + sheet.Verdict(p)}
	for _, layer := range cutterLayers {
		s.Layer(layer)
	}
	cuts := s.Layer(CutLayer(p))
	pen := sheet.Solid(sheet.Black, stroke)
	drawScale(s.Layer("SCALE"), pen, orb.Point{0, -20})
	writeHead(s.Layer("TEXT"), []string{sheet.Verdict(p) + "  UNIT mm  ALL PIECES FACE UP"}, orb.Point{0, -40})
	s.Box = orb.Bound{Min: orb.Point{0, -50}, Max: orb.Point{400, 0}}
	row := rowOf{}
	for _, piece := range allPieces(p) {
		b := piece.Shape.Bounds()
		move := row.next(b.Max[0]-b.Min[0], b.Max[1]-b.Min[1])
		piece.Shape = piece.Shape.Map(func(q orb.Point) orb.Point {
			return orb.Point{q[0] - b.Min[0] + move[0], q[1] - b.Min[1] + move[1]}
		})
		for _, ring := range append(append([]orb.Ring{}, piece.Shape.Holes...), piece.Shape.Outer) {
			cuts.Area(pen, sheet.Fill{}, ring...)
		}
		label(s.Layer("TEXT"), piece, 10)
		s.Box = s.Box.Union(piece.Shape.Bounds())
	}
	return s
}

// rowOf keeps where the next piece goes; whole millimetres, so that edges keep
// their micrometres.
type rowOf struct{ x, y, high float64 }

func (r *rowOf) next(w, h float64) orb.Point {
	if r.x > 0 && r.x+w > rowMM {
		r.x, r.y, r.high = 0, r.y+math.Ceil(r.high)+apartMM, 0
	}
	at := orb.Point{r.x, r.y}
	r.x += math.Ceil(w) + apartMM
	r.high = math.Max(r.high, h)
	return at
}

// allPieces lists the pieces of all rolls by ply and strip.
func allPieces(p laminate.Plan) []laminate.Piece {
	var all []laminate.Piece
	for _, r := range p.Rolls {
		for _, piece := range r.Pieces {
			if !piece.Shape.Empty() {
				all = append(all, piece)
			}
		}
	}
	sort.SliceStable(all, func(a, b int) bool { return before(all[a].ID, all[b].ID) })
	return all
}

// before orders ids by their numbers: P9-S02 before P10-S01.
func before(a, b string) bool {
	pa, sa := idNumbers(a)
	pb, sb := idNumbers(b)
	switch {
	case pa != pb:
		return pa < pb
	case sa != sb:
		return sa < sb
	}
	return a < b
}

// idNumbers reads ply and strip out of an id like P03-S02, 0 where it is not
// one.
func idNumbers(id string) (ply, strip int) {
	var numbers [2]int
	at := -1
	for i, r := range id {
		switch {
		case i == 0 && r == 'P' || r == 'S':
			at++
		case r >= '0' && r <= '9' && at >= 0 && at < 2:
			numbers[at] = numbers[at]*10 + int(r-'0')
		}
	}
	return numbers[0], numbers[1]
}

// faceDown says that a piece lies face down on the part; on the roll it is cut
// face up, and so mirrored.
const faceDown = "FACE DOWN"

// plyWords says of which ply a piece is and which face is up when it is laid.
func plyWords(piece laminate.Piece) string {
	ply, _ := idNumbers(piece.ID)
	face := "FACE UP"
	if piece.Mirrored {
		face = faceDown
	}
	return "ply " + strconv.Itoa(ply) + ", laid " + face
}
