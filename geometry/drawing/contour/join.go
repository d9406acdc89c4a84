package contour

import (
	"github.com/paulmach/orb"

	"stripwright/geometry/drawing/trace"
)

// DefaultGap is the gap between two ends, in mm, that is closed (and told) when
// nothing else is stated.
const DefaultGap = 0.1

// Joined is what became of a drawing's lines.
type Joined struct {
	Rings      []orb.Ring // closed contours, open form: the first point is not repeated
	Duplicates int        // lines dropped because they repeat another
	Overlaps   int        // lines cut because they lie partly on another
	Gaps       []Gap      // that were closed, wider than a hundredth
	Open       []Gap      // that were left: the contours there are open
	Branches   []orb.Point
}

// Gap lies between two ends of lines.
type Gap struct {
	From, To orb.Point
	Size     float64
}

// Join joins lines whose ends meet, whatever their order and direction, into
// closed contours. Ends within a hundredth of a millimetre are taken as one;
// a wider gap is closed up to the limit, the narrowest first: where the two
// lines would meet if they ran on, or half way. Lines that repeat another are
// dropped, and so are those shorter than a hundredth; where contours stay open
// all the same, lines that lie partly on others are cut back to what does not.
func Join(lines []trace.Line, limit float64) Joined {
	if !(limit > 0) {
		limit = DefaultGap
	}
	lines = tidy(lines)
	var once []trace.Line
	for _, i := range firsts(lines) {
		once = append(once, lines[i])
	}
	out := join(once, limit)
	if len(out.Open)+len(out.Branches) > 0 {
		if rest, cut := withoutOverlaps(once); cut > 0 {
			if again := join(rest, limit); len(again.Open)+len(again.Branches) < len(out.Open)+len(out.Branches) {
				again.Overlaps = cut
				out = again
			}
		}
	}
	out.Duplicates += len(lines) - len(once)
	return out
}

func join(lines []trace.Line, limit float64) Joined {
	j := joiner{limit: limit}
	for _, l := range lines {
		if l.Closed {
			j.addRing(l.Points)
			continue
		}
		j.lines = append(j.lines, l.Points)
	}
	j.match()
	j.walk()
	j.pairOpen()
	j.dropRepeatedRings()
	return j.out
}

// tidy marks as closed every line that ends where it began, and leaves out
// lines that are no more than a dot.
func tidy(lines []trace.Line) []trace.Line {
	out := make([]trace.Line, 0, len(lines))
	for _, l := range lines {
		n := len(l.Points)
		if n < 2 || dot(l.Points) {
			continue
		}
		if n > 2 && apart(l.Points[0], l.Points[n-1]) <= same {
			l.Closed, l.Points = true, l.Points[:n-1]
		}
		out = append(out, l)
	}
	return out
}

func dot(ps []orb.Point) bool {
	for _, p := range ps {
		if apart(p, ps[0]) > same {
			return false
		}
	}
	return true
}

// joiner holds the open lines; end 2i is the beginning of line i and end 2i+1
// its end.
type joiner struct {
	lines [][]orb.Point
	limit float64
	mate  []int // the end that each end is joined to, -1 if none
	out   Joined

	branched map[int]bool // ends where an odd number meets
}

func (j *joiner) at(end int) orb.Point {
	ps := j.lines[end/2]
	if end%2 == 0 {
		return ps[0]
	}
	return ps[len(ps)-1]
}

// inward gives the point next to an end on its line.
func (j *joiner) inward(end int) orb.Point {
	ps := j.lines[end/2]
	if end%2 == 0 {
		return ps[1]
	}
	return ps[len(ps)-2]
}

// walk follows the joined ends round and keeps every closed contour.
func (j *joiner) walk() {
	done := make([]bool, len(j.lines))
	for i := range j.lines {
		if done[i] || !j.closes(2*i, done) {
			continue
		}
		var ring orb.Ring
		for end := 2 * i; ; {
			ps := j.lines[end/2]
			for k := 1; k < len(ps)-1; k++ {
				if end%2 == 0 {
					ring = append(ring, ps[k])
				} else {
					ring = append(ring, ps[len(ps)-1-k])
				}
			}
			next := j.mate[end^1]
			ring = append(ring, j.meet(end^1, next))
			if end = next; end == 2*i {
				break
			}
		}
		j.addRing(ring)
	}
}

// closes follows the joined ends from one end until it is reached again; it
// marks the lines on the way.
func (j *joiner) closes(start int, done []bool) bool {
	for end := start; ; {
		done[end/2] = true
		next := j.mate[end^1]
		if next < 0 {
			break
		}
		if next == start {
			return true
		}
		end = next
	}
	for end := j.mate[start]; end >= 0; end = j.mate[end^1] {
		done[end/2] = true
	}
	return false
}

func (j *joiner) addRing(ps []orb.Point) {
	ring := make(orb.Ring, 0, len(ps))
	for _, p := range ps {
		if len(ring) == 0 || ring[len(ring)-1] != p {
			ring = append(ring, p)
		}
	}
	for len(ring) > 1 && ring[0] == ring[len(ring)-1] {
		ring = ring[:len(ring)-1]
	}
	j.out.Rings = append(j.out.Rings, ring)
}

// dropRepeatedRings drops contours that are there twice, drawn once as one line
// and once as several.
func (j *joiner) dropRepeatedRings() {
	plain := make([]trace.Line, len(j.out.Rings))
	for i, r := range j.out.Rings {
		plain[i] = trace.Line{Points: withoutStraight(r), Closed: true}
	}
	keep := firsts(plain)
	rings := make([]orb.Ring, 0, len(keep))
	for _, i := range keep {
		rings = append(rings, j.out.Rings[i])
	}
	j.out.Duplicates += len(j.out.Rings) - len(rings)
	j.out.Rings = rings
}

// withoutStraight leaves out the vertices at which a ring does not turn; all
// of them stay when hardly any turn.
func withoutStraight(r orb.Ring) []orb.Point {
	var out []orb.Point
	n := len(r)
	for i, p := range r {
		a, b := r[(i+n-1)%n], r[(i+1)%n]
		ux, uy, vx, vy := p[0]-a[0], p[1]-a[1], b[0]-p[0], b[1]-p[1]
		turn := float64(ux*vy) - float64(uy*vx)
		along := float64(ux*vx) + float64(uy*vy)
		if turn > same*1e-3 || turn < -same*1e-3 || along < 0 {
			out = append(out, p)
		}
	}
	if len(out) < 3 {
		return r
	}
	return out
}
