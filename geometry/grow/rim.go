package grow

import "math"

// flat is a corner of the rim before it is brought to the grid.
type flat struct{ x, y float64 }

func (p flat) spot() spot { return spot{int64(math.Round(p.x)), int64(math.Round(p.y))} }

// offset is the point at distance d from v in the direction of angle a from
// the unit vector n, counter-clockwise.
func offset(v spot, n flat, d, a float64) flat {
	s, c := math.Sincos(a)
	return flat{
		float64(v.x) + float64(d*(float64(c*n.x)-float64(s*n.y))),
		float64(v.y) + float64(d*(float64(s*n.x)+float64(c*n.y))),
	}
}

// rim moves a ring to its right by d micrometres; the result may cross itself.
func rim(r ring, d float64, c Corner) ring {
	n := len(r)
	normals := make([]flat, n) // to the right of the edge that leaves vertex i
	for i, p := range r {
		q := r[(i+1)%n]
		l := distance(p, q)
		normals[i] = flat{float64(q.y-p.y) / l, float64(p.x-q.x) / l}
	}
	out := make(ring, 0, n+n/4)
	add := func(p flat) {
		s := p.spot()
		if len(out) == 0 || out[len(out)-1] != s {
			out = append(out, s)
		}
	}
	for i, v := range r {
		in, next := normals[(i+n-1)%n], normals[i]
		before, after := r[(i+n-1)%n], r[(i+1)%n]
		if turn(before, v, after) <= 0 {
			add(offset(v, in, d, 0))
			add(offset(v, next, d, 0))
			continue
		}
		a := math.Atan2(float64(in.x*next.y)-float64(in.y*next.x), float64(in.x*next.x)+float64(in.y*next.y))
		corner(v, in, d, a, c, add)
	}
	for len(out) > 1 && out[0] == out[len(out)-1] {
		out = out[:len(out)-1]
	}
	return out
}

// corner joins the edges at a corner that sticks out, where the normal turns
// from n by the angle a in (0, π].
func corner(v spot, n flat, d, a float64, c Corner, add func(flat)) {
	if c == Mitred {
		if reach := 1 / math.Cos(a/2); reach <= MitreLimit && reach > 0 {
			add(offset(v, n, float64(d*reach), a/2))
			return
		}
		cutOff(v, n, d, a, add)
		return
	}
	steps := math.Ceil(a / (2 * math.Acos(d/(d+ChordMM*micron))))
	for s := 0.5; s < steps; s++ {
		add(offset(v, n, d/math.Cos(a/steps/2), a*s/steps))
	}
}

// cutOff ends a long mitre square across, MitreLimit times d from the corner:
// the edges are prolonged to that line, which they meet at the distance s to
// either side of the bisector.
func cutOff(v spot, n flat, d, a float64, add func(flat)) {
	m, half := MitreLimit*d, float64(a/2)
	s := (d - float64(m*math.Cos(half))) / math.Sin(half)
	r, side := math.Hypot(m, s), math.Atan2(s, m)
	add(offset(v, n, r, half-side))
	add(offset(v, n, r, half+side))
}
