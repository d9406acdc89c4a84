package check

import (
	"math"
	"sort"

	"stripwright/geometry"
)

// judgeCuttingGap holds the distance between pieces that are near each other.
func judgeCuttingGap(f *finding, l *laid, i int) {
	need := l.plan.Rules.CuttingGapMM
	if need <= tolerance {
		return
	}
	r := l.plan.Rolls[i]
	ss := make([]boxed, len(r.Pieces))
	for k, c := range r.Pieces {
		ss[k] = box(shapeIn(c.Shape, geometry.Turned(0)), k)
	}
	sort.Slice(ss, func(i, j int) bool {
		if ss[i].lo[0] != ss[j].lo[0] {
			return ss[i].lo[0] < ss[j].lo[0]
		}
		return ss[i].k < ss[j].k
	})
	var open []boxed
	for _, s := range ss {
		n := 0
		for _, o := range open {
			if o.hi[0]+need < s.lo[0] {
				continue
			}
			open[n] = o
			n++
			if d, at := o.apart(s, need); d < need-tolerance {
				w := l.pieceWorst(i, s.k)
				w.ValueMM, w.At = d, at
				f.add(need-d, w, "%s: %s and %s are %s apart, cutting gap %s, %s", rollName(r),
					r.Pieces[o.k].ID, r.Pieces[s.k].ID, mm(d), mm(need), onRoll(at))
			}
		}
		open = append(open[:n], s)
	}
}

// boxed is a piece's shape with its bounds.
type boxed struct {
	shape
	k      int
	lo, hi point
}

func box(s shape, k int) boxed {
	lo, hi := s.bounds()
	return boxed{s, k, lo, hi}
}

// apart gives the distance between two pieces' edges when it is less than
// need, else need or more.
func (a boxed) apart(b boxed, need float64) (float64, point) {
	best, at := need, a.lo
	if away(a.lo[1], a.hi[1], b.lo[1], b.hi[1]) >= need {
		return best, at
	}
	near := b.edgesNear(a, need)
	for _, r := range a.shape {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			for _, e := range near {
				if boxesApart(p, q, e[0], e[1]) >= best {
					continue
				}
				if d, x := apartSegments(p, q, e[0], e[1]); d < best {
					best, at = d, x
				}
			}
		}
	}
	return best, at
}

// edgesNear lists the edges of a that may be nearer than need to b's box.
func (a boxed) edgesNear(b boxed, need float64) [][2]point {
	var out [][2]point
	for _, r := range a.shape {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			if boxesApart(p, q, b.lo, b.hi) < need {
				out = append(out, [2]point{p, q})
			}
		}
	}
	return out
}

// boxesApart gives the distance between the boxes around two segments along
// the axis in which they are further apart.
func boxesApart(p, q, a, b point) float64 {
	d := 0.0
	for k := range p {
		d = math.Max(d, away(math.Min(p[k], q[k]), math.Max(p[k], q[k]), math.Min(a[k], b[k]), math.Max(a[k], b[k])))
	}
	return d
}
