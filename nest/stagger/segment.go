package stagger

import (
	"math"

	"stripwright/geometry"
	"stripwright/nest/layout"
)

// segment is a stretch of joint in the part frame, in µm.
type segment struct{ ax, ay, bx, by float64 }

// segmentsApart tests joints of two slightly different directions: no stretch
// of a joint longer than shortUM may lie within d of the other ply's joints.
func segmentsApart(p, q []layout.Line, a, b geometry.Angle, d int64) bool {
	for _, s := range segments(p, a) {
		for _, t := range segments(q, b) {
			if within(s, t, float64(d)) > shortUM || within(t, s, float64(d)) > shortUM {
				return false
			}
		}
	}
	return true
}

func segments(lines []layout.Line, a geometry.Angle) []segment {
	sin, cos := a.SinCos()
	var out []segment
	for _, l := range lines {
		y := float64(l.Y)
		for _, s := range l.Spans {
			x0, x1 := float64(s.From), float64(s.To)
			out = append(out, segment{sum(x0*cos, -y*sin), sum(x0*sin, y*cos), sum(x1*cos, -y*sin), sum(x1*sin, y*cos)})
		}
	}
	return out
}

// sum adds two products that were rounded one by one: passed as arguments they
// are converted, so that no processor fuses them.
func sum(a, b float64) float64 { return float64(a) + float64(b) }

// within gives the length of s that lies nearer than d to t. What is near a
// segment is convex, so it is one stretch of s: it is bounded by the circles
// about t's ends and by the band beside t.
func within(s, t segment, d float64) float64 {
	ux, uy := s.bx-s.ax, s.by-s.ay
	long := math.Hypot(ux, uy)
	vx, vy := t.bx-t.ax, t.by-t.ay
	other := math.Hypot(vx, vy)
	if long == 0 || other == 0 {
		return 0
	}
	ux, uy, vx, vy = ux/long, uy/long, vx/other, vy/other
	from, to := math.Inf(1), math.Inf(-1)
	widen := func(lo, hi float64) {
		if lo = max(lo, 0); lo < min(hi, long) {
			from, to = min(from, lo), max(to, min(hi, long))
		}
	}
	for _, c := range [2][2]float64{{t.ax, t.ay}, {t.bx, t.by}} {
		widen(inCircle(s, ux, uy, c, d))
	}
	widen(inBand(s, t, ux, uy, vx, vy, other, d))
	return max(0, to-from)
}

func inCircle(s segment, ux, uy float64, c [2]float64, d float64) (lo, hi float64) {
	x, y := c[0]-s.ax, c[1]-s.ay
	along, off := sum(x*ux, y*uy), sum(x*uy, -y*ux)
	if math.Abs(off) >= d {
		return 0, -1
	}
	h := math.Sqrt(sum(d*d, -off*off))
	return along - h, along + h
}

// inBand gives the part of the line of s beside t: between t's ends and nearer
// than d to its line.
func inBand(s, t segment, ux, uy, vx, vy, other, d float64) (lo, hi float64) {
	x, y := s.ax-t.ax, s.ay-t.ay
	lo, hi = math.Inf(-1), math.Inf(1)
	clip := func(at, rate, low, high float64) {
		if rate == 0 {
			if at <= low || at >= high {
				hi = math.Inf(-1)
			}
			return
		}
		a, b := (low-at)/rate, (high-at)/rate
		lo, hi = max(lo, min(a, b)), min(hi, max(a, b))
	}
	clip(sum(x*vx, y*vy), sum(ux*vx, uy*vy), 0, other)
	clip(sum(y*vx, -x*vy), sum(uy*vx, -ux*vy), -d, d)
	return lo, hi
}
