package check

import "math"

// same says whether two shapes are one within the tolerance: ring for ring,
// going round both at once. Rings may start at different vertices and carry
// different vertices along straight edges.
func same(a, b shape) bool {
	if len(a) != len(b) || len(a) == 0 {
		return false
	}
	taken := make([]bool, len(b))
	for _, r := range a {
		found := false
		for k := range b {
			if !taken[k] && sameRound(r, b[k]) {
				taken[k], found = true, true
				break
			}
		}
		if !found {
			return false
		}
	}
	return true
}

// sameRound tries every vertex of b that may be the furthest corner of a.
func sameRound(a, b []point) bool {
	if len(a) < 3 || len(b) < 3 {
		return false
	}
	i := furthest(a)
	for k := range b {
		if near(a[i], b[k]) && walk(a, b, i, k) {
			return true
		}
	}
	return false
}

// furthest gives the vertex that lies furthest in a direction along which no
// edge of common work runs: a corner for certain.
func furthest(r []point) int {
	best := 0
	for i, p := range r {
		if reach(p) > reach(r[best]) {
			best = i
		}
	}
	return best
}

func reach(p point) float64 { return p[0] + float64(0.6180339887*p[1]) }

func near(p, q point) bool {
	return math.Abs(p[0]-q[0]) <= tolerance && math.Abs(p[1]-q[1]) <= tolerance
}

// walk goes round both rings from equal corners: at each step both go on to
// equal vertices, or one goes on along the edge that the other is on.
func walk(a, b []point, i, k int) bool {
	na, nb := len(a), len(b)
	for m, n := 0, 0; m < na || n < nb; {
		p, q := a[(i+m)%na], b[(k+n)%nb]
		pn, qn := a[(i+m+1)%na], b[(k+n+1)%nb]
		switch {
		case m < na && n < nb && near(pn, qn):
			m, n = m+1, n+1
		case m < na && along(pn, q, qn, p):
			m++
		case n < nb && along(qn, p, pn, q):
			n++
		default:
			return false
		}
	}
	return true
}

// along says whether c lies on the edge from p to q, no nearer to p than the
// place from which it was reached.
func along(c, p, q, from point) bool {
	d, _ := apartPoint(c, p, q)
	return d <= tolerance && ahead(p, q, c) >= ahead(p, q, from)-tolerance
}

// ahead gives how far c lies along the direction from p to q.
func ahead(p, q, c point) float64 {
	dx, dy := q[0]-p[0], q[1]-p[1]
	n := math.Hypot(dx, dy)
	if n == 0 {
		return 0
	}
	return (float64((c[0]-p[0])*dx) + float64((c[1]-p[1])*dy)) / n
}
