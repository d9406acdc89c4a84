package band

import (
	"cmp"
	"slices"
)

// assemble sorts rings into pieces: rings of positive area are outer rings,
// the others are holes of the piece around them. Rings of no area are dropped.
func assemble(rings []Ring, b int) []Piece {
	var out []Piece
	var holes []Ring
	for _, r := range rings {
		switch a := area2(r); {
		case a > 0:
			out = append(out, newPiece(r, b))
		case a < 0:
			holes = append(holes, r)
		}
	}
	slices.SortStableFunc(out, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(a.MinX, b.MinX), cmp.Compare(a.MinY, b.MinY), cmp.Compare(a.MaxX, b.MaxX))
	})
	for _, h := range holes {
		if k := around(out, h); k >= 0 {
			out[k].Holes = append(out[k].Holes, h)
		}
	}
	return out
}

func newPiece(r Ring, b int) Piece {
	p := Piece{Band: b, Outer: r, MinX: r[0].X, MaxX: r[0].X, MinY: r[0].Y, MaxY: r[0].Y}
	for _, q := range r {
		p.MinX, p.MaxX = min(p.MinX, q.X), max(p.MaxX, q.X)
		p.MinY, p.MaxY = min(p.MinY, q.Y), max(p.MaxY, q.Y)
	}
	return p
}

// around gives the smallest piece whose outer ring holds the hole, -1 for none.
func around(pieces []Piece, hole Ring) int {
	best, bestArea := -1, int64(0)
	for k := range pieces {
		p := &pieces[k]
		if !insideRing(p.Outer, hole) {
			continue
		}
		if a := area2(p.Outer); best < 0 || a < bestArea {
			best, bestArea = k, a
		}
	}
	return best
}

// insideRing says whether a hole lies in a ring: by its first vertex that is
// not on the ring, so that a hole touching the ring at a vertex is placed right.
func insideRing(r, hole Ring) bool {
	for _, p := range hole {
		switch side(r, p) {
		case 1:
			return true
		case -1:
			return false
		}
	}
	return false
}

// side gives 1 for a point inside a ring, -1 outside, 0 on it.
func side(r Ring, p Point) int {
	in := -1
	for i := range r {
		a, b := r[i], r[(i+1)%len(r)]
		cross := (b.X-a.X)*(p.Y-a.Y) - (b.Y-a.Y)*(p.X-a.X)
		if cross == 0 && between(a.X, p.X, b.X) && between(a.Y, p.Y, b.Y) {
			return 0
		}
		if (a.Y > p.Y) != (b.Y > p.Y) && (cross > 0) == (b.Y > a.Y) {
			in = -in
		}
	}
	return in
}

func between(a, v, b int64) bool { return min(a, b) <= v && v <= max(a, b) }
