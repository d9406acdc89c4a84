package layup

import (
	"sort"

	"github.com/paulmach/orb"

	"stripwright/laminate"
)

// Line is a closed line round the part that joints are measured along, with the
// named corners as they lie on it: the net edge, or a line beside it.
type Line struct {
	Words string // what it is: "the net edge (finished part)"
	edge  *netEdge
}

// NetLine gives the net edge.
func NetLine(part laminate.PlanPart) Line {
	return Line{"the net edge (finished part)", newNetEdge(part)}
}

// LineAlong gives any other line: a ring that runs anticlockwise, with corners on
// it or near it.
func LineAlong(words string, ring orb.Ring, corners []laminate.Corner) Line {
	return Line{words, newEdge(ring, corners)}
}

// Stretch is the line from one named corner to the next, anticlockwise; with one
// corner alone, all round.
type Stretch struct {
	From, To string
	Long     float64 // mm along the line
	Points   []orb.Point
	start    float64
}

// Name is what the stretch is called: "A-B".
func (s Stretch) Name() string { return s.From + "-" + s.To }

// Stretches lists the stretches of the line from the datum on.
func (l Line) Stretches() []Stretch {
	n := len(l.edge.corners)
	first := 0
	for i, c := range l.edge.corners {
		if c.at == l.edge.datum {
			first = i
		}
	}
	out := make([]Stretch, 0, n)
	for k := range n {
		a, b := l.edge.corners[(first+k)%n], l.edge.corners[(first+k+1)%n]
		s := Stretch{From: a.name, To: b.name, Long: around(b.s-a.s, l.edge.long), start: a.s}
		if n == 1 {
			s.Long = l.edge.long
		}
		s.Points = l.edge.points(a.s, s.Long)
		out = append(out, s)
	}
	return out
}

// points gives the ring from a place on it over a length.
func (e *netEdge) points(from, long float64) []orb.Point {
	n := len(e.ring)
	first := 0
	for first+1 < n && e.start[first+1] <= from {
		first++
	}
	out := []orb.Point{e.at(from, first)}
	for k := 1; k <= n+1; k++ {
		i := (first + k) % n
		far := around(e.start[i]-from, e.long)
		if far >= long || far == 0 || k > n {
			break
		}
		out = append(out, e.ring[i])
	}
	last := from + long
	for last >= e.long {
		last -= e.long
	}
	edge := 0
	for edge+1 < n && e.start[edge+1] <= last {
		edge++
	}
	return append(out, e.at(last, edge))
}

// LineTick is where a joint's line meets the line: so far along a stretch from
// its first corner.
type LineTick struct {
	Ply, Joint int // numbers, from 1
	AlongMM    float64
}

// Ticks lists where joints of the plan meet a stretch, along it. Joints that lie
// in the trim only have none.
func (l Line) Ticks(p laminate.Plan, s Stretch) []LineTick {
	var out []LineTick
	for _, ply := range p.Plies {
		for n, j := range ply.Joints {
			ends, ok := l.edge.ticks(j)
			if !ok {
				continue
			}
			for _, t := range ends {
				if t.Edge != s.Name() {
					continue
				}
				along := t.AlongMM
				if t.From != s.From || t.Way == clockwise {
					along = s.Long - along
				}
				out = append(out, LineTick{ply.Ply, n + 1, along})
			}
		}
	}
	return sorted(out)
}

// sorted puts ticks in order along the line, those of one place by ply and joint.
func sorted(ticks []LineTick) []LineTick {
	sort.SliceStable(ticks, func(a, b int) bool { return ticks[a].AlongMM < ticks[b].AlongMM })
	return ticks
}
