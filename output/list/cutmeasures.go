package list

import (
	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// CutMeasures are what a piece is marked by with a tape measure, in mm: across
// the roll from its right-hand edge, and where each long edge begins and ends
// along it. With both ends straight, their angles inside the piece between its
// right edge and the end: 90 is square. A shaped piece has its corners instead,
// along by across, or none where it is curved.
type CutMeasures struct {
	Across, Right, Left [2]float64
	Straight            bool
	FreeDeg, FarDeg     float64
	Corners             []orb.Point
}

// CutMeasuresOf measures a piece as the cut list does.
func CutMeasuresOf(piece laminate.Piece) CutMeasures {
	c := shapeOf(piece.Shape.Outer)
	corners := sheet.Corners(piece.Shape.Outer)
	if c.straight || len(corners) > mostCorners {
		corners = nil
	}
	return CutMeasures{
		Corners: corners,
		Across:  [2]float64{c.low, c.high}, Right: [2]float64{c.right.from, c.right.to}, Left: [2]float64{c.left.from, c.left.to},
		Straight: c.straight, FreeDeg: c.freeDeg, FarDeg: c.farDeg,
	}
}
