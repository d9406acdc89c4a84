package stagger

import (
	"math"

	"stripwright/geometry/band"
	"stripwright/nest/layout"
)

// NearParallel is the angle in degrees up to which joints count as parallel
// (job-file rule).
const NearParallel = 5.0

// shortUM is the length of joint, in µm, that may lie within the stagger: the
// check allows a millimetre, planning half of it.
const shortUM = 500

// Ply is a ply as the stagger sees it. Lengths are µm.
type Ply struct {
	Number  int
	Class   *layout.Class
	Stagger int64 // asked for, with twice the laying tolerance
	Between int   // plies between that excuse a smaller distance
	Covers  bool  // its blank is the whole part's
}

// Web is the conflicts among the plies of a job.
type Web struct {
	Plies     []Ply
	Conflicts [][]Conflict // by ply
	outlines  map[view]*band.Outline
	rescale   float64 // of the stagger, while looking for the largest possible
	pairs     map[pairKey]bool
}

// Conflict is a ply that must be kept clear of another.
type Conflict struct {
	With     int
	Stagger  int64
	Need     int // plies still needed between, of those that cover part of the place
	Partly   []int
	SameComb bool // same angle and width: phases may be compared directly
}

// view names the blank of one class in the frame of another.
type view struct{ of, in *layout.Class }

// pairKey names two combs that were compared.
type pairKey struct {
	a, b   *layout.Class
	pa, pb int64
	d      int64
	i, j   int // only where plies between count by place
}

// NewWeb finds the conflicts among plies.
func NewWeb(plies []Ply) *Web {
	w := &Web{Plies: plies, Conflicts: make([][]Conflict, len(plies)), outlines: make(map[view]*band.Outline),
		rescale: 1, pairs: make(map[pairKey]bool)}
	for i := range plies {
		covering := 0
		var partly []int
		for j := i + 1; j < len(plies); j++ {
			between := max(plies[i].Between, plies[j].Between)
			if covering < between {
				w.link(i, j, between-covering, partly)
			}
			if plies[j].Covers {
				covering++
			} else {
				partly = append(partly, j)
			}
			if covering >= w.mostBetween() {
				break
			}
		}
	}
	return w
}

func (w *Web) mostBetween() int {
	most := 0
	for i := range w.Plies {
		most = max(most, w.Plies[i].Between)
	}
	return most
}

// link notes a conflict of two near-parallel plies on both of them.
func (w *Web) link(i, j, need int, partly []int) {
	a, b := &w.Plies[i], &w.Plies[j]
	if a.Class.Angle.Between(b.Class.Angle) > NearParallel {
		return
	}
	c := Conflict{With: j, Stagger: max(a.Stagger, b.Stagger), Need: need,
		SameComb: a.Class.Angle == b.Class.Angle && a.Class.Width == b.Class.Width}
	if len(partly) >= need {
		c.Partly = append([]int(nil), partly...)
	}
	w.Conflicts[i] = append(w.Conflicts[i], c)
	c.With = i
	w.Conflicts[j] = append(w.Conflicts[j], c)
}

// Clear says whether ply i may take phase p while the others hold theirs.
// Plies whose phase is negative are not set yet.
func (w *Web) Clear(i int, p int64, phases []int64) bool {
	for k := range w.Conflicts[i] {
		c := &w.Conflicts[i][k]
		if q := phases[c.With]; q >= 0 && !w.apart(i, p, c, q) {
			return false
		}
	}
	return true
}

// Distances gives, for every conflict of ply i, how near the joints of the two
// combs come, in µm: the shorter way round a comb where both have the same
// angle and width and plies between are not counted by place. Conflicts whose
// joints do not run side by side, and others, are left out.
func (w *Web) Distances(i int, phases []int64) []int64 {
	var out []int64
	for k := range w.Conflicts[i] {
		c := &w.Conflicts[i][k]
		if !c.SameComb || len(c.Partly) > 0 {
			continue
		}
		if d := around(phases[i]-phases[c.With], w.Plies[i].Class.Width); d >= c.Stagger {
			out = append(out, d)
		}
	}
	return out
}

// apart says whether ply i at phase p and its conflict at phase q are clear.
func (w *Web) apart(i int, p int64, c *Conflict, q int64) bool {
	d := w.scaled(c.Stagger)
	a, b := w.Plies[i].Class, w.Plies[c.With].Class
	if c.SameComb && around(p-q, a.Width) >= d {
		return true
	}
	key := pairKey{a: a, b: b, pa: p, pb: q, d: d}
	if len(c.Partly) > 0 {
		key.i, key.j = i, c.With
	}
	ok, known := w.pairs[key]
	if !known {
		ok = w.compare(a.Comb(p), b.Comb(q), a, b, c, d)
		if len(w.pairs) > 200000 {
			clear(w.pairs)
		}
		w.pairs[key] = ok
	}
	return ok
}

func (w *Web) scaled(d int64) int64 { return int64(math.Round(float64(d) * w.rescale)) }

// around gives the distance of two phases on a comb of a pitch.
func around(d, pitch int64) int64 {
	d %= pitch
	if d < 0 {
		d += pitch
	}
	return min(d, pitch-d)
}

// compare tests the joints of two combs.
func (w *Web) compare(p, q *layout.Comb, a, b *layout.Class, c *Conflict, d int64) bool {
	if a.Angle != b.Angle {
		return segmentsApart(p.Lines, q.Lines, a.Angle, b.Angle, d)
	}
	j := 0
	for i := range p.Lines {
		for j < len(q.Lines) && q.Lines[j].Y <= p.Lines[i].Y-d {
			j++
		}
		for k := j; k < len(q.Lines) && q.Lines[k].Y < p.Lines[i].Y+d; k++ {
			if w.tooNear(&p.Lines[i], &q.Lines[k], a, c, d) || w.tooNear(&q.Lines[k], &p.Lines[i], a, c, d) {
				return false
			}
		}
	}
	return true
}

// tooNear says whether a stretch of joint x that is too long lies within d of
// joint y without enough plies between there.
func (w *Web) tooNear(x, y *layout.Line, frame *layout.Class, c *Conflict, d int64) bool {
	dy := x.Y - y.Y
	reach := int64(math.Sqrt(float64(d*d - dy*dy)))
	wide := make([]band.Span, 0, len(y.Spans))
	for _, s := range y.Spans {
		s = band.Span{From: s.From - reach, To: s.To + reach}
		if n := len(wide); n > 0 && wide[n-1].To >= s.From {
			wide[n-1].To = s.To
			continue
		}
		wide = append(wide, s)
	}
	near := band.Overlap(x.Spans, wide)
	if len(c.Partly) > 0 {
		near = band.Less(near, w.covered(x.Y, frame, c))
	}
	for _, s := range near {
		if s.Length() > shortUM {
			return true
		}
	}
	return false
}

// covered lists where, along a height, enough of the partly covering plies lie
// between.
func (w *Web) covered(y int64, frame *layout.Class, c *Conflict) []band.Span {
	depth := make([][]band.Span, c.Need+1)
	depth[0] = []band.Span{{From: math.MinInt64 / 4, To: math.MaxInt64 / 4}}
	for _, k := range c.Partly {
		here := w.outline(w.Plies[k].Class, frame).Chords(y)
		for n := c.Need; n > 0; n-- {
			depth[n] = union(depth[n], band.Overlap(depth[n-1], here))
		}
	}
	return depth[c.Need]
}

// union merges two rising lists of stretches.
func union(a, b []band.Span) []band.Span {
	var out []band.Span
	for i, j := 0, 0; i < len(a) || j < len(b); {
		var s band.Span
		if j >= len(b) || i < len(a) && a[i].From <= b[j].From {
			s = a[i]
			i++
		} else {
			s = b[j]
			j++
		}
		if n := len(out); n > 0 && out[n-1].To >= s.From {
			out[n-1].To = max(out[n-1].To, s.To)
			continue
		}
		out = append(out, s)
	}
	return out
}

// outline gives the blank of one class in the frame of another.
func (w *Web) outline(of, in *layout.Class) *band.Outline {
	if of.Angle == in.Angle {
		return of.Blank
	}
	v := view{of, in}
	o, ok := w.outlines[v]
	if !ok {
		o = band.New(of.Region, in.Angle)
		w.outlines[v] = o
	}
	return o
}
