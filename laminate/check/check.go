package check

import (
	"sync"

	"stripwright/geometry"
	"stripwright/laminate"
)

// tolerance is what rounding to 0.001 mm can do to a distance between two
// points turned twice, with room to spare, in mm.
const tolerance = 0.005

// Rules in the order in which they are reported.
const (
	RuleNumbers   = "numbers"
	RulePlies     = "plies"
	RuleCoverage  = "coverage"
	RuleStrips    = "strips"
	RuleJoints    = "joints"
	RuleFibreCut  = "fibre cut"
	RuleStagger   = "stagger"
	RuleKeepClear = "keep clear"
	RulePieces    = "pieces"
	RuleRolls     = "rolls"
	RuleTable     = "table"
	RuleCost      = "cost"
	RuleOrder     = "order"
)

// Plan judges a plan by every rule of the package and gives one result per
// rule, in a fixed order. It never alters the plan, never panics and reads
// nothing but the plan; checks already stored in it are ignored. Rules are
// judged side by side, each by itself, so the result is the same on any number
// of cores.
func Plan(p laminate.Plan) []laminate.CheckResult {
	n := numbers(p)
	if len(n.faults) > 0 {
		return []laminate.CheckResult{n.result()}
	}
	l := lay(p)
	rules := []func(*laid) *finding{plies, coverage, strips, joints, fibreCut, stagger, keepClear, pieces, rolls, table, cost, order}
	out := make([]laminate.CheckResult, 1+len(rules))
	out[0] = n.result()
	var all sync.WaitGroup
	for i, judge := range rules {
		all.Go(func() { out[1+i] = judge(l).result() })
	}
	all.Wait()
	return out
}

// Sound says whether every rule was judged and passed.
func Sound(rs []laminate.CheckResult) bool {
	for _, r := range rs {
		if !r.Pass {
			return false
		}
	}
	return len(rs) > 1
}

// laid is the plan made ready for judging: fabrics by name, strips by id, and
// every ply turned into its own frame. No rule alters it.
type laid struct {
	plan    laminate.Plan
	fabrics map[string]laminate.PlanFabric
	plies   []laidPly
	strips  map[string]place // strips by id; the first of equal ids
	rolls   map[string]place // pieces by id; the first of equal ids
}

// place is a strip of a ply, or a piece of a roll, by index.
type place struct{ in, of int }

// laidPly is a ply with its shapes turned into its own frame.
type laidPly struct {
	laminate.PlanPly
	angle  geometry.Angle
	frame  geometry.Frame
	blank  shape
	shapes []shape // of the strips
	seams  []seam
	square bool // its pieces are cut as oblongs
	full   bool // its blank is the part's blank
}

func lay(p laminate.Plan) *laid {
	l := &laid{
		plan:    p,
		fabrics: map[string]laminate.PlanFabric{},
		strips:  map[string]place{},
		rolls:   map[string]place{},
	}
	for _, f := range p.Fabrics {
		l.fabrics[f.Name] = f
	}
	for i, q := range p.Plies {
		l.plies = append(l.plies, layPly(q, p.Part.Blank))
		l.plies[i].square = p.Rules.Ends == laminate.StraightEnds
		for k, s := range q.Strips {
			if _, ok := l.strips[s.ID]; !ok {
				l.strips[s.ID] = place{i, k}
			}
		}
	}
	for i, r := range p.Rolls {
		for k, c := range r.Pieces {
			if _, ok := l.rolls[c.ID]; !ok {
				l.rolls[c.ID] = place{i, k}
			}
		}
	}
	return l
}

func layPly(q laminate.PlanPly, blank geometry.Region) laidPly {
	y := laidPly{PlanPly: q, angle: geometry.NewAngle(q.AngleDeg)}
	y.frame = geometry.PlyFrame(y.angle)
	y.blank = shapeIn(q.Blank, y.frame)
	y.full = sameRegion(q.Blank, blank)
	for _, s := range q.Strips {
		y.shapes = append(y.shapes, shapeIn(s.Shape, y.frame))
	}
	y.seams = seamsOf(y.shapes)
	return y
}

// back takes a point of the ply's frame to the part.
func (y laidPly) back(x, h float64) [2]float64 {
	return tidy(y.frame.Inverse().Apply([2]float64{x, h}))
}
