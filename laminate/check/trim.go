package check

import (
	"math"
	"sort"

	"stripwright/geometry"
	"stripwright/laminate"
)

// trim holds that the blank is the net part with the trim allowance all round.
// From the middle of each net edge it goes straight out: just short of the
// allowance there must be blank, and just beyond it there must be none, unless
// another stretch of the net edge lies so near that its own allowance reaches
// there.
//
//	........................  blank
//	    x beyond: bare
//	------------------------  allowance
//	    o short of it: blank
//	________________________  net edge
//
// A mitre may reach further than the allowance, so nothing is asked near a
// sharp corner of another stretch.
func trim(f *finding, p laminate.PlanPart) {
	net := shapeIn(p.Net, geometry.Turned(0))
	blank := shapeIn(p.Blank, geometry.Turned(0))
	sides := flanksOf(net)
	out := fringe{trim: p.TrimMM, sides: sides, sharp: sharpCorners(net), blank: blank}
	for _, s := range longest(sides, mostProbes/(1+len(sides)+blank.vertices())) {
		f.counted++
		out.probe(f, s)
	}
}

const (
	// mostProbes bounds the work of looking round the net edge: probes times
	// edges.
	mostProbes = 40_000_000
	// short is how far before the allowance there must be blank, in mm: curves
	// may be a chord error nearer.
	short = 0.06
	// furthestMitre is the furthest, in allowances, that the blank may reach out
	// from a sharp corner.
	furthestMitre = 2.0
	// sharpDeg: a corner that turns more is sharp. One that turns less has a
	// mitre within beyond.
	sharpDeg = 20.0
)

// beyond is how far past the allowance there must be no blank.
func beyond(trim float64) float64 { return short + float64(0.02*trim) }

// flank is an edge of an outline, from p to q, with the cloth on its left.
type flank struct{ p, q point }

func (s flank) length() float64 { return math.Hypot(s.q[0]-s.p[0], s.q[1]-s.p[1]) }

// out gives the point straight out from the middle, d away.
func (s flank) out(d float64) point {
	n := s.length()
	return point{
		float64((s.p[0]+s.q[0])/2) + float64(d*(s.q[1]-s.p[1])/n),
		float64((s.p[1]+s.q[1])/2) - float64(d*(s.q[0]-s.p[0])/n),
	}
}

func flanksOf(s shape) []flank {
	var out []flank
	for _, r := range s {
		for i, p := range r {
			out = append(out, flank{p, r[(i+1)%len(r)]})
		}
	}
	return out
}

// longest gives the n longest sides of more than a millimetre, or of any length
// when none is so long.
func longest(sides []flank, n int) []flank {
	out := append([]flank(nil), sides...)
	sort.SliceStable(out, func(i, j int) bool { return out[i].length() > out[j].length() })
	keep := 0
	for keep < len(out) && keep < n && (out[keep].length() > 1 || keep < 8) {
		keep++
	}
	return out[:keep]
}

// sharpCorners gives the vertices that turn sharply away from the cloth.
func sharpCorners(s shape) []point {
	var out []point
	for _, r := range s {
		for i, p := range r {
			a, b := r[(i+len(r)-1)%len(r)], r[(i+1)%len(r)]
			first := math.Atan2(p[1]-a[1], p[0]-a[0])
			if t := math.Remainder(math.Atan2(b[1]-p[1], b[0]-p[0])-first, 2*math.Pi); t > sharpDeg*math.Pi/180 {
				out = append(out, p)
			}
		}
	}
	return out
}

func (s shape) vertices() int {
	n := 0
	for _, r := range s {
		n += len(r)
	}
	return n
}

// fringe is the stretch between net edge and blank.
type fringe struct {
	trim  float64
	sides []flank
	sharp []point
	blank shape
}

func (o fringe) probe(f *finding, s flank) {
	near, far := s.out(o.trim-short), s.out(o.trim+beyond(o.trim))
	w := laminate.Worst{At: tidy(s.out(0))}
	if !o.blank.holds(near) {
		w.ValueMM = o.reach(s)
		f.add(o.trim-w.ValueMM, w, "the blank ends %s outside the net edge, trim allowance %s, %s", mm(w.ValueMM), mm(o.trim), where(w.At))
		return
	}
	if o.blank.holds(far) && !o.reached(s, far) {
		w.ValueMM = o.reach(s)
		f.add(w.ValueMM-o.trim, w, "the blank runs %s outside the net edge, trim allowance %s, %s", mm(w.ValueMM), mm(o.trim), where(w.At))
	}
}

// reached says whether the allowance of another stretch may put blank at c.
func (o fringe) reached(own flank, c point) bool {
	for _, v := range o.sharp {
		if v != own.p && v != own.q && math.Hypot(c[0]-v[0], c[1]-v[1]) <= furthestMitre*o.trim+1 {
			return true
		}
	}
	for _, s := range o.sides {
		if d, _ := apartPoint(c, s.p, s.q); d < o.trim+beyond(o.trim)-tolerance {
			return true
		}
	}
	return false
}

// reach measures from the middle of a side straight out to the blank's edge.
func (o fringe) reach(s flank) float64 {
	least := math.Inf(1)
	a, b := s.out(0), s.out(1)
	dx, dy := b[0]-a[0], b[1]-a[1]
	for _, e := range flanksOf(o.blank) {
		ex, ey := e.q[0]-e.p[0], e.q[1]-e.p[1]
		den := float64(dx*ey) - float64(dy*ex)
		if den == 0 {
			continue
		}
		t := (float64((e.p[0]-a[0])*ey) - float64((e.p[1]-a[1])*ex)) / den
		u := (float64((e.p[0]-a[0])*dy) - float64((e.p[1]-a[1])*dx)) / den
		if u >= 0 && u <= 1 && t >= -tolerance {
			least = math.Min(least, t)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// holds says whether a point lies inside.
func (s shape) holds(c point) bool {
	in := false
	for _, r := range s {
		for i, p := range r {
			q := r[(i+1)%len(r)]
			if (p[1] > c[1]) != (q[1] > c[1]) && c[0] < p[0]+(c[1]-p[1])*(q[0]-p[0])/(q[1]-p[1]) {
				in = !in
			}
		}
	}
	return in
}
