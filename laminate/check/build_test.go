package check

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"sort"
	"testing"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/geometry"
	"stripwright/laminate"
)

// This file makes plans the slow and simple way, for the tests alone: bands are
// cut out of a blank by a general-purpose polygon library, and pieces are laid
// one behind the other on their roll.

// clothSpec is a fabric with its one kind of roll.
type clothSpec struct {
	name    string
	gsm     float64
	width   float64
	turn    bool
	stagger float64
	between int
}

// plySpec is a ply with the levels of its joints in the ply frame.
type plySpec struct {
	cloth    string
	angle    float64
	down     bool
	reversed bool
	outline  string
	blank    geometry.Region // empty: the part's
	cuts     []float64
}

func region(outer []orb.Point, holes ...[]orb.Point) geometry.Region {
	r := geometry.Region{Outer: orb.Ring(outer)}
	for _, h := range holes {
		r.Holes = append(r.Holes, orb.Ring(h))
	}
	return r.Oriented()
}

func box4(x0, y0, x1, y1 float64) []orb.Point {
	return []orb.Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

// build makes a whole plan.
func build(tb testing.TB, net, blank geometry.Region, cloths []clothSpec, plies []plySpec) laminate.Plan {
	tb.Helper()
	p := laminate.Plan{
		Format: laminate.PlanFormat, Version: laminate.PlanVersion, Program: laminate.Program,
		Title: "made by hand", Units: "mm", Effort: laminate.Normal,
		Job:  laminate.FileRef{Name: "hand.yaml"},
		Part: laminate.PlanPart{Name: "part", DrawnFrom: laminate.LayingSide, Net: net, Blank: blank, TrimMM: trimOf(net, blank)},
	}
	cutter := bandCutter{}
	byName := map[string]clothSpec{}
	for _, c := range cloths {
		byName[c.name] = c
		p.Fabrics = append(p.Fabrics, laminate.PlanFabric{Name: c.name, WeightGSM: c.gsm, Turn: c.turn, StaggerMM: c.stagger, PliesBetween: c.between})
		p.Rolls = append(p.Rolls, laminate.PlanRoll{Roll: c.name + "-1", Copy: 1, Fabric: c.name, WidthMM: c.width, UsableWidthMM: c.width})
	}
	for i, s := range plies {
		y, shapes := cutter.ply(tb, i+1, s, blank)
		p.Plies = append(p.Plies, y)
		for r := range p.Rolls {
			if p.Rolls[r].Fabric == s.cloth {
				cutFrom(&p.Rolls[r], y, shapes, byName[s.cloth].turn)
			}
		}
	}
	p.Rolls = slices.DeleteFunc(p.Rolls, func(r laminate.PlanRoll) bool { return len(r.Pieces) == 0 })
	return sums(p)
}

// trimOf measures from the first net corner to the line of the nearest edge of
// the blank; the blanks here have the same allowance all round.
func trimOf(net, blank geometry.Region) float64 {
	c, least := net.Outer[0], math.Inf(1)
	for i, p := range blank.Outer {
		q := blank.Outer[(i+1)%len(blank.Outer)]
		cross := (q[0]-p[0])*(c[1]-p[1]) - (q[1]-p[1])*(c[0]-p[0])
		least = min(least, math.Abs(cross)/math.Hypot(q[0]-p[0], q[1]-p[1]))
	}
	return least
}

// sums fills in cost, lengths and weights.
func sums(p laminate.Plan) laminate.Plan {
	p.Cost, p.Lengths, p.Quantities = nil, nil, nil
	for _, r := range p.Rolls {
		area := 0.0
		for _, y := range p.Plies {
			if y.Fabric == r.Fabric {
				area += y.Blank.Area()
			}
		}
		bound := area / r.UsableWidthMM
		p.Cost = append(p.Cost, laminate.Cost{
			Fabric: r.Fabric, Measure: laminate.ByLength, Used: r.UsedLengthMM, Bound: bound,
			Gap: (r.UsedLengthMM - bound) / bound, Practice: r.UsedLengthMM * 1.2, Status: laminate.Feasible,
			Proof: laminate.Proof{Bound: "area", AreaMM2: area, PerMM2: 1 / r.UsableWidthMM},
		})
		p.Lengths = append(p.Lengths, laminate.RollLength{Fabric: r.Fabric, WidthMM: r.WidthMM, UsedMM: r.UsedLengthMM, ToBuyMM: r.UsedLengthMM})
	}
	for _, y := range p.Plies {
		for _, f := range p.Fabrics {
			if f.Name == y.Fabric {
				a := y.Blank.Area()
				p.Quantities = append(p.Quantities, laminate.PlyQuantity{Ply: y.Ply, AreaMM2: a, DryG: a / 1e6 * f.WeightGSM})
			}
		}
	}
	return p
}

// bandCutter remembers plies that are cut alike.
type bandCutter map[string]cutPly

type cutPly struct {
	strips []geometry.Region // ply frame
	joints []plyJoint
}

type plyJoint struct {
	from, to     orb.Point // ply frame
	below, above int
}

func (c bandCutter) ply(tb testing.TB, n int, s plySpec, blank geometry.Region) (laminate.PlanPly, []geometry.Region) {
	tb.Helper()
	if !s.blank.Empty() {
		blank = s.blank
	}
	key := fmt.Sprint(s.angle, s.cuts, s.outline)
	done, ok := c[key]
	if !ok {
		done = cutBands(tb, blank.In(geometry.PlyFrame(geometry.Angle(s.angle))), s.cuts)
		c[key] = done
	}
	face := laminate.FaceUp
	if s.down {
		face = laminate.FaceDown
	}
	y := laminate.PlanPly{Ply: n, Fabric: s.cloth, AngleDeg: s.angle, Reversed: s.reversed, Face: face, Outline: s.outline, Blank: blank}
	back := geometry.PlyFrame(geometry.Angle(s.angle)).Inverse()
	id := func(k int) string { return fmt.Sprintf("P%02d-S%02d", n, k+1) }
	for k, r := range done.strips {
		_, h := r.Size()
		y.Strips = append(y.Strips, laminate.Strip{ID: id(k), Shape: r.In(back), WidthMM: geometry.Snap(h)})
	}
	for _, j := range done.joints {
		y.Joints = append(y.Joints, laminate.Joint{
			Kind: laminate.SideJoint, Between: [2]string{id(j.below), id(j.above)},
			From: tidy(back.Apply(j.from)), To: tidy(back.Apply(j.to)),
		})
	}
	return y, done.strips
}

// cutBands cuts a blank, in the ply frame, at the levels given.
func cutBands(tb testing.TB, blank geometry.Region, cuts []float64) cutPly {
	tb.Helper()
	g := polygon(blank)
	b := blank.Bounds()
	levels := append(append([]float64{b.Min[1] - 1}, cuts...), b.Max[1]+1)
	var out cutPly
	var bands [][]int
	for k := 0; k+1 < len(levels); k++ {
		band := polygon(region(box4(b.Min[0]-1, levels[k], b.Max[0]+1, levels[k+1])))
		got, err := geom.Intersection(g, band)
		if err != nil {
			tb.Fatal(err)
		}
		var of []int
		for _, r := range regionsOf(got) {
			of = append(of, len(out.strips))
			out.strips = append(out.strips, r)
		}
		bands = append(bands, of)
	}
	for k := 0; k+1 < len(bands); k++ {
		for _, below := range bands[k] {
			for _, above := range bands[k+1] {
				out.joints = append(out.joints, meetingLines(tb, out.strips, below, above, cuts[k])...)
			}
		}
	}
	return out
}

// meetingLines gives where two strips share the line at one level: the lines
// that a general-purpose library finds in both, joined end to end.
func meetingLines(tb testing.TB, strips []geometry.Region, below, above int, level float64) []plyJoint {
	tb.Helper()
	got, err := geom.Intersection(polygon(strips[below]), polygon(strips[above]))
	if err != nil {
		tb.Fatal(err)
	}
	var spans []span
	for _, part := range got.Dump() {
		if part.Type() != geom.TypeLineString {
			continue
		}
		c := part.DumpCoordinates()
		for i := 0; i+1 < c.Length(); i++ {
			a, b := c.GetXY(i), c.GetXY(i+1)
			spans = append(spans, span{math.Min(a.X, b.X), math.Max(a.X, b.X)})
		}
	}
	sort.Slice(spans, func(i, j int) bool { return spans[i].x0 < spans[j].x0 })
	var out []plyJoint
	for _, s := range spans {
		if n := len(out) - 1; n >= 0 && out[n].to[0] == s.x0 {
			out[n].to[0] = s.x1
			continue
		}
		out = append(out, plyJoint{orb.Point{s.x0, level}, orb.Point{s.x1, level}, below, above})
	}
	return out
}

// cutFrom lays the strips of a ply behind what is on the roll; on cloth that
// may be turned every other piece is turned.
func cutFrom(r *laminate.PlanRoll, y laminate.PlanPly, shapes []geometry.Region, turn bool) {
	for k, s := range shapes {
		c := laminate.Piece{ID: y.Strips[k].ID, Mirrored: y.Face == laminate.FaceDown, CutOrder: len(r.Pieces) + 1}
		switch {
		case turn && len(r.Pieces)%2 == 1, !turn && y.Reversed:
			c.Turned = 180
		}
		lay := s
		if c.Mirrored {
			lay = lay.In(geometry.MirrorAcross())
		}
		lay = lay.In(geometry.Turned(float64(c.Turned)))
		b := lay.Bounds()
		c.Shape = lay.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] - b.Min[0] + r.UsedLengthMM, p[1] - b.Min[1]} })
		r.UsedLengthMM = c.Shape.Bounds().Max[0]
		r.Pieces = append(r.Pieces, c)
	}
}

// polygon gives a region to the general-purpose library.
func polygon(r geometry.Region) geom.Geometry {
	var rings []geom.LineString
	for _, ring := range r.Rings() {
		var xy []float64
		for _, p := range append(append(orb.Ring{}, ring...), ring[0]) {
			xy = append(xy, p[0], p[1])
		}
		rings = append(rings, geom.NewLineString(geom.NewSequence(xy, geom.DimXY)))
	}
	return geom.NewPolygon(rings).AsGeometry()
}

// regionsOf takes polygons back, snapped, from left to right.
func regionsOf(g geom.Geometry) []geometry.Region {
	var out []geometry.Region
	for _, part := range g.Dump() {
		if part.Type() != geom.TypePolygon {
			continue
		}
		p := part.MustAsPolygon()
		r := geometry.Region{Outer: ringOf(p.ExteriorRing())}
		for i := 0; i < p.NumInteriorRings(); i++ {
			r.Holes = append(r.Holes, ringOf(p.InteriorRingN(i)))
		}
		out = append(out, r.Snapped())
	}
	sort.Slice(out, func(i, j int) bool { return out[i].Bounds().Min[0] < out[j].Bounds().Min[0] })
	return out
}

func ringOf(l geom.LineString) orb.Ring {
	c := l.Coordinates()
	var out orb.Ring
	for i := 0; i+1 < c.Length(); i++ {
		out = append(out, orb.Point{c.GetXY(i).X, c.GetXY(i).Y})
	}
	return out
}

// lshape is a part with a notch and a hole, in seven plies of two fabrics, two
// of them face down, one a patch, one of cloth that may not be turned, laid
// from the far end.
func lshape(tb testing.TB) laminate.Plan {
	tb.Helper()
	blank := region([]orb.Point{{0, 0}, {1200, 0}, {1200, 400}, {700, 400}, {700, 800}, {0, 800}}, box4(300, 200, 500, 350))
	net := region([]orb.Point{{10, 10}, {1190, 10}, {1190, 390}, {690, 390}, {690, 790}, {10, 790}}, box4(290, 190, 510, 360))
	cloths := []clothSpec{{"glass", 300, 300, true, 50, 4}, {"biax", 450, 250, false, 50, 4}}
	patch := region(box4(100, 420, 600, 780))
	return build(tb, net, blank, cloths, []plySpec{
		{cloth: "glass", angle: 0, cuts: []float64{250, 550}},
		{cloth: "glass", angle: 90, cuts: []float64{-1100, -800, -500, -200}},
		{cloth: "biax", angle: 45, cuts: []float64{-750, -500, -250, 0, 250, 500}},
		{cloth: "biax", angle: -45, down: true, reversed: true, cuts: []float64{120, 370, 620, 870, 1070}},
		{cloth: "glass", angle: 0, down: true, cuts: []float64{90, 390, 690}},
		{cloth: "glass", angle: 90, down: true, cuts: []float64{-1020, -720, -420, -120}},
		{cloth: "glass", angle: 0, outline: "doubler", blank: patch, cuts: []float64{610}},
	})
}

// copyOf gives a plan that shares nothing with p.
func copyOf(tb testing.TB, p laminate.Plan) laminate.Plan {
	tb.Helper()
	data, err := json.Marshal(p)
	if err != nil {
		tb.Fatal(err)
	}
	var out laminate.Plan
	if err := json.Unmarshal(data, &out); err != nil {
		tb.Fatal(err)
	}
	return out
}

// verdict gives the result of one rule.
func verdict(rs []laminate.CheckResult, rule string) laminate.CheckResult {
	for _, r := range rs {
		if r.Rule == rule {
			return r
		}
	}
	return laminate.CheckResult{}
}
