package handmade

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"github.com/paulmach/orb"
	"github.com/peterstace/simplefeatures/geom"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Ply is a ply to build: its joints are lines of constant y in the ply frame.
type Ply struct {
	Fabric  string
	Angle   float64
	Down    bool
	Joints  []float64
	Outline string
	Blank   geometry.Region // the part's where empty
}

// Cut fills a plan's plies and rolls from what is given; the plan brings part
// and fabrics, rolls are one for each fabric, of the width given.
func Cut(p laminate.Plan, plies []Ply, width float64) laminate.Plan {
	for i, spec := range plies {
		p.Plies = append(p.Plies, cutPly(p, i+1, spec))
	}
	for _, f := range p.Fabrics {
		if roll := layOut(p, f, width); len(roll.Pieces) > 0 {
			p.Rolls = append(p.Rolls, roll)
			p.Lengths = append(p.Lengths, laminate.RollLength{
				Fabric: f.Name, WidthMM: width, UsedMM: roll.UsedLengthMM, ToBuyMM: 1000 * math.Ceil(roll.UsedLengthMM*1.1/1000),
			})
			p.Cost = append(p.Cost, laminate.Cost{
				Fabric: f.Name, Measure: laminate.ByLength, Used: roll.UsedLengthMM, Bound: roll.UsedLengthMM * 0.9,
				Gap: 1.0 / 9, Practice: roll.UsedLengthMM * 1.1, Status: laminate.Feasible,
				Proof: laminate.Proof{Bound: "area", PerMM2: 1 / width},
			})
		}
	}
	for _, ply := range p.Plies {
		p.Quantities = append(p.Quantities, laminate.PlyQuantity{
			Ply: ply.Ply, AreaMM2: ply.Blank.Area(), DryG: ply.Blank.Area() * 450e-6,
		})
	}
	return p
}

func cutPly(p laminate.Plan, number int, spec Ply) laminate.PlanPly {
	ply := laminate.PlanPly{
		Ply: number, Fabric: spec.Fabric, AngleDeg: spec.Angle, Face: laminate.FaceUp, Outline: spec.Outline, Blank: spec.Blank,
	}
	if spec.Down {
		ply.Face = laminate.FaceDown
	}
	if ply.Blank.Empty() {
		ply.Blank = p.Part.Blank
	}
	frame := geometry.PlyFrame(geometry.NewAngle(spec.Angle))
	turned := ply.Blank.In(frame)
	b := turned.Bounds()
	edges := append([]float64{b.Min[1] - 1}, spec.Joints...)
	edges = append(edges, b.Max[1]+1)
	for i := 0; i+1 < len(edges); i++ {
		for _, r := range band(turned, edges[i], edges[i+1]) {
			_, h := r.Size()
			ply.Strips = append(ply.Strips, laminate.Strip{
				ID:      fmt.Sprintf("P%02d-S%02d", number, len(ply.Strips)+1),
				Shape:   r.In(frame.Inverse()),
				WidthMM: geometry.Snap(h),
			})
		}
	}
	for _, y := range spec.Joints {
		for _, c := range chords(turned, y) {
			ply.Joints = append(ply.Joints, joint(frame.Inverse(), c, y))
		}
	}
	return ply
}

func joint(back geometry.Frame, chord [2]float64, y float64) laminate.Joint {
	snap := func(p orb.Point) [2]float64 { return [2]float64{geometry.Snap(p[0]), geometry.Snap(p[1])} }
	return laminate.Joint{
		Kind: laminate.SideJoint,
		From: snap(back.Apply(orb.Point{chord[0], y})), To: snap(back.Apply(orb.Point{chord[1], y})),
	}
}

// band gives what lies between two lines of constant y.
func band(r geometry.Region, low, high float64) []geometry.Region {
	b := r.Bounds()
	box := geometry.Region{Outer: orb.Ring{
		{b.Min[0] - 1, low}, {b.Max[0] + 1, low}, {b.Max[0] + 1, high}, {b.Min[0] - 1, high},
	}}
	cut, err := geom.Intersection(polygon(r), polygon(box))
	if err != nil {
		panic(err)
	}
	var out []geometry.Region
	for _, g := range cut.Dump() {
		if poly, ok := g.AsPolygon(); ok {
			out = append(out, regionOf(poly))
		}
	}
	return out
}

func chords(r geometry.Region, y float64) [][2]float64 {
	b := r.Bounds()
	line, err := geom.UnmarshalWKT(fmt.Sprintf("LINESTRING(%f %f,%f %f)", b.Min[0]-1, y, b.Max[0]+1, y))
	if err != nil {
		panic(err)
	}
	cut, err := geom.Intersection(polygon(r), line)
	if err != nil {
		panic(err)
	}
	var out [][2]float64
	for _, g := range cut.Dump() {
		if l, ok := g.AsLineString(); ok {
			s := l.Coordinates()
			x0, x1 := s.GetXY(0).X, s.GetXY(s.Length()-1).X
			out = append(out, [2]float64{math.Min(x0, x1), math.Max(x0, x1)})
		}
	}
	return joined(out)
}

// joined makes one of stretches that touch.
func joined(chords [][2]float64) [][2]float64 {
	sort.Slice(chords, func(a, b int) bool { return chords[a][0] < chords[b][0] })
	var out [][2]float64
	for _, c := range chords {
		if n := len(out); n > 0 && c[0]-out[n-1][1] < 0.001 {
			out[n-1][1] = math.Max(out[n-1][1], c[1])
			continue
		}
		out = append(out, c)
	}
	return out
}

func polygon(r geometry.Region) geom.Geometry {
	var rings []string
	for _, ring := range r.Rings() {
		var points []string
		for _, p := range append(append(orb.Ring{}, ring...), ring[0]) {
			points = append(points, fmt.Sprintf("%.6f %.6f", p[0], p[1]))
		}
		rings = append(rings, "("+strings.Join(points, ",")+")")
	}
	g, err := geom.UnmarshalWKT("POLYGON(" + strings.Join(rings, ",") + ")")
	if err != nil {
		panic(err)
	}
	return g
}

func regionOf(p geom.Polygon) geometry.Region {
	ring := func(s geom.Sequence) (out orb.Ring) {
		for i := range s.Length() {
			out = append(out, orb.Point{s.GetXY(i).X, s.GetXY(i).Y})
		}
		return out
	}
	r := geometry.Region{Outer: ring(p.ExteriorRing().Coordinates())}
	for i := range p.NumInteriorRings() {
		r.Holes = append(r.Holes, ring(p.InteriorRingN(i).Coordinates()))
	}
	return r.Snapped()
}
