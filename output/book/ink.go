package book

import (
	"html"
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/output/sheet"
)

// ink writes SVG: everything in units of the page, to a tenth.
type ink struct{ b []byte }

func (w *ink) text(parts ...string) {
	for _, s := range parts {
		w.b = append(w.b, s...)
	}
}

// words writes text of a job so that it cannot be taken for markup.
func (w *ink) words(s string) { w.b = append(w.b, html.EscapeString(shown(s))...) }

func (w *ink) num(v float64) { w.b = appendTenths(w.b, tenths(v)) }

// pair writes x and y with a blank between.
func (w *ink) pair(p orb.Point) {
	w.num(p[0])
	w.text(" ")
	w.num(p[1])
}

// attr writes one attribute with a number.
func (w *ink) attr(name string, v float64) {
	w.text(" ", name, `="`)
	w.num(v)
	w.text(`"`)
}

func tenths(v float64) int64 { return int64(math.Round(v * 10)) }

func appendTenths(b []byte, n int64) []byte {
	if n < 0 {
		b, n = append(b, '-'), -n
	}
	b = strconv.AppendInt(b, n/10, 10)
	if n%10 != 0 {
		b = append(b, '.', byte('0'+n%10))
	}
	return b
}

// lines writes path data for points of the page; each step from the point before
// in whole tenths, so that steps do not drift. A letter that would stand again is
// left out.
func (w *ink) lines(points []orb.Point, closed bool) {
	var x, y int64
	slanted := false // the step before was
	for i, p := range points {
		nx, ny := tenths(p[0]), tenths(p[1])
		switch {
		case i == 0:
			w.text("M")
			w.step(nx, ny)
		case nx == x && ny == y:
			continue
		case ny == y:
			w.text("h")
			w.b = appendTenths(w.b, nx-x)
		case nx == x:
			w.text("v")
			w.b = appendTenths(w.b, ny-y)
		case !slanted:
			w.text("l")
			w.step(nx-x, ny-y)
		default:
			if nx >= x {
				w.text(" ")
			}
			w.step(nx-x, ny-y)
		}
		slanted = i > 0 && nx != x && ny != y
		x, y = nx, ny
	}
	if closed {
		w.text("z")
	}
}

func (w *ink) step(x, y int64) {
	w.b = appendTenths(w.b, x)
	if y >= 0 {
		w.text(" ")
	}
	w.b = appendTenths(w.b, y)
}

// fine writes path data for a region with all its points, to a thousandth of a
// unit: the edge that distances are measured along.
func (w *ink) fine(r geometry.Region, place func(orb.Point) orb.Point) {
	for _, ring := range r.Rings() {
		for i, p := range ring {
			w.text([]string{"M", "L"}[min(i, 1)])
			q := place(p)
			w.b = sheet.AppendMM(w.b, q[0])
			w.text(" ")
			w.b = sheet.AppendMM(w.b, q[1])
		}
		w.text("z")
	}
}

// offUnits is how far a drawn outline may lie off the true one, in units.
const offUnits = 0.15

// region writes path data for a region taken onto the page, without points that
// the eye cannot tell.
func (w *ink) region(r geometry.Region, place func(orb.Point) orb.Point) {
	for _, ring := range r.Rings() {
		points := make([]orb.Point, len(ring))
		for i, p := range ring {
			points[i] = place(p)
		}
		w.lines(plainer(points), true)
	}
}

// plainer leaves out points of a closed line that lie within offUnits of what
// stays, by halving at the farthest point.
func plainer(ring []orb.Point) []orb.Point {
	if len(ring) < 5 {
		return ring
	}
	far := 0
	for i, p := range ring {
		if apart(p, ring[0]) > apart(ring[far], ring[0]) {
			far = i
		}
	}
	keep := make([]bool, len(ring)+1)
	keep[0], keep[far] = true, true
	closed := append(append([]orb.Point{}, ring...), ring[0])
	halve(closed, 0, far, keep)
	halve(closed, far, len(ring), keep)
	var out []orb.Point
	for i, p := range ring {
		if keep[i] {
			out = append(out, p)
		}
	}
	return out
}

// halve keeps the point farthest off the line from one to another, and so on in
// both halves; it works through a list rather than by calling itself, as rings
// may have very many points.
func halve(line []orb.Point, from, to int, keep []bool) {
	open := [][2]int{{from, to}}
	for len(open) > 0 {
		s := open[len(open)-1]
		open = open[:len(open)-1]
		worst, at := offUnits, -1
		for i := s[0] + 1; i < s[1]; i++ {
			if off := offLine(line[i], line[s[0]], line[s[1]]); off > worst {
				worst, at = off, i
			}
		}
		if at >= 0 {
			keep[at] = true
			open = append(open, [2]int{s[0], at}, [2]int{at, s[1]})
		}
	}
}

func apart(a, b orb.Point) float64 { return math.Hypot(b[0]-a[0], b[1]-a[1]) }

// offLine gives how far p lies off the stretch from a to b.
func offLine(p, a, b orb.Point) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	t, long := 0.0, float64(dx*dx)+float64(dy*dy)
	if long > 0 {
		t = math.Max(0, math.Min(1, (float64((p[0]-a[0])*dx)+float64((p[1]-a[1])*dy))/long))
	}
	return math.Hypot(p[0]-a[0]-float64(t*dx), p[1]-a[1]-float64(t*dy))
}
