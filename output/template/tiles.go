package template

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/output/page"
	"stripwright/output/sheet"
)

// Measures in mm.
const (
	overlap  = 10.0 // of neighbouring sheets
	headHigh = 13.0
	around   = 5.0 // paper beyond the subject
)

// grid is how sheets of one size cover a subject, from its lower left corner.
type grid struct {
	size       page.Size
	low        orb.Point
	wide, high float64 // what a sheet shows
	cols, rows int
}

// gridOf takes the paper upright or across, whichever takes fewer sheets.
func gridOf(s subject, size page.Size) grid {
	up, across := gridOn(s, size), gridOn(s, size.Across())
	if across.cols*across.rows < up.cols*up.rows {
		return across
	}
	return up
}

func gridOn(s subject, size page.Size) grid {
	g := grid{size: size, low: sheet.Along(s.box.Min, orb.Point{-1, -1}, around)}
	g.wide, g.high = size.Inner(), size.High-2*page.Margin-headHigh
	g.cols = count(s.box.Max[0]-s.box.Min[0]+2*around, g.wide)
	g.rows = count(s.box.Max[1]-s.box.Min[1]+2*around, g.high)
	return g
}

func count(long, shown float64) int {
	return max(1, int(math.Ceil((long-overlap)/(shown-overlap))))
}

// window gives what of the subject a sheet shows.
func (g grid) window(col, row int) orb.Bound {
	low := orb.Point{
		g.low[0] + float64(float64(col)*(g.wide-overlap)), g.low[1] + float64(float64(row)*(g.high-overlap)),
	}
	return orb.Bound{Min: low, Max: orb.Point{low[0] + g.wide, low[1] + g.high}}
}

// used says whether a line of the subject runs over a sheet.
func (s subject) used(w orb.Bound) bool {
	for _, o := range s.lines {
		for _, ring := range o.region.Rings() {
			for i, p := range ring {
				if _, _, ok := within(p, ring[(i+1)%len(ring)], w); ok {
					return true
				}
			}
		}
	}
	for _, j := range s.joints {
		if _, _, ok := within(j.from, j.to, w); ok {
			return true
		}
	}
	return false
}

// within gives what of a straight line lies in a box (Liang and Barsky, 1984).
func within(p, q orb.Point, b orb.Bound) (from, to orb.Point, ok bool) {
	low, high := 0.0, 1.0
	for axis := range 2 {
		d := q[axis] - p[axis]
		for _, side := range [2][2]float64{{-d, p[axis] - b.Min[axis]}, {d, b.Max[axis] - p[axis]}} {
			switch {
			case side[0] == 0 && side[1] < 0:
				return from, to, false
			case side[0] < 0:
				low = math.Max(low, side[1]/side[0])
			case side[0] > 0:
				high = math.Min(high, side[1]/side[0])
			}
		}
	}
	if low > high {
		return from, to, false
	}
	return sheet.Between(p, q, low), sheet.Between(p, q, high), true
}
