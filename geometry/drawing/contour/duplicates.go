package contour

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// same is the distance in mm within which two drawn points are one: a hundredth
// is below anything that is cut, and above the rounding of drawing programs.
const same = 0.01

// cell is a square of a grid that ends are looked up in.
type cell [2]int64

func cellOf(p orb.Point, size float64) cell {
	return cell{int64(math.Floor(p[0] / size)), int64(math.Floor(p[1] / size))}
}

// around lists the cell and the eight about it.
func (c cell) around() [9]cell {
	var out [9]cell
	for i := range out {
		out[i] = cell{c[0] + int64(i%3) - 1, c[1] + int64(i/3) - 1}
	}
	return out
}

func apart(a, b orb.Point) float64 { return math.Hypot(a[0]-b[0], a[1]-b[1]) }

// firsts gives the index of every line that does not repeat one before it, in
// either direction.
func firsts(lines []trace.Line) (kept []int) {
	seen := map[cell][]int{} // lines kept, by the cell of their lower end
	for i, l := range lines {
		c := cellOf(lowEnd(l), 2*same)
		if !repeats(l, lines, seen, c) {
			seen[c] = append(seen[c], i)
			kept = append(kept, i)
		}
	}
	return kept
}

// mostLooked bounds how many lines in one place a line is held against: more
// only lie so close in a hostile file.
const mostLooked = 60

func repeats(l trace.Line, lines []trace.Line, seen map[cell][]int, c cell) bool {
	looked := 0
	for _, near := range c.around() {
		for _, i := range seen[near] {
			if looked++; looked > mostLooked {
				return false
			}
			if sameRun(l, lines[i]) {
				return true
			}
		}
	}
	return false
}

// lowEnd gives the point a line is looked up by, whichever way it runs: the
// lower end, or the lowest point of a closed line.
func lowEnd(l trace.Line) orb.Point {
	ps := []orb.Point{l.Points[0], l.Points[len(l.Points)-1]}
	if l.Closed {
		ps = l.Points
	}
	low := ps[0]
	for _, p := range ps[1:] {
		if p[1] < low[1]-same || (p[1] < low[1]+same && p[0] < low[0]) {
			low = p
		}
	}
	return low
}

// sameRun says whether two lines have the same points, there or back; a closed
// one may begin anywhere.
func sameRun(a, b trace.Line) bool {
	if len(a.Points) != len(b.Points) || a.Closed != b.Closed {
		return false
	}
	n := len(a.Points)
	starts := []int{0, n - 1}
	if a.Closed {
		starts = nil
		for i, p := range b.Points {
			if apart(p, a.Points[0]) <= same && len(starts) < 8 {
				starts = append(starts, i)
			}
		}
	}
	for _, start := range starts {
		for _, step := range []int{1, n - 1} {
			if sameFrom(a.Points, b.Points, start, step) {
				return true
			}
		}
	}
	return false
}

func sameFrom(a, b []orb.Point, start, step int) bool {
	n := len(a)
	for i, j := 0, start; i < n; i, j = i+1, (j+step)%n {
		if apart(a[i], b[j]) > same {
			return false
		}
	}
	return true
}
