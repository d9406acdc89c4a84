package layup

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/laminate"
	"stripwright/output/sheet"
)

// Mark is a place on the outline of a ply that does not cover the whole part,
// with how to find it by tape: along the net edge where it lies on it, else
// straight from two named corners.
type Mark struct {
	Name string // 1, 2, …
	At   orb.Point
	Ends [2][2]string // figure, and from where
}

// mostMarks is how many corners an outline may have to be marked at all of them;
// others are marked where they lie farthest left, down, right and up.
const mostMarks = 6

// Marks gives the marks of a ply's own outline, none for a ply over the whole
// part.
func Marks(p laminate.Plan, ply laminate.PlanPly) []Mark {
	if ply.Outline == "" || ply.Blank.Empty() || len(p.Part.Corners) < 2 {
		return nil
	}
	edge := newNetEdge(p.Part)
	places := outlineCorners(ply.Blank.Outer)
	marks := make([]Mark, len(places))
	for i, at := range places {
		marks[i].Name, marks[i].At = strconv.Itoa(i+1), at
		if t, ok := edge.on(at); ok {
			marks[i].Ends = [2][2]string{TickWords(p, t), {"on the edge", "of the finished part"}}
			continue
		}
		a, b := edge.fixBy(at)
		marks[i].Ends = [2][2]string{straightWords(p, a, at), straightWords(p, b, at)}
	}
	return marks
}

func straightWords(p laminate.Plan, c cornerAt, at orb.Point) [2]string {
	figure, beside := sheet.MarkFigure(distance(c.at, at), p.Units)
	return [2]string{figure, beforeWords(beside) + "straight from " + c.name}
}

// outlineCorners gives the corners of an outline with few, else its outermost
// points, left, low, right, high.
func outlineCorners(ring orb.Ring) []orb.Point {
	corners := sheet.Corners(ring)
	if len(corners) <= mostMarks {
		return corners
	}
	outermost := [4]orb.Point{corners[0], corners[0], corners[0], corners[0]}
	for _, p := range corners {
		for i, d := range [4]orb.Point{{-1, 0}, {0, -1}, {1, 0}, {0, 1}} {
			if dot(d, p) > dot(d, outermost[i])+onLineMM {
				outermost[i] = p
			}
		}
	}
	return outermost[:]
}

// on gives the mark along the net edge for a point that lies on it.
func (e *netEdge) on(p orb.Point) (Tick, bool) {
	for i, q := range e.ring {
		d, long := sheet.Towards(q, e.next(i)), distance(q, e.next(i))
		along, off := dot(d, minus(p, q)), cross(d, minus(p, q))
		if math.Abs(off) <= 3*onLineMM && along >= -onLineMM && along <= long+onLineMM {
			return e.tick(crossing{edge: i, s: e.start[i] + along}), true
		}
	}
	return Tick{}, false
}

// fixBy chooses the two named corners that fix a point best by two straight
// lengths: near ones whose lengths cross at a wide angle.
func (e *netEdge) fixBy(p orb.Point) (a, b cornerAt) {
	best := math.Inf(1)
	for i, one := range e.corners {
		for _, other := range e.corners[i+1:] {
			sin := math.Abs(cross(sheet.Towards(p, one.at), sheet.Towards(p, other.at)))
			worth := (distance(p, one.at) + distance(p, other.at)) / math.Max(sin*sin, 1e-6)
			if worth < best {
				best, a, b = worth, one, other
			}
		}
	}
	return a, b
}

// markPatch draws the numbers of the marks beside the outline.
func (s *plySheet) markPatch(marks []Mark) {
	l := s.s.Layer("MEASURES")
	c := s.place(s.ply.Blank.Bounds().Center())
	for _, m := range marks {
		at := s.place(m.At)
		out := sheet.Towards(c, at)
		l.Disc(sheet.Solid(sheet.Black, 0.4*s.k), sheet.Fill{Ink: sheet.White}, at, 1.2*s.k)
		t := sheet.Text{Height: 3.4 * s.k, Bold: true, Words: m.Name}
		for _, far := range []float64{6, -6, 10, -10} {
			t = t.Centred(sheet.Along(at, out, far*s.k))
			if b := t.Bounds().Pad(0.7 * s.k); s.room.tryBox(b) {
				l.Disc(sheet.Solid(sheet.Black, 0.3*s.k), sheet.Fill{Ink: sheet.White}, b.Center(), 3.6*s.k)
				l.Write(t)
				break
			}
		}
	}
}

// patchTable writes the marks in rows, from its top left corner down.
func (s *plySheet) patchTable(x, top float64, marks []Mark) {
	if len(marks) == 0 {
		return
	}
	s.head(x, top, tableWide, [4]string{"MARK", "OUTLINE " + s.ply.Outline + ":", "where it lies", ""})
	for i, m := range marks {
		s.row(x, top-8-float64(float64(i)*rowHigh), tableWide, [4][2]string{{m.Name, ""}, m.Ends[0], m.Ends[1], {"", ""}})
	}
}

// patchHigh gives the height of the table of marks in units.
func patchHigh(marks []Mark) float64 {
	if len(marks) == 0 {
		return 0
	}
	return 12 + float64(rowHigh*float64(len(marks)))
}
