package check

import (
	"math"
	"sort"

	"stripwright/geometry"
	"stripwright/laminate"
)

// run is a length of seam with net part on both sides, in the frame of its
// bundle: along x at level y.
type run struct{ x0, x1, y float64 }

// bundle is the runs of one ply in one direction, by level.
type bundle struct {
	ply     int // index
	angle   geometry.Angle
	frame   geometry.Frame
	runs    []run
	longest float64 // of its runs
}

// bundles gives for each ply its side and its end seams, as far as they run
// inside the net part.
func bundles(l *laid, m fences) [][]bundle {
	out := make([][]bundle, len(l.plies))
	for i := range l.plies {
		for _, kind := range []string{laminate.SideJoint, laminate.EndJoint} {
			if b := bundleOf(l, m, i, kind); len(b.runs) > 0 {
				out[i] = append(out[i], b)
			}
		}
	}
	return out
}

func bundleOf(l *laid, m fences, i int, kind string) bundle {
	y := &l.plies[i]
	b := bundle{ply: i, angle: y.angle}
	if kind == laminate.EndJoint {
		b.angle = geometry.NewAngle(y.angle.Degrees() + 90)
	}
	b.frame = geometry.PlyFrame(b.angle)
	half := y.seamFrame(kind) != b.frame // the frames differ by half a turn
	for _, s := range y.seams {
		if s.kind != kind {
			continue
		}
		if half {
			s.x0, s.x1, s.y = -s.x1, -s.x0, -s.y
		}
		inside := m.get(-1, l.plan.Part.Net, b.angle).within(s.y)
		for _, p := range common([]span{{s.x0, s.x1}}, inside) {
			b.runs = append(b.runs, run{p.x0, p.x1, s.y})
			b.longest = math.Max(b.longest, p.x1-p.x0)
		}
	}
	sort.Slice(b.runs, func(i, j int) bool {
		if b.runs[i].y != b.runs[j].y {
			return b.runs[i].y < b.runs[j].y
		}
		return b.runs[i].x0 < b.runs[j].x0
	})
	return b
}

// slanted is a run of one bundle seen from another: a straight line from
// (x0, y0) to (x1, y1).
type slanted struct{ x0, y0, x1, y1 float64 }

// seenFrom turns runs of b into the frame of a, by their lower end.
func (b bundle) seenFrom(a bundle) []slanted {
	out := make([]slanted, len(b.runs))
	inv := b.frame.Inverse()
	for i, r := range b.runs {
		p := a.frame.Apply(inv.Apply(point{r.x0, r.y}))
		q := a.frame.Apply(inv.Apply(point{r.x1, r.y}))
		if p[0] > q[0] {
			p, q = q, p
		}
		out[i] = slanted{p[0], p[1], q[0], q[1]}
	}
	sort.SliceStable(out, func(i, j int) bool { return out[i].bottom() < out[j].bottom() })
	return out
}

func (s slanted) bottom() float64 { return math.Min(s.y0, s.y1) }
func (s slanted) top() float64    { return math.Max(s.y0, s.y1) }

// at gives the level of the line at x.
func (s slanted) at(x float64) float64 {
	if s.x1 == s.x0 {
		return s.y0
	}
	return s.y0 + float64((x-s.x0)*(s.y1-s.y0)/(s.x1-s.x0))
}

// beside gives how near two runs come side by side over more than a
// millimetre: the least distance, measured square to r, within which more than
// a millimetre of r lies to s; false when they do not run side by side so far.
func beside(r run, s slanted) (distance float64, over span, ok bool) {
	over = span{math.Max(r.x0, s.x0), math.Min(r.x1, s.x1)}
	if over.x1-over.x0 <= shortest {
		return 0, over, false
	}
	d0, d1 := s.at(over.x0)-r.y, s.at(over.x1)-r.y
	slope := math.Abs(d1-d0) / (over.x1 - over.x0)
	near, far := math.Min(math.Abs(d0), math.Abs(d1)), math.Max(math.Abs(d0), math.Abs(d1))
	if (d0 < 0) == (d1 < 0) || slope == 0 {
		return near + float64(slope*shortest), over, true
	}
	// The lines cross: within v of the crossing lie v/slope to either side, but
	// no more than there is on the shorter side.
	if v := slope * shortest / 2; v <= near {
		return v, over, true
	}
	return math.Min(slope*shortest-near, far), over, true
}

// shortest is the length that two joints may run too close, in mm.
const shortest = 1.0
