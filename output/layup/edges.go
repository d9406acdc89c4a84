package layup

import "stripwright/laminate"

// EdgeLength is a stretch of the net edge between two named corners, anticlockwise
// from From to To.
type EdgeLength struct {
	Name     string // "A-B"
	From, To string
	MM       float64 // along the edge
	Straight bool
}

// edgeStraightMM is how much longer than the straight line between its corners a
// stretch may be and still be called straight.
const edgeStraightMM = 0.05

// Edges lists the stretches of the net edge, from the datum on.
func Edges(part laminate.PlanPart) []EdgeLength {
	e := newNetEdge(part)
	var out []EdgeLength
	for _, c := range part.Corners {
		for i, a := range e.corners {
			if a.name != c.Name {
				continue
			}
			b := e.corners[(i+1)%len(e.corners)]
			long := around(b.s-a.s, e.long)
			out = append(out, EdgeLength{
				Name: a.name + "-" + b.name, From: a.name, To: b.name, MM: long,
				Straight: long-distance(a.at, b.at) < edgeStraightMM,
			})
		}
	}
	return out
}
