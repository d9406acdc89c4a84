package contour

import (
	"cmp"
	"math"
	"slices"

	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// shortest is the length in mm from which a straight piece, or what is left of
// one, counts when overlaps are looked for: ends may be off by a hundredth.
const shortest = 5 * same

// mostPairs bounds the pieces held against one another; a drawing with more
// lying side by side is left as it is.
const mostPairs = 5_000_000

// straight is one straight piece of a line.
type straight struct {
	a, b       orb.Point
	minX, maxX float64
	minY, maxY float64
	line, at   int // which line, and which of its pieces
}

// interval is a stretch of a piece, by its distance from the beginning.
type interval struct{ from, to float64 }

// withoutOverlaps takes off every open line what lies on another line: on a
// closed one, or on an open one before it. A side drawn as one line and again
// as two, or half covered, is then there once. It says how many lines were cut;
// curves other than arcs count only where they are drawn with the same points.
func withoutOverlaps(lines []trace.Line) (out []trace.Line, cut int) {
	lines, cut = withoutArcOverlaps(lines)
	rest, more := withoutStraightOverlaps(lines)
	return rest, cut + more
}

func withoutStraightOverlaps(lines []trace.Line) (out []trace.Line, cut int) {
	pieces := straightPieces(lines)
	covered, ok := coveredParts(pieces, lines)
	if !ok || len(covered) == 0 {
		return lines, 0
	}
	byLine := map[int]map[int][]interval{}
	for i, parts := range covered {
		p := pieces[i]
		if byLine[p.line] == nil {
			byLine[p.line] = map[int][]interval{}
		}
		byLine[p.line][p.at] = parts
	}
	for i, l := range lines {
		if byLine[i] == nil {
			out = append(out, l)
			continue
		}
		cut++
		out = append(out, uncovered(l, byLine[i])...)
	}
	return out, cut
}

func straightPieces(lines []trace.Line) []straight {
	var out []straight
	for i, l := range lines {
		n := len(l.Points)
		for k := range n {
			a, b := l.Points[k], l.Points[(k+1)%n]
			if (k == n-1 && !l.Closed) || apart(a, b) < shortest {
				continue
			}
			out = append(out, straight{a, b, min(a[0], b[0]), max(a[0], b[0]), min(a[1], b[1]), max(a[1], b[1]), i, k})
		}
	}
	slices.SortStableFunc(out, func(p, q straight) int { return cmp.Compare(p.minX, q.minX) })
	return out
}

// coveredParts finds the stretches of pieces of open lines that lie on others,
// by the index of the piece; not ok when there are too many to look at.
func coveredParts(pieces []straight, lines []trace.Line) (covered map[int][]interval, ok bool) {
	covered = map[int][]interval{}
	var beside []int
	pairs := 0
	for i, p := range pieces {
		keep := beside[:0]
		for _, j := range beside {
			q := pieces[j]
			if q.maxX < p.minX-same {
				continue
			}
			keep = append(keep, j)
			if pairs++; pairs > mostPairs {
				return nil, false
			}
			if p.line == q.line || q.minY > p.maxY+same || p.minY > q.maxY+same {
				continue
			}
			if gives(lines, p.line, q.line) {
				addCovered(covered, i, p, q)
			} else if gives(lines, q.line, p.line) {
				addCovered(covered, j, q, p)
			}
		}
		beside = append(keep, i)
	}
	return covered, true
}

// gives says whether line a gives way to line b.
func gives(lines []trace.Line, a, b int) bool {
	return !lines[a].Closed && (lines[b].Closed || b < a)
}

// addCovered adds the stretch of p that lies on q, if there is one.
func addCovered(covered map[int][]interval, i int, p, q straight) {
	if !(off(p, q.a) <= same && off(p, q.b) <= same) && !(off(q, p.a) <= same && off(q, p.b) <= same) {
		return
	}
	u, v := p.along(q.a), p.along(q.b)
	from, to := max(0, min(u, v)), min(apart(p.a, p.b), max(u, v))
	if to-from >= shortest {
		covered[i] = append(covered[i], interval{from, to})
	}
}

// off gives the distance of a point from the endless line of a piece.
func off(p straight, at orb.Point) float64 {
	dx, dy := p.b[0]-p.a[0], p.b[1]-p.a[1]
	return math.Abs(float64(dx*(at[1]-p.a[1]))-float64(dy*(at[0]-p.a[0]))) / math.Hypot(dx, dy)
}

// along gives how far along a piece a point lies.
func (p straight) along(at orb.Point) float64 {
	dx, dy := p.b[0]-p.a[0], p.b[1]-p.a[1]
	return (float64(dx*(at[0]-p.a[0])) + float64(dy*(at[1]-p.a[1]))) / math.Hypot(dx, dy)
}

// uncovered gives what is left of an open line.
func uncovered(l trace.Line, covered map[int][]interval) []trace.Line {
	var out []trace.Line
	var run []orb.Point
	end := func() {
		if len(run) > 1 {
			rest := l
			rest.Points = run
			out = append(out, rest)
		}
		run = nil
	}
	for k := 0; k+1 < len(l.Points); k++ {
		a, b := l.Points[k], l.Points[k+1]
		long := apart(a, b)
		for _, part := range left(covered[k], long) {
			if part.from > 0 {
				end()
			}
			if len(run) == 0 {
				run = append(run, onto(a, b, part.from/long))
			}
			run = append(run, onto(a, b, part.to/long))
			if part.to < long {
				end()
			}
		}
		if len(covered[k]) > 0 && len(left(covered[k], long)) == 0 {
			end()
		}
	}
	end()
	return out
}

// left gives the stretches of a piece between those that are covered, bits at
// the ends left out.
func left(covered []interval, long float64) []interval {
	slices.SortFunc(covered, func(a, b interval) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var out []interval
	at := 0.0
	for _, c := range covered {
		if c.from-at >= shortest {
			out = append(out, interval{at, c.from})
		}
		at = max(at, c.to)
	}
	if long-at >= shortest || len(covered) == 0 {
		out = append(out, interval{at, long})
	}
	return out
}

func onto(a, b orb.Point, t float64) orb.Point {
	switch t {
	case 0:
		return a
	case 1:
		return b
	}
	return orb.Point{a[0] + float64(t*(b[0]-a[0])), a[1] + float64(t*(b[1]-a[1]))}
}
