package book

import (
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/internal/handmade"
)

// Plans that nobody plans, but that may stand in an edited plan.json, are written
// as a book all the same: without plies, rolls, corners or a blank, with a strip
// of no size, an unknown fabric, a roll of no length or of no width.
func TestOddPlansAreWritten(t *testing.T) {
	net := geometry.Region{Outer: orb.Ring{{0, 0}, {100, 0}, {100, 50}}}
	odd := map[string]func(*laminate.Plan){
		"nothing but a part":  func(p *laminate.Plan) { *p = laminate.Plan{Part: laminate.PlanPart{Net: net}} },
		"no corners":          func(p *laminate.Plan) { p.Part.Corners = nil },
		"one corner":          func(p *laminate.Plan) { p.Part.Corners = p.Part.Corners[:1] },
		"no blank":            func(p *laminate.Plan) { p.Part.Blank, p.Plies[0].Blank = geometry.Region{}, geometry.Region{} },
		"no strips":           func(p *laminate.Plan) { p.Plies[1].Strips = nil },
		"a strip of no shape": func(p *laminate.Plan) { p.Plies[1].Strips[0].Shape = geometry.Region{} },
		"a piece of no shape": func(p *laminate.Plan) { p.Rolls[0].Pieces[0].Shape = geometry.Region{} },
		"a joint of no length": func(p *laminate.Plan) {
			p.Plies[1].Joints[0].To = p.Plies[1].Joints[0].From
		},
		"an unknown fabric":  func(p *laminate.Plan) { p.Plies[1].Fabric, p.Rolls[0].Fabric = "?", "!" },
		"a roll of no width": func(p *laminate.Plan) { p.Rolls[0].WidthMM, p.Rolls[0].UsableWidthMM = 0, 0 },
		"a roll of no length": func(p *laminate.Plan) {
			p.Rolls[0].UsedLengthMM = 0
		},
		"two plies of one number": func(p *laminate.Plan) { p.Plies[2].Ply = 2 },
		"an outline of its own without a shape": func(p *laminate.Plan) {
			p.Plies[4].Blank = geometry.Region{}
		},
	}
	for name, change := range odd {
		p := handmade.Hatch()
		change(&p)
		data, err := Write(p, "")
		if err != nil || len(data) < 10_000 {
			t.Errorf("%s: %d bytes, %v", name, len(data), err)
		}
	}
}
