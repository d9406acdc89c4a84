package cutmap

import (
	"math"
	"sort"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// callOut names the pieces that are too small to write on, in a row over the cloth
// or under it, whichever is nearer, each with a line to its piece.
func (b *board) callOut() {
	middle := (b.low + b.high) / 2
	var over, under []laminate.Piece
	for _, piece := range b.calledOut {
		if piece.Shape.Bounds().Center()[1] >= middle {
			over = append(over, piece)
		} else {
			under = append(under, piece)
		}
	}
	if len(over) > 0 {
		b.above = 1.8 * b.k
		b.callRow(over, b.high+float64(3.9*b.k), 0)
	}
	if len(under) > 0 {
		b.below = 1.8 * b.k
		b.callRow(under, b.low-float64(3.7*b.k), b.k)
	}
}

// callRow writes one row on a base line, from the free end on, each as near to its
// piece as the one before lets it; the lines end that far above the base line.
func (b *board) callRow(pieces []laminate.Piece, y, lineEnd float64) {
	sort.SliceStable(pieces, func(i, j int) bool {
		return pieces[i].Shape.Bounds().Center()[0] < pieces[j].Shape.Bounds().Center()[0]
	})
	layer := b.s.Layer("TEXT")
	free := math.Inf(-1)
	for _, piece := range pieces {
		id := sheet.Text{Height: 0.8 * b.k, Bold: true, Words: piece.ID}
		ply := sheet.Text{Height: 0.62 * b.k, Words: plyWords(piece)}
		wide := id.Width() + float64(0.4*b.k) + ply.Width()
		at := sheet.Inside(piece.Shape)
		x := math.Max(at[0]-float64(wide/2), free)
		free = x + wide + float64(1.2*b.k)
		b.far = math.Max(b.far, free)
		layer.Stroke(sheet.Solid(sheet.Black, 0.04*b.k), at, orb.Point{x + float64(id.Width()/2), y + lineEnd - float64(0.2*b.k)})
		layer.Disc(sheet.Pen{}, sheet.Fill{Ink: sheet.Black}, at, 0.1*b.k)
		id.At, ply.At = orb.Point{x, y}, orb.Point{x + id.Width() + float64(0.4*b.k), y}
		layer.Write(id)
		layer.Write(ply)
	}
}

// legend says beside the grain arrow what hatching and grey mean, and how finely
// lengths are given.
func (b *board) legend(at orb.Point) {
	words := "hatched: offcut.  Lengths from the free end, " + sheet.MarkWords(b.plan.Units) + "."
	for _, piece := range b.l.Pieces {
		if piece.Mirrored {
			words += "  Grey: laid " + faceDown + ", drawn mirrored already: cut it as drawn."
			break
		}
	}
	t := sheet.Text{At: at, Height: 0.8 * b.k, Words: words}
	b.s.Layer("TITLE").Write(t.Fitted(b.room - at[0]))
}
