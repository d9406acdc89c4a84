package grow

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// smallestCircle gives the smallest circle round a ring: centre and radius in
// micrometres (E. Welzl, "Smallest enclosing disks", 1991, in its loop form;
// from memory). The order in which corners are tried is shuffled with a fixed
// seed, so that the result does not depend on the run.
func smallestCircle(r ring) (centre flat, radius float64) {
	h := hull(r)
	rnd := rand.New(rand.NewPCG(1, 2))
	rnd.Shuffle(len(h), func(i, j int) { h[i], h[j] = h[j], h[i] })
	out := func(p flat) bool { return math.Hypot(p.x-centre.x, p.y-centre.y) > float64(radius*(1+1e-12))+1e-6 }
	for i, p := range h {
		if i > 0 && !out(p) {
			continue
		}
		centre, radius = p, 0
		for j, q := range h[:i] {
			if !out(q) {
				continue
			}
			centre, radius = across(p, q)
			for _, s := range h[:j] {
				if out(s) {
					centre, radius = through(p, q, s)
				}
			}
		}
	}
	return centre, radius
}

func across(p, q flat) (flat, float64) {
	return flat{(p.x + q.x) / 2, (p.y + q.y) / 2}, math.Hypot(p.x-q.x, p.y-q.y) / 2
}

// through gives the circle through three points; on one line, across the
// farthest two.
func through(p, q, s flat) (flat, float64) {
	ax, ay, bx, by := q.x-p.x, q.y-p.y, s.x-p.x, s.y-p.y
	d := 2 * (float64(ax*by) - float64(ay*bx))
	if d == 0 {
		c, r := across(p, q)
		for _, e := range [][2]flat{{p, s}, {q, s}} {
			if c2, r2 := across(e[0], e[1]); r2 > r {
				c, r = c2, r2
			}
		}
		return c, r
	}
	aa, bb := float64(ax*ax)+float64(ay*ay), float64(bx*bx)+float64(by*by)
	ux := (float64(by*aa) - float64(ay*bb)) / d
	uy := (float64(ax*bb) - float64(bx*aa)) / d
	return flat{p.x + ux, p.y + uy}, math.Hypot(ux, uy)
}

// hull gives the corners of the convex hull (A. Andrew's chains, 1979; from
// memory).
func hull(r ring) []flat {
	s := slices.Clone(r)
	slices.SortFunc(s, func(a, b spot) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y)) })
	s = slices.Compact(s)
	var out ring
	for pass := 0; pass < 2; pass++ {
		start := len(out)
		for _, p := range s {
			for len(out) >= start+2 && turn(out[len(out)-2], out[len(out)-1], p) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		out = out[:len(out)-1]
		slices.Reverse(s)
	}
	h := make([]flat, len(out))
	for i, p := range out {
		h[i] = flat{float64(p.x), float64(p.y)}
	}
	return h
}
