package list

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// cutListHead names the columns of the cut list.
var cutListHead = []string{
	"roll", "copy", "cut_order", "piece", "ply", "laid", "fabric",
	"from_mm", "to_mm", "across_from_mm", "across_to_mm", "width_mm", "length_mm",
	"right_edge_from_mm", "right_edge_to_mm", "right_edge_mm",
	"left_edge_from_mm", "left_edge_to_mm", "left_edge_mm",
	"free_end_angle_deg", "far_end_angle_deg", "ends", "corners_along_by_across_mm", "holes",
	"turned_deg", "mirrored", "from_in", "to_in", "width_in",
}

// CutList gives the cut list as CSV, roll by roll in cutting order, usable with
// a tape measure alone.
//
// Running lengths count from the roll's free end, widths from the right-hand
// edge of the usable width, standing at the free end and looking along the
// roll, face up. The two edges that run along the roll are given by where they
// begin and end. An end angle is the one inside the piece between its right
// edge and the end: 90 is square. Ends are "straight" where each end is one cut,
// "shaped" where not, then without angles, but with each corner of the outline as
// its running length by its width, up to mostCorners; an outline with more is
// curved: the cut map must be followed. Lengths are given to 0.1 mm.
func CutList(p laminate.Plan) ([]byte, error) {
	faces := map[string]laminate.PlanPly{}
	for _, ply := range p.Plies {
		for _, s := range ply.Strips {
			faces[s.ID] = ply
		}
	}
	rows := [][]string{cutListHead}
	for _, r := range p.Rolls {
		for _, piece := range inCutOrder(r.Pieces) {
			rows = append(rows, cutRow(r, piece, faces[piece.ID]))
		}
	}
	return write(rows)
}

// write gives rows as CSV with the line ends of RFC 4180.
func write(rows [][]string) ([]byte, error) {
	var b bytes.Buffer
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	if err := w.WriteAll(rows); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func inCutOrder(pieces []laminate.Piece) []laminate.Piece {
	out := append([]laminate.Piece{}, pieces...)
	sortPieces(out)
	return out
}

func cutRow(r laminate.PlanRoll, piece laminate.Piece, ply laminate.PlanPly) []string {
	c := shapeOf(piece.Shape.Outer)
	laid := "face up"
	if ply.Face == laminate.FaceDown {
		laid = "face down"
	}
	row := []string{
		named("roll", r.Roll), strconv.Itoa(r.Copy), strconv.Itoa(piece.CutOrder), piece.ID,
		strconv.Itoa(ply.Ply), laid, named("fabric", r.Fabric),
		mm(c.from), mm(c.to), mm(c.low), mm(c.high), mm(c.high - c.low), mm(c.to - c.from),
	}
	for _, e := range [2]edge{c.right, c.left} {
		row = append(row, mm(e.from), mm(e.to), mm(e.long))
	}
	ends := "shaped"
	if c.straight {
		ends = "straight"
	}
	row = append(row, c.angle(c.freeDeg), c.angle(c.farDeg), ends, c.corners(piece.Shape.Outer), strconv.Itoa(len(piece.Shape.Holes)))
	return append(row, strconv.Itoa(piece.Turned), yesNo(piece.Mirrored),
		inch(c.from), inch(c.to), inch(c.high-c.low))
}

// named writes a name of the job behind a plain word; see the package comment.
func named(word, name string) string { return word + " " + name }

func yesNo(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

func mm(v float64) string   { return number(v, 1) }
func inch(v float64) string { return number(v/25.4, 3) }

func number(v float64, decimals int) string {
	scale := math.Pow10(decimals)
	return strconv.FormatFloat(math.Round(v*scale)/scale+0, 'f', -1, 64)
}

// edge is a long edge of a piece: what of its outline runs along the roll there,
// from and to, and how long that is in all. A point has no length.
type edge struct{ from, to, long float64 }

// cutShape is a piece as a tape measure sees it.
type cutShape struct {
	from, to, low, high float64
	right, left         edge
	straight            bool
	freeDeg, farDeg     float64
}

func (c cutShape) angle(deg float64) string {
	if !c.straight {
		return ""
	}
	return number(deg, 2)
}

// mostCorners is how many corners of a shaped piece are marked by tape.
const mostCorners = 16

// corners lists the corners of a shaped piece, "12.5 by 300; …".
func (c cutShape) corners(ring orb.Ring) string {
	corners := sheet.Corners(ring)
	if c.straight {
		return ""
	}
	if len(corners) > mostCorners {
		return "curved: follow the cut map"
	}
	words := make([]string, len(corners))
	for i, p := range corners {
		words[i] = mm(p[0]) + " by " + mm(p[1])
	}
	return strings.Join(words, "; ")
}

// edgeMM is how far off the edge of its own box a long edge may lie: outlines
// are rounded to 0.001 mm.
const edgeMM = 0.005

// shapeOf reads the long edges and end angles off an outline.
func shapeOf(ring orb.Ring) cutShape {
	b := ring.Bound()
	c := cutShape{from: b.Min[0], to: b.Max[0], low: b.Min[1], high: b.Max[1]}
	c.right, c.left = longEdge(ring, c.low), longEdge(ring, c.high)
	c.straight = c.high-c.low > edgeMM
	for _, p := range ring {
		c.straight = c.straight && (c.onLongEdge(p) || c.onEnd(p, c.right.from, c.left.from) || c.onEnd(p, c.right.to, c.left.to))
	}
	whole := c.right.to - c.right.from - c.right.long + c.left.to - c.left.from - c.left.long
	c.straight = c.straight && whole <= edgeMM
	if c.straight {
		c.freeDeg = math.Atan2(c.high-c.low, c.left.from-c.right.from) * 180 / math.Pi
		c.farDeg = math.Atan2(c.high-c.low, c.right.to-c.left.to) * 180 / math.Pi
	}
	return c
}

func (c cutShape) onLongEdge(p orb.Point) bool {
	return math.Abs(p[1]-c.low) <= edgeMM || math.Abs(p[1]-c.high) <= edgeMM
}

// onEnd says whether a point lies on the straight end from the right edge to the
// left edge.
func (c cutShape) onEnd(p orb.Point, right, left float64) bool {
	u := right + (left-right)*(p[1]-c.low)/(c.high-c.low)
	return math.Abs(p[0]-u) <= edgeMM*math.Hypot(1, (left-right)/(c.high-c.low))
}

func longEdge(ring orb.Ring, v float64) edge {
	e := edge{from: math.Inf(1), to: math.Inf(-1)}
	on := func(p orb.Point) bool { return math.Abs(p[1]-v) <= edgeMM }
	for i, p := range ring {
		if !on(p) {
			continue
		}
		e.from, e.to = math.Min(e.from, p[0]), math.Max(e.to, p[0])
		if q := ring[(i+1)%len(ring)]; on(q) {
			e.long += math.Abs(q[0] - p[0])
		}
	}
	return e
}
