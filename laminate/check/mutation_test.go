package check

import (
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// mutation spoils a good plan in one way; the rule named must say so, with the
// ply, the piece and the value where they are given (any: not held).
type mutation struct {
	name  string
	spoil func(p *laminate.Plan)
	rule  string
	plies []int
	piece string
	value float64
	says  string
}

const anyValue = -1e99

func stripOf(p *laminate.Plan, id string) *laminate.Strip {
	for i := range p.Plies {
		for k := range p.Plies[i].Strips {
			if p.Plies[i].Strips[k].ID == id {
				return &p.Plies[i].Strips[k]
			}
		}
	}
	panic("no strip " + id)
}

func pieceOf(p *laminate.Plan, id string) *laminate.Piece {
	for i := range p.Rolls {
		for k := range p.Rolls[i].Pieces {
			if p.Rolls[i].Pieces[k].ID == id {
				return &p.Rolls[i].Pieces[k]
			}
		}
	}
	panic("no piece " + id)
}

func shift(r geometry.Region, dx, dy float64) geometry.Region {
	return r.Map(func(p orb.Point) orb.Point { return orb.Point{p[0] + dx, p[1] + dy} })
}

// stretchTo moves every vertex with one coordinate from a to b.
func stretchTo(r geometry.Region, axis int, a, b float64) geometry.Region {
	return r.Map(func(p orb.Point) orb.Point {
		if p[axis] == a {
			p[axis] = b
		}
		return p
	})
}

// aboutMiddle applies a frame about the middle of the bounding box.
func aboutMiddle(r geometry.Region, f geometry.Frame) geometry.Region {
	b := r.Bounds()
	cx, cy := (b.Min[0]+b.Max[0])/2, (b.Min[1]+b.Max[1])/2
	return r.Map(func(p orb.Point) orb.Point {
		q := f.Apply(orb.Point{p[0] - cx, p[1] - cy})
		return orb.Point{q[0] + cx, q[1] + cy}
	})
}

func number(v float64) *float64 { return &v }

func clear(r geometry.Region, angles ...float64) []laminate.PlanKeepClear {
	return []laminate.PlanKeepClear{{Region: r, Angles: angles}}
}

var mutations = []mutation{
	// strips
	{"move a strip", func(p *laminate.Plan) { s := stripOf(p, "P01-S01"); s.Shape = shift(s.Shape, 0, 3) }, RuleCoverage, []int{1}, "", 3, "ply 1: "},
	{"move a strip a hair", func(p *laminate.Plan) { s := stripOf(p, "P01-S01"); s.Shape = shift(s.Shape, 0, 0.02) }, RuleCoverage, []int{1}, "", 0.02, "ply 1: "},
	{"move a strip along", func(p *laminate.Plan) { s := stripOf(p, "P03-S04"); s.Shape = shift(s.Shape, 2, 2) }, RuleCoverage, []int{3}, "P03-S04", 2, "ply 3: P03-S04 runs 2 mm outside the blank"},
	{"drop a strip", func(p *laminate.Plan) { p.Plies[1].Strips = slices.Delete(p.Plies[1].Strips, 2, 3) }, RuleCoverage, []int{2}, "", 300, "bare for 300 mm"},
	{"drop a strip, its piece", func(p *laminate.Plan) { p.Plies[1].Strips = slices.Delete(p.Plies[1].Strips, 2, 3) }, RulePieces, nil, "P02-S03", anyValue, "no strip of any ply"},
	{"double a strip", func(p *laminate.Plan) { y := &p.Plies[1]; y.Strips = append(y.Strips, y.Strips[0]) }, RuleStrips, []int{2}, "P02-S01", anyValue, "used twice"},
	{"double a strip, its cover", func(p *laminate.Plan) { y := &p.Plies[1]; y.Strips = append(y.Strips, y.Strips[0]) }, RuleCoverage, []int{2}, "P02-S01", 100, "lie over each other"},
	{"mirror a strip", func(p *laminate.Plan) { s := stripOf(p, "P03-S03"); s.Shape = aboutMiddle(s.Shape, geometry.MirrorX()) }, RuleCoverage, []int{3}, "", anyValue, "ply 3: "},
	{"mirror a strip, its piece", func(p *laminate.Plan) { s := stripOf(p, "P03-S03"); s.Shape = aboutMiddle(s.Shape, geometry.MirrorX()) }, RulePieces, []int{3}, "P03-S03", anyValue, ""},
	{"shorten a strip", func(p *laminate.Plan) {
		s := stripOf(p, "P01-S01")
		s.Shape = stretchTo(s.Shape, 0, 1200, 1196)
	}, RuleCoverage, []int{1}, "", 4, "bare for 4 mm"},
	{"shorten a strip, its piece", func(p *laminate.Plan) {
		s := stripOf(p, "P01-S01")
		s.Shape = stretchTo(s.Shape, 0, 1200, 1196)
	}, RulePieces, []int{1}, "P01-S01", 4, "not its strip"},
	{"lengthen a strip", func(p *laminate.Plan) {
		s := stripOf(p, "P01-S01")
		s.Shape = stretchTo(s.Shape, 0, 1200, 1207)
	}, RuleCoverage, []int{1}, "P01-S01", 7, "7 mm outside the blank"},
	{"widen a strip", func(p *laminate.Plan) { s := stripOf(p, "P01-S01"); s.Shape = stretchTo(s.Shape, 1, 250, 252) }, RuleCoverage, []int{1}, "", 2, "P01-S01 and P01-S02 lie over each other for 2 mm"},
	{"widen a strip, its width", func(p *laminate.Plan) { s := stripOf(p, "P01-S01"); s.Shape = stretchTo(s.Shape, 1, 250, 252) }, RuleStrips, []int{1}, "P01-S01", 252, "said to be 250 mm wide and is 252 mm"},
	{"wrong width", func(p *laminate.Plan) { stripOf(p, "P04-S02").WidthMM = 249.99 }, RuleStrips, []int{4}, "P04-S02", 250, "P04-S02"},
	{"fill a hole", func(p *laminate.Plan) { fillHole(p) }, RuleCoverage, []int{1}, "", 50, "outside the blank"},
	{"cross a strip's edge", func(p *laminate.Plan) {
		s := stripOf(p, "P02-S01")
		o := s.Shape.Outer
		o[1], o[2] = o[2], o[1]
	}, RuleCoverage, []int{2}, "", anyValue, "crosses itself"},
	{"swap ids of two strips", func(p *laminate.Plan) {
		a, b := stripOf(p, "P03-S02"), stripOf(p, "P03-S03")
		a.ID, b.ID = b.ID, a.ID
	}, RulePieces, []int{3}, "", anyValue, "not its strip"},
	{"swap ids of two strips, the joints", func(p *laminate.Plan) {
		a, b := stripOf(p, "P03-S02"), stripOf(p, "P03-S03")
		a.ID, b.ID = b.ID, a.ID
	}, RuleJoints, []int{3}, "", anyValue, "where they do not butt"},
	{"id of another ply", func(p *laminate.Plan) { stripOf(p, "P03-S02").ID = "P04-S09" }, RuleStrips, []int{3}, "P04-S09", anyValue, "number of another ply"},
	{"id of no form", func(p *laminate.Plan) { stripOf(p, "P03-S02").ID = "strip 2" }, RuleStrips, []int{3}, "strip 2", anyValue, "not of the form"},
	{"narrow strip", func(p *laminate.Plan) { p.Rules.NarrowestMM = 95 }, RuleStrips, []int{4}, "P04-S07", 61.371, "ply 5: P05-S01 is 90 mm wide, 95 mm needed"},
	{"wider than the roll", func(p *laminate.Plan) { p.Rolls[0].UsableWidthMM = 298 }, RuleStrips, nil, "", 300, "gives 298 mm"},

	// plies
	{"drop a ply", func(p *laminate.Plan) { p.Plies = slices.Delete(p.Plies, 2, 3) }, RulePlies, []int{4}, "", anyValue, "ply 4 stands at place 3"},
	{"drop the last ply", func(p *laminate.Plan) { p.Plies = p.Plies[:6] }, RulePieces, nil, "P07-S01", anyValue, "no strip of any ply"},
	{"swap two plies", func(p *laminate.Plan) { p.Plies[0], p.Plies[1] = p.Plies[1], p.Plies[0] }, RulePlies, []int{2}, "", anyValue, "ply 2 stands at place 1"},
	{"turn a ply over", func(p *laminate.Plan) { p.Plies[2].Face = laminate.FaceDown }, RulePieces, []int{3}, "", anyValue, "wrong side up"},
	{"turn a ply over and say so", func(p *laminate.Plan) {
		p.Plies[3].Face = laminate.FaceUp
		for i := range p.Rolls[1].Pieces {
			p.Rolls[1].Pieces[i].Mirrored = false
		}
	}, RulePieces, []int{4}, "", anyValue, "is cut mirrored, turned 180° and is said to be unmirrored, turned 180°"},
	{"change the sign of an angle", func(p *laminate.Plan) { p.Plies[2].AngleDeg = -45 }, RuleJoints, []int{3}, "", anyValue, "out of the roll direction"},
	{"change the sign of an angle, the strips", func(p *laminate.Plan) { p.Plies[2].AngleDeg = -45 }, RuleStrips, []int{3}, "", anyValue, "wide and is"},
	{"change the sign of an angle, the pieces", func(p *laminate.Plan) { p.Plies[2].AngleDeg = -45 }, RulePieces, []int{3}, "", anyValue, "not its strip"},
	{"forget a patch's outline", func(p *laminate.Plan) { p.Plies[6].Outline = "" }, RulePlies, []int{7}, "", anyValue, "not the part's"},
	{"no face", func(p *laminate.Plan) { p.Plies[6].Face = "" }, RulePlies, []int{7}, "", anyValue, "neither face up nor face down"},
	{"unknown fabric", func(p *laminate.Plan) { p.Plies[0].Fabric = "Glass" }, RulePlies, []int{1}, "", anyValue, `"Glass"`},
	{"a smaller net part", func(p *laminate.Plan) {
		p.Part.Net = stretchTo(p.Part.Net, 0, 1190, 1180)
	}, RuleCoverage, nil, "", 20, "the blank runs 20 mm outside the net edge, trim allowance 10 mm"},
	{"a larger net part", func(p *laminate.Plan) {
		p.Part.Net = stretchTo(p.Part.Net, 1, 10, 6)
	}, RuleCoverage, nil, "", 6, "the blank ends 6 mm outside the net edge, trim allowance 10 mm"},
	{"no hole in the blank", func(p *laminate.Plan) {
		p.Part.Blank.Holes = nil
	}, RuleCoverage, nil, "", anyValue, "mm outside the net edge, trim allowance 10 mm"},
	{"less trim than told", func(p *laminate.Plan) { p.Part.TrimMM = 12 }, RuleCoverage, nil, "", 10, "the blank ends 10 mm outside"},
	{"a corner off the part", func(p *laminate.Plan) {
		p.Part.Corners = []laminate.Corner{{Name: "A", At: [2]float64{10, 10}}, {Name: "B", At: [2]float64{1190, 15.5}}, {Name: "C", At: [2]float64{1195, 390}}}
	}, RulePlies, nil, "", 5, "corner C, from which joints are measured, lies 5 mm off the net edge"},
	{"two corners of one name", func(p *laminate.Plan) {
		p.Part.Corners = []laminate.Corner{{Name: "A", At: [2]float64{10, 10}}, {Name: "A", At: [2]float64{1190, 10}}}
	}, RulePlies, nil, "", anyValue, "named A"},
	{"a patch moved off the part", func(p *laminate.Plan) { p.Plies[6].Blank = shift(p.Plies[6].Blank, 120, 0) }, RulePlies, []int{7}, "", 20, `ply 7: the outline "doubler" sticks 20 mm out`},
	{"patches of one name that differ", func(p *laminate.Plan) {
		y := p.Plies[6]
		y.Ply, y.Blank = 8, shift(y.Blank, 10, 0)
		p.Plies = append(p.Plies, y)
	}, RulePlies, []int{8}, "", anyValue, "their blanks differ"},
	{"net outside the blank", func(p *laminate.Plan) {
		p.Part.Net = stretchTo(p.Part.Net, 0, 1190, 1203)
	}, RuleCoverage, nil, "", 3, "3 mm outside the blank"},
	{"a part one notch larger", func(p *laminate.Plan) {
		p.Part.Blank = region(box4(0, 0, 1200, 800))
	}, RulePlies, []int{1}, "", anyValue, "not the part's"},

	// joints
	{"shift a joint", func(p *laminate.Plan) { j := &p.Plies[0].Joints[0]; j.From[1] += 6; j.To[1] += 6 }, RuleJoints, []int{1}, "P01-S01", 6, "listed 6 mm from where they butt"},
	{"shorten a joint", func(p *laminate.Plan) { p.Plies[0].Joints[0].From[0] += 6 }, RuleJoints, []int{1}, "P01-S01", 6, "listed 6 mm from where they butt"},
	{"slant a joint", func(p *laminate.Plan) { p.Plies[0].Joints[0].To[1] += 6 }, RuleJoints, []int{1}, "P01-S01", 6, "6 mm out of the roll direction"},
	{"delete a joint", func(p *laminate.Plan) { p.Plies[1].Joints = p.Plies[1].Joints[1:] }, RuleJoints, []int{2}, "P02-S01", 400, "butt for 400 mm"},
	{"invent a joint", func(p *laminate.Plan) {
		y := &p.Plies[4]
		y.Joints = append(y.Joints, laminate.Joint{Kind: "side", From: [2]float64{0, 200}, To: [2]float64{900, 200}, Between: [2]string{"P05-S01", "P05-S03"}})
	}, RuleJoints, []int{5}, "P05-S01", 900, "where they do not butt"},
	{"a joint between others", func(p *laminate.Plan) {
		p.Plies[0].Joints[0].Between = [2]string{"P01-S02", "P01-S01"}
	}, RuleJoints, []int{1}, "", anyValue, ""},
	{"a joint with a stranger", func(p *laminate.Plan) { p.Plies[0].Joints[0].Between[1] = "P02-S01" }, RuleJoints, []int{1}, "", anyValue, "not two strips of the ply"},
	{"a joint of no kind", func(p *laminate.Plan) { p.Plies[0].Joints[0].Kind = "lap" }, RuleJoints, []int{1}, "", anyValue, "neither a side nor an end joint"},
	{"a joint from its far end", func(p *laminate.Plan) { j := &p.Plies[0].Joints[0]; j.From, j.To = j.To, j.From }, RuleJoints, []int{1}, "", anyValue, "from its far end"},

	// stagger and keep clear
	{"ask for more stagger", func(p *laminate.Plan) { p.Fabrics[0].StaggerMM = 81 }, RuleStagger, []int{2, 6}, "", 80, "plies 2 and 6, joints 80 mm apart, 81 needed"},
	{"the other fabric asks for more", func(p *laminate.Plan) { p.Fabrics[0].StaggerMM = 80.006 }, RuleStagger, []int{2, 6}, "", 80, "80 mm apart"},
	{"a joint in a clear region", func(p *laminate.Plan) { p.Rules.KeepClear = clear(region(box4(900, 230, 1000, 290)), 0, 90) }, RuleKeepClear, []int{1}, "P01-S01", -20, "runs 20 mm inside"},
	{"a joint in a region clear of 90°", func(p *laminate.Plan) { p.Rules.KeepClear = clear(region(box4(780, 10, 830, 60)), 90) }, RuleKeepClear, []int{2}, "", -20, "ply 2"},
	{"a joint too near to a clear region", func(p *laminate.Plan) {
		p.Rules.KeepClear = clear(region(box4(900, 251.5, 920, 300)), 0)
		p.Rules.LayingToleranceMM = 2
	}, RuleKeepClear, []int{1}, "P01-S01", 1.5, "runs 1.5 mm from a region"},

	// pieces
	{"mirror a piece", func(p *laminate.Plan) {
		c := pieceOf(p, "P03-S01")
		c.Shape = aboutMiddle(c.Shape, geometry.MirrorAcross())
		c.Mirrored = true
	}, RulePieces, []int{3}, "P03-S01", anyValue, "wrong side up"},
	{"mirror a piece unsaid", func(p *laminate.Plan) {
		c := pieceOf(p, "P03-S02")
		c.Shape = aboutMiddle(c.Shape, geometry.MirrorAcross())
	}, RulePieces, []int{3}, "P03-S02", anyValue, "is cut mirrored"},
	{"turn a piece of no-turn cloth", func(p *laminate.Plan) {
		c := pieceOf(p, "P03-S02")
		c.Shape = aboutMiddle(c.Shape, geometry.Turned(180))
		c.Turned = 180
	}, RulePieces, []int{3}, "P03-S02", anyValue, "may not be turned: 0° needed"},
	{"lay no-turn cloth from the wrong end", func(p *laminate.Plan) { p.Plies[3].Reversed = false }, RulePieces, []int{4}, "", anyValue, "may not be turned: 0° needed"},
	{"turn a piece unsaid", func(p *laminate.Plan) {
		c := pieceOf(p, "P03-S01")
		c.Shape = aboutMiddle(c.Shape, geometry.Turned(180))
	}, RulePieces, []int{3}, "P03-S01", anyValue, "is cut unmirrored, turned 180°"},
	{"turn a piece by 90", func(p *laminate.Plan) { pieceOf(p, "P01-S01").Turned = 90 }, RulePieces, []int{1}, "P01-S01", anyValue, "turned by 90°"},
	{"shorten a piece", func(p *laminate.Plan) { c := pieceOf(p, "P01-S01"); c.Shape = stretchTo(c.Shape, 0, 1200, 1190) }, RulePieces, []int{1}, "P01-S01", -10, "1190 × 250 mm on the roll, 1200 × 250 mm in the ply"},
	{"cut off a corner of a piece", func(p *laminate.Plan) { c := pieceOf(p, "P01-S01"); c.Shape.Outer[1][0] -= 0.02 }, RulePieces, []int{1}, "P01-S01", anyValue, "not its strip"},
	{"swap two pieces", func(p *laminate.Plan) {
		a, b := pieceOf(p, "P01-S01"), pieceOf(p, "P02-S02")
		a.ID, b.ID = b.ID, a.ID
	}, RulePieces, nil, "", anyValue, "not its strip"},
	{"double a piece", func(p *laminate.Plan) { r := &p.Rolls[0]; r.Pieces = append(r.Pieces, r.Pieces[0]) }, RulePieces, []int{1}, "P01-S01", anyValue, "cut twice"},
	{"drop a piece", func(p *laminate.Plan) { p.Rolls[0].Pieces = p.Rolls[0].Pieces[1:] }, RulePieces, []int{1}, "P01-S01", anyValue, "not cut from any roll"},
	{"a strange piece", func(p *laminate.Plan) { pieceOf(p, "P01-S01").ID = "P01-S77" }, RulePieces, nil, "P01-S77", anyValue, "no strip of any ply"},
	{"a roll of the wrong fabric", func(p *laminate.Plan) {
		p.Rolls[0].Fabric, p.Rolls[1].Fabric = p.Rolls[1].Fabric, p.Rolls[0].Fabric
	}, RulePieces, nil, "", anyValue, `is of "glass" and is cut from roll "glass-1" no. 1 of "biax"`},

	// rolls
	{"overlap pieces", func(p *laminate.Plan) { c := pieceOf(p, "P01-S02"); c.Shape = shift(c.Shape, -5, 0) }, RuleRolls, []int{1}, "P01-S02", 5, "P01-S01 and P01-S02 lie over each other for 5 mm"},
	{"overlap pieces a hair", func(p *laminate.Plan) { c := pieceOf(p, "P01-S02"); c.Shape = shift(c.Shape, -0.02, 0) }, RuleRolls, []int{1}, "P01-S02", 0.02, "lie over each other"},
	{"one piece on another", func(p *laminate.Plan) { c := pieceOf(p, "P01-S02"); c.Shape = shift(c.Shape, -600, 0) }, RuleRolls, []int{1}, "P01-S02", anyValue, "lie over each other"},
	{"a piece over the side", func(p *laminate.Plan) { c := pieceOf(p, "P01-S02"); c.Shape = shift(c.Shape, 0, 3) }, RuleRolls, []int{1}, "P01-S02", 3, "3 mm over the edge"},
	{"a piece under the side", func(p *laminate.Plan) { c := pieceOf(p, "P01-S01"); c.Shape = shift(c.Shape, 0, -0.01) }, RuleRolls, []int{1}, "P01-S01", 0.01, "0.01 mm over the edge"},
	{"a piece before the free end", func(p *laminate.Plan) { c := pieceOf(p, "P01-S01"); c.Shape = shift(c.Shape, -8, 0) }, RuleRolls, []int{1}, "P01-S01", 8, "8 mm before the free end"},
	{"a piece past the roll's end", func(p *laminate.Plan) {
		p.Rolls[0].StockLengthMM = number(p.Rolls[0].UsedLengthMM - 12)
	}, RuleRolls, []int{7}, "P07-S02", 12, "12 mm past the end"},
	{"wrong used length", func(p *laminate.Plan) { p.Rolls[1].UsedLengthMM -= 40 }, RuleRolls, nil, "", anyValue, "the last cut is at"},
	{"a roll listed twice", func(p *laminate.Plan) {
		r := p.Rolls[0]
		r.Pieces = []laminate.Piece{r.Pieces[0]}
		r.UsedLengthMM = r.Pieces[0].Shape.Bounds().Max[0]
		p.Rolls = append(p.Rolls, r)
	}, RuleRolls, nil, "", anyValue, "listed twice"},
	{"copies that differ", func(p *laminate.Plan) {
		r := p.Rolls[0]
		r.Copy, r.StockLengthMM, r.Pieces, r.UsedLengthMM = 2, number(50000), nil, 0
		p.Rolls = append(p.Rolls, r)
	}, RuleRolls, nil, "", anyValue, "differs in width or length"},
	{"wrong order of cutting", func(p *laminate.Plan) { pieceOf(p, "P01-S02").CutOrder = 1 }, RuleRolls, []int{1}, "P01-S02", anyValue, "cut as no. 1"},
	{"more usable than there is", func(p *laminate.Plan) { p.Rolls[0].UsableWidthMM = 301 }, RuleRolls, nil, "", 301, "cannot have 301 mm usable"},
	{"no cutting gap", func(p *laminate.Plan) { p.Rules.CuttingGapMM = 5 }, RuleRolls, nil, "", 0, "0 mm apart, cutting gap 5 mm"},
	{"a cross cut through a piece", func(p *laminate.Plan) { p.Rolls[0].CrossCuts = []float64{700} }, RuleTable, []int{1}, "P01-S01", 700, "runs through P01-S01"},
	{"a cross cut off the cloth", func(p *laminate.Plan) { p.Rolls[0].CrossCuts = []float64{1e6} }, RuleTable, nil, "", 1e6, "off the cloth"},
	{"a table too short", func(p *laminate.Plan) {
		p.Rolls[0].CrossCuts = []float64{1200}
		p.Rules.TableMM = number(4000)
	}, RuleTable, nil, "", anyValue, "longer than the table of 4000 mm"},

	// figures
	{"bound above used", func(p *laminate.Plan) { c := &p.Cost[0]; c.Used, c.Gap = c.Bound-30, -30/c.Bound }, RuleCost, nil, "", anyValue, "is above the"},
	{"a bound out of the air", func(p *laminate.Plan) { c := &p.Cost[0]; c.Bound *= 1.01; c.Gap = (c.Used - c.Bound) / c.Bound }, RuleCost, nil, "", anyValue, "the area bound is"},
	{"a wrong area", func(p *laminate.Plan) { p.Cost[0].Proof.AreaMM2 += 100 }, RuleCost, nil, "", anyValue, "mm² of blanks"},
	{"a wrong width", func(p *laminate.Plan) {
		c := &p.Cost[0]
		c.Proof.PerMM2 = 1.0 / 290
		c.Bound = c.Proof.AreaMM2 / 290
		c.Gap = (c.Used - c.Bound) / c.Bound
	}, RuleCost, nil, "", anyValue, "a roll of 300 mm"},
	{"false optimal", func(p *laminate.Plan) { p.Cost[0].Status = laminate.Optimal }, RuleCost, nil, "", anyValue, "said to be optimal"},
	{"false gap", func(p *laminate.Plan) { p.Cost[1].Gap /= 2 }, RuleCost, nil, "", anyValue, "the gap is said to be"},
	{"wrong sum of used", func(p *laminate.Plan) { p.Cost[1].Used += 500; c := &p.Cost[1]; c.Gap = (c.Used - c.Bound) / c.Bound }, RuleCost, nil, "", anyValue, "the rolls add up to"},
	{"no cost", func(p *laminate.Plan) { p.Cost = p.Cost[:1] }, RuleCost, nil, "", anyValue, `"biax": its cost is not listed`},
	{"a wrong status", func(p *laminate.Plan) { p.Cost[0].Status = "best" }, RuleCost, nil, "", anyValue, "neither optimal nor feasible"},
	{"a wrong measure", func(p *laminate.Plan) { p.Cost[0].Measure = "time" }, RuleCost, nil, "", anyValue, "none of length, price, last_cut"},
	{"the last cut too near", func(p *laminate.Plan) { c := &p.Cost[0]; c.Measure, c.Used = laminate.ByLastCut, c.Used-100 }, RuleCost, nil, "", anyValue, "the last cut is said"},
	{"a price below the cloth", func(p *laminate.Plan) { c := &p.Cost[0]; c.Measure, c.Used = laminate.ByPrice, c.Used-100 }, RuleCost, nil, "", anyValue, "the rolls used cost"},
	{"wrong length", func(p *laminate.Plan) { p.Lengths[0].UsedMM -= 100 }, RuleOrder, nil, "", anyValue, "the rolls add up to"},
	{"too little to buy", func(p *laminate.Plan) { p.Rules.SparePercent = 10 }, RuleOrder, nil, "", anyValue, "needed with spare"},
	{"no length", func(p *laminate.Plan) { p.Lengths = nil }, RuleOrder, nil, "", anyValue, "used and not listed"},
	{"wrong weight", func(p *laminate.Plan) { p.Quantities[2].DryG += 1 }, RuleOrder, []int{3}, "", anyValue, "said to weigh"},
	{"wrong area of a ply", func(p *laminate.Plan) { p.Quantities[2].AreaMM2 += 10 }, RuleOrder, []int{3}, "", anyValue, "the blank is said"},
	{"no weight", func(p *laminate.Plan) { p.Quantities = p.Quantities[1:] }, RuleOrder, []int{1}, "", anyValue, "ply 1: no weight is listed"},

	// numbers
	{"not a number", func(p *laminate.Plan) { stripOf(p, "P02-S01").Shape.Outer[0][0] = math.NaN() }, RuleNumbers, []int{2}, "P02-S01", anyValue, "P02-S01"},
	{"without end", func(p *laminate.Plan) { pieceOf(p, "P02-S01").Shape.Outer[0][0] = math.Inf(1) }, RuleNumbers, nil, "P02-S01", anyValue, "out of reason"},
	{"out of reason", func(p *laminate.Plan) { stripOf(p, "P02-S01").Shape.Outer[0][1] = 2e6 }, RuleNumbers, []int{2}, "P02-S01", anyValue, "out of reason"},
	{"an angle too far", func(p *laminate.Plan) { p.Plies[1].AngleDeg = -90 }, RuleNumbers, []int{2}, "", anyValue, "-90"},
	{"no outline", func(p *laminate.Plan) { stripOf(p, "P02-S01").Shape.Outer = nil }, RuleNumbers, []int{2}, "P02-S01", anyValue, "no outline"},
	{"no area", func(p *laminate.Plan) {
		stripOf(p, "P02-S01").Shape.Outer = orb.Ring{{0, 0}, {1, 1}, {2, 2}}
	}, RuleNumbers, []int{2}, "P02-S01", anyValue, "no area"},
	{"a stagger that is no number", func(p *laminate.Plan) { p.Fabrics[0].StaggerMM = math.NaN() }, RuleNumbers, nil, "", anyValue, "stagger"},
	{"another version", func(p *laminate.Plan) { p.Version = 2 }, RuleNumbers, nil, "", anyValue, "version 2"},
}

// fillHole gives the strips of ply 1 beside the hole the cloth inside it.
func fillHole(p *laminate.Plan) {
	s := stripOf(p, "P01-S01")
	s.Shape = region(box4(0, 0, 1200, 250))
}

func TestEveryMutationIsCaught(t *testing.T) {
	good := lshape(t)
	for _, m := range mutations {
		t.Run(m.name, func(t *testing.T) {
			p := copyOf(t, good)
			m.spoil(&p)
			rs := Plan(p)
			r := verdict(rs, m.rule)
			if Sound(rs) || r.Rule == "" || r.Pass {
				t.Fatalf("rule %q passes: %s", m.rule, r.Text)
			}
			if !strings.Contains(r.Text, m.says) || !strings.HasPrefix(r.Text, "DO NOT ") {
				t.Errorf("text %q does not say %q", r.Text, m.says)
			}
			if m.plies != nil && !slices.Equal(r.Worst.Plies, m.plies) {
				t.Errorf("plies %v, want %v: %s", r.Worst.Plies, m.plies, r.Text)
			}
			if m.piece != "" && r.Worst.Piece != m.piece {
				t.Errorf("piece %q, want %q: %s", r.Worst.Piece, m.piece, r.Text)
			}
			if m.value != anyValue && math.Abs(r.Worst.ValueMM-m.value) > 0.002 {
				t.Errorf("value %v, want %v: %s", r.Worst.ValueMM, m.value, r.Text)
			}
		})
	}
}

// A mutation that leaves everything a laminator does the same must not be
// found fault with.
func TestHarmlessEditsPass(t *testing.T) {
	good := lshape(t)
	edits := []struct {
		name string
		edit func(p *laminate.Plan)
	}{
		{"start a ring elsewhere", func(p *laminate.Plan) {
			o := stripOf(p, "P03-S03").Shape.Outer
			stripOf(p, "P03-S03").Shape.Outer = append(append(orb.Ring{}, o[2:]...), o[:2]...)
		}},
		{"run a ring the other way", func(p *laminate.Plan) { slices.Reverse(stripOf(p, "P03-S03").Shape.Outer) }},
		{"repeat the first vertex", func(p *laminate.Plan) {
			s := stripOf(p, "P03-S03")
			s.Shape.Outer = append(s.Shape.Outer, s.Shape.Outer[0])
		}},
		{"a vertex along an edge", func(p *laminate.Plan) {
			s := stripOf(p, "P01-S01")
			s.Shape.Outer = slices.Insert(s.Shape.Outer, 1, orb.Point{600, 0})
		}},
		{"move a strip within the tolerance", func(p *laminate.Plan) { s := stripOf(p, "P01-S01"); s.Shape = shift(s.Shape, 0, 0.004) }},
		{"a region clear of other angles", func(p *laminate.Plan) { p.Rules.KeepClear = clear(region(box4(900, 230, 1000, 290)), 30, -60) }},
		{"a region along a joint", func(p *laminate.Plan) { p.Rules.KeepClear = clear(region(box4(900, 250, 920, 300)), 0) }},
		{"a region as far off as asked", func(p *laminate.Plan) {
			p.Rules.KeepClear = clear(region(box4(900, 252, 920, 300)), 0)
			p.Rules.LayingToleranceMM = 2
		}},
		{"just the stagger", func(p *laminate.Plan) { p.Fabrics[0].StaggerMM = 80 }},
		{"worse than practice", func(p *laminate.Plan) { p.Cost[1].Practice = p.Cost[1].Used - 1 }},
		{"a clear cross cut", func(p *laminate.Plan) {
			p.Rolls[0].CrossCuts = []float64{1200}
			p.Rules.TableMM = number(50000)
		}},
		{"a joint listed in two lengths", func(p *laminate.Plan) {
			y := &p.Plies[1]
			j := y.Joints[0]
			k := j
			mid := [2]float64{j.From[0], (j.From[1] + j.To[1]) / 2}
			j.To, k.From = mid, mid
			y.Joints[0] = j
			y.Joints = append(y.Joints, k)
		}},
	}
	for _, e := range edits {
		t.Run(e.name, func(t *testing.T) {
			p := copyOf(t, good)
			e.edit(&p)
			for _, r := range Plan(p) {
				if !r.Pass {
					t.Errorf("%s: %s", r.Rule, r.Text)
				}
			}
		})
	}
}
