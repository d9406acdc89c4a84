package handmade

import (
	"math"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// layOut lays the pieces of a fabric in rows across the roll, row after row.
func layOut(p laminate.Plan, f laminate.PlanFabric, width float64) laminate.PlanRoll {
	roll := laminate.PlanRoll{Roll: f.Name + "-300", Copy: 1, Fabric: f.Name, WidthMM: width, UsableWidthMM: width}
	u, v, end := 0.0, 0.0, 0.0
	for _, ply := range p.Plies {
		if ply.Fabric != f.Name {
			continue
		}
		for _, s := range ply.Strips {
			shape := onRoll(ply, s)
			w, h := shape.Size()
			if v+h > width+0.0005 {
				u, v = end, 0
			}
			roll.Pieces = append(roll.Pieces, laminate.Piece{
				ID: s.ID, Shape: moved(shape, u, v), Mirrored: ply.Face == laminate.FaceDown, CutOrder: len(roll.Pieces) + 1,
			})
			v += h
			end = math.Max(end, u+w)
		}
	}
	roll.UsedLengthMM = geometry.Snap(end)
	return roll
}

// onRoll turns a strip into its piece's outline, at the lower left of the roll.
func onRoll(ply laminate.PlanPly, s laminate.Strip) geometry.Region {
	shape := s.Shape.In(geometry.PlyFrame(geometry.NewAngle(ply.AngleDeg)))
	if ply.Face == laminate.FaceDown {
		shape = shape.In(geometry.MirrorAcross())
	}
	b := shape.Bounds()
	return moved(shape, -b.Min[0], -b.Min[1])
}

func moved(r geometry.Region, dx, dy float64) geometry.Region {
	return r.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] + dx, p[1] + dy} })
}
