package band

// rungs sorts the edges of an outline of many vertices by height, so that a
// chord meets those near it alone: rung k holds the edges that reach into the
// k-th of equal steps of height.
type rungs struct {
	low   int64
	step  int64
	first []int32 // edges of rung k are edges[first[k]:first[k+1]]
	edges []rung
}

// rung is an edge, which runs to the next vertex of its ring.
type rung struct{ p, q Point }

// fewEdges is the number of edges up to which a chord looks at all.
const fewEdges = 200

// climb builds the rungs; nil for an outline of few edges.
func (o *Outline) climb() *rungs {
	n := o.Vertices()
	if n <= fewEdges || o.MaxY <= o.MinY {
		return nil
	}
	for steps := int64(min(n, 1024)); ; steps /= 2 {
		r := &rungs{low: o.MinY, step: (o.MaxY-o.MinY)/steps + 1}
		if r.count(o, int(steps)); int(r.first[steps]) <= 4*n || steps == 1 {
			r.fill(o)
			return r
		}
	}
}

// count sets how many edges reach into each step.
func (r *rungs) count(o *Outline, steps int) {
	r.first = make([]int32, steps+1)
	o.eachSlope(func(p, q Point) {
		for k := r.at(min(p.Y, q.Y)); k <= r.at(max(p.Y, q.Y)); k++ {
			r.first[k+1]++
		}
	})
	for k := range steps {
		r.first[k+1] += r.first[k]
	}
}

func (r *rungs) fill(o *Outline) {
	r.edges = make([]rung, r.first[len(r.first)-1])
	next := append([]int32(nil), r.first...)
	o.eachSlope(func(p, q Point) {
		for k := r.at(min(p.Y, q.Y)); k <= r.at(max(p.Y, q.Y)); k++ {
			r.edges[next[k]] = rung{p, q}
			next[k]++
		}
	})
}

func (r *rungs) at(y int64) int { return int((y - r.low) / r.step) }

// eachSlope calls visit for every edge that is not level.
func (o *Outline) eachSlope(visit func(p, q Point)) {
	for _, r := range o.Rings {
		p := r[len(r)-1]
		for _, q := range r {
			if p.Y != q.Y {
				visit(p, q)
			}
			p = q
		}
	}
}

// near calls visit for every edge that may reach height y, none of them level.
func (o *Outline) near(y int64, visit func(p, q Point)) {
	switch {
	case y < o.MinY || y > o.MaxY:
	case o.rungs == nil:
		o.eachSlope(visit)
	default:
		k := o.rungs.at(y)
		for _, e := range o.rungs.edges[o.rungs.first[k]:o.rungs.first[k+1]] {
			visit(e.p, e.q)
		}
	}
}
