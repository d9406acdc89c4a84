package check

import (
	"fmt"
	"math"
	"sort"

	"stripwright/geometry"
)

// mostPoints is about how many points of the part are looked at for joints
// piled through the thickness.
const mostPoints = 10_000

// pile is the place where most plies of a stack have a joint near one point.
type pile struct {
	plies    int // of the stack that have a joint there
	from, to int // the stack: numbers of its first and last ply
	at       [2]float64
}

// piled looks, over a net of points of the part, for the point that has joints
// of most plies within r of it, among any so many consecutive plies. Stagger
// holds joints of one direction apart; this tells where those of all directions
// come together. Between the points of the net there may be one more.
func piled(l *laid, bundles [][]bundle, r float64, stack int) (pile, bool) {
	points := netOfPoints(l, r)
	if len(points) == 0 || r <= 0 || stack < 2 {
		return pile{}, false
	}
	turned := map[geometry.Frame][]point{}
	near := make([][]bool, len(bundles))
	count := make([]int, len(points))
	best := pile{}
	for i := range bundles {
		near[i] = nearJoints(bundles[i], points, turned, r)
		for k := range count {
			count[k] += one(near[i][k])
			if i >= stack {
				count[k] -= one(near[i-stack][k])
			}
			if count[k] > best.plies {
				best = pile{count[k], l.plies[max(0, i-stack+1)].Ply, l.plies[i].Ply, points[k]}
			}
		}
		if i >= stack {
			near[i-stack] = nil
		}
	}
	return best, best.plies > 1
}

func one(b bool) int {
	if b {
		return 1
	}
	return 0
}

// netOfPoints covers the net part with points half of r apart, or wider where
// there would be too many.
func netOfPoints(l *laid, r float64) []point {
	net := l.plan.Part.Net
	b := net.Bounds()
	w, h := net.Size()
	step := math.Max(r/2, math.Sqrt(float64(w*h)/mostPoints))
	if !(step > 0) || w/step > mostPoints || h/step > mostPoints {
		return nil
	}
	f := newFence(net, geometry.PlyFrame(0))
	var out []point
	for y := b.Min[1] + float64(step/2); y < b.Max[1]; y += step {
		for _, s := range f.at(y) {
			first := math.Ceil((s.x0-b.Min[0])/step - 0.5)
			for x := b.Min[0] + float64((first+0.5)*step); x < s.x1; x += step {
				out = append(out, point{x, y})
			}
		}
	}
	return out
}

// nearJoints says which points have a joint of one ply within r.
func nearJoints(bs []bundle, points []point, turned map[geometry.Frame][]point, r float64) []bool {
	out := make([]bool, len(points))
	for _, b := range bs {
		ps, ok := turned[b.frame]
		if !ok {
			ps = make([]point, len(points))
			for k, p := range points {
				ps[k] = b.frame.Apply(p)
			}
			turned[b.frame] = ps
		}
		for k, p := range ps {
			out[k] = out[k] || b.within(p, r)
		}
	}
	return out
}

// within says whether a run of the bundle lies within r of a point of its
// frame.
func (b bundle) within(p point, r float64) bool {
	i := sort.Search(len(b.runs), func(i int) bool { return b.runs[i].y >= p[1]-r })
	for ; i < len(b.runs) && b.runs[i].y <= p[1]+r; i++ {
		e := b.runs[i]
		if math.Hypot(away(p[0], p[0], e.x0, e.x1), p[1]-e.y) <= r {
			return true
		}
	}
	return false
}

func (p pile) String() string {
	return fmt.Sprintf("most joints through the thickness near one point: %d plies of plies %d to %d, %s", p.plies, p.from, p.to, where(p.at))
}
