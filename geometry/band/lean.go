package band

import "stripwright/geometry/thin"

// Lean gives the outline with fewer vertices, for searching: no vertex left out
// lies further than slack µm from the new edges, and the heights at which the
// boundary turns back stay. An outline of few vertices is given back as it is.
func (o *Outline) Lean(slack int64) *Outline {
	const few = 1500
	if o.Vertices() <= few {
		return o
	}
	out := &Outline{}
	for _, r := range o.Rings {
		if t := leanRing(r, slack); len(t) >= 3 {
			out.Rings = append(out.Rings, t)
		}
	}
	out.measure()
	out.Pinched = pinched(out.Rings)
	return out
}

// leanRing keeps the vertices at which the ring turns back in height or runs
// level, and thins the runs between them.
func leanRing(r Ring, slack int64) Ring {
	n := len(r)
	var kept []int
	for i := range r {
		a, b, c := r[(i+n-1)%n], r[i], r[(i+1)%n]
		if (b.Y-a.Y > 0) != (c.Y-b.Y > 0) || b.Y == a.Y || b.Y == c.Y {
			kept = append(kept, i)
		}
	}
	if len(kept) == 0 {
		return r
	}
	return thinned(r, kept, slack)
}

// thinned gives a ring with the vertices kept, in rising order, and those that
// the runs between them need.
func thinned(r Ring, kept []int, slack int64) Ring {
	n := len(r)
	keep := make([]bool, n)
	stays := func(i int) { keep[i%n] = true }
	off := func(a, b, i int) float64 { return offLine(r[a%n], r[b%n], r[i%n]) }
	for k, i := range kept {
		j := kept[(k+1)%len(kept)]
		if j <= i {
			j += n
		}
		stays(i)
		thin.Run(i, j, float64(slack)*float64(slack), off, stays)
	}
	var out Ring
	for i, p := range r {
		if keep[i] {
			out = append(out, p)
		}
	}
	return tidy(out)
}

// offLine gives the squared distance of p from the segment a–b, in µm².
func offLine(a, b, p Point) float64 {
	dx, dy := float64(b.X-a.X), float64(b.Y-a.Y)
	px, py := float64(p.X-a.X), float64(p.Y-a.Y)
	long := float64(dx*dx) + float64(dy*dy)
	t := 0.0
	if long > 0 {
		t = min(1, max(0, (float64(px*dx)+float64(py*dy))/long))
	}
	ex, ey := px-float64(t*dx), py-float64(t*dy)
	return float64(ex*ex) + float64(ey*ey)
}
