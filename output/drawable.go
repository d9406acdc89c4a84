package output

import (
	"fmt"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

func drawablePoints(points ...orb.Point) bool {
	for _, p := range points {
		if !sheet.Drawable(p[0]) || !sheet.Drawable(p[1]) {
			return false
		}
	}
	return true
}

func drawableRegion(r geometry.Region) bool {
	for _, ring := range r.Rings() {
		if !drawablePoints(ring...) {
			return false
		}
	}
	return true
}

// drawable names the first coordinate of a plan that is no number or absurdly
// far off, and refuses a part without an outline, before anything is drawn.
func drawable(p laminate.Plan) error {
	wrong := func(what string) error { return fmt.Errorf("%s: %w", what, sheet.ErrNumber) }
	if !drawableRegion(p.Part.Net) || !drawableRegion(p.Part.Blank) || p.Part.Net.Empty() {
		return wrong("part")
	}
	for _, c := range p.Part.Corners {
		if !drawablePoints(orb.Point(c.At)) {
			return wrong("corner " + c.Name)
		}
	}
	for _, ply := range p.Plies {
		if !drawableRegion(ply.Blank) || !sheet.Drawable(ply.AngleDeg) {
			return wrong(fmt.Sprintf("ply %d", ply.Ply))
		}
		for _, s := range ply.Strips {
			if !drawableRegion(s.Shape) {
				return wrong("strip " + s.ID)
			}
		}
		for _, j := range ply.Joints {
			if !drawablePoints(orb.Point(j.From), orb.Point(j.To)) {
				return wrong(fmt.Sprintf("joint of ply %d", ply.Ply))
			}
		}
	}
	for _, r := range p.Rolls {
		if !drawablePoints(orb.Point{r.WidthMM, r.UsableWidthMM}, orb.Point{r.UsedLengthMM, 0}) {
			return wrong("roll " + r.Roll)
		}
		for _, cut := range r.CrossCuts {
			if !sheet.Drawable(cut) {
				return wrong("roll " + r.Roll)
			}
		}
		for _, piece := range r.Pieces {
			if !drawableRegion(piece.Shape) {
				return wrong("piece " + piece.ID)
			}
		}
	}
	return nil
}
