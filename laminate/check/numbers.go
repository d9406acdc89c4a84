package check

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Sizes beyond these are out of reason: a part of 1 km, a roll of 1000 km, any
// other figure of a million million.
const (
	largestPart = 1e6
	largestRoll = 1e9
	largestSum  = 1e12
)

// numbers holds that every figure of a plan is a number within reason and every
// region has an outline, so that all other rules can rely on it.
func numbers(p laminate.Plan) *finding {
	n := &counter{f: &finding{rule: RuleNumbers, opening: doNotCut, note: "all figures are within reason"}}
	n.head(p)
	for i := range p.Plies {
		n.ply(&p.Plies[i])
	}
	for i := range p.Rolls {
		n.roll(&p.Rolls[i])
	}
	n.sums(p)
	return n.f
}

// counter looks at figures one by one; in says what they belong to.
type counter struct {
	f     *finding
	in    string
	worst laminate.Worst
}

// of sets what the figures to come belong to.
func (n *counter) of(in string, plies ...int) {
	n.in, n.worst = in, laminate.Worst{Plies: plies}
}

func (n *counter) bad(what string) {
	n.f.add(1, n.worst, "%s%s", n.in, what)
}

func (n *counter) figure(v, least, most float64, what string) {
	n.f.counted++
	if !(v >= least && v <= most) {
		n.bad(what + " is " + strconv.FormatFloat(v, 'g', 6, 64) + ", out of reason")
	}
}

func (n *counter) optional(v *float64, least, most float64, what string) {
	if v != nil {
		n.figure(*v, least, most, what)
	}
}

func (n *counter) head(p laminate.Plan) {
	if p.Format != laminate.PlanFormat || p.Version != laminate.PlanVersion {
		n.bad("the plan is of form " + strconv.Quote(p.Format) + " version " + strconv.Itoa(p.Version) + ", which is not known")
	}
	n.region(p.Part.Net, largestPart, "the net outline")
	n.region(p.Part.Blank, largestPart, "the blank")
	n.figure(p.Part.ZeroDeg, -360, 360, "the direction of 0°")
	n.optional(p.Part.LoadDeg, -360, 360, "the load direction")
	n.figure(p.Part.TrimMM, 0, largestPart, "the trim allowance")
	for _, c := range p.Part.Corners {
		n.figure(c.At[0], -largestPart, largestPart, "corner "+c.Name)
		n.figure(c.At[1], -largestPart, largestPart, "corner "+c.Name)
	}
	n.rules(p.Rules)
	for _, c := range p.Fabrics {
		n.of("fabric " + strconv.Quote(c.Name) + ": ")
		n.figure(c.WeightGSM, 0, 1e6, "the weight")
		n.figure(c.StaggerMM, 0, largestPart, "the stagger")
		n.figure(float64(c.PliesBetween), 0, 1e6, "the number of plies between")
		for _, y := range c.Layers {
			n.figure(y.AngleDeg, -360, 360, "the angle of a layer")
			n.figure(y.WeightGSM, 0, 1e6, "the weight of a layer")
		}
	}
	n.of("")
}

func (n *counter) rules(r laminate.PlanRules) {
	n.figure(r.LayingToleranceMM, 0, largestPart, "the laying tolerance")
	n.figure(r.NarrowestMM, 0, largestPart, "the narrowest strip")
	n.figure(r.CuttingGapMM, 0, largestPart, "the cutting gap")
	n.figure(r.SparePercent, 0, 1e4, "the spare")
	n.figure(r.SoldByMM, 0, largestRoll, "the length sold by")
	n.optional(r.MaxGapMM, 0, largestPart, "the widest gap")
	n.optional(r.TableMM, 0, largestRoll, "the table")
	for i, k := range r.KeepClear {
		n.region(k.Region, largestPart, "keep clear region "+strconv.Itoa(i+1))
		for _, a := range k.Angles {
			n.angle(a)
		}
	}
}

// angle holds a direction within (-90, 90].
func (n *counter) angle(a float64) {
	n.f.counted++
	if !(a > -90 && a <= 90) {
		n.bad("the angle " + strconv.FormatFloat(a, 'g', 6, 64) + "° is not above -90 and up to 90")
	}
}

func (n *counter) ply(y *laminate.PlanPly) {
	n.of("ply "+strconv.Itoa(y.Ply)+": ", y.Ply)
	n.angle(y.AngleDeg)
	n.region(y.Blank, largestPart, "the blank")
	for i := range y.Strips {
		s := &y.Strips[i]
		n.worst.Piece = s.ID
		n.region(s.Shape, largestPart, s.ID)
		n.figure(s.WidthMM, 0, largestPart, "the width of "+s.ID)
	}
	n.worst.Piece = ""
	for i := range y.Joints {
		for k := range 2 {
			n.figure(y.Joints[i].From[k], -largestPart, largestPart, "a joint's end")
			n.figure(y.Joints[i].To[k], -largestPart, largestPart, "a joint's end")
		}
	}
	n.of("")
}

func (n *counter) roll(r *laminate.PlanRoll) {
	n.of(rollName(*r) + ": ")
	n.figure(r.WidthMM, 0, largestPart, "the width")
	n.figure(r.UsableWidthMM, 0, largestPart, "the usable width")
	n.figure(r.UsedLengthMM, 0, largestRoll, "the used length")
	n.optional(r.StockLengthMM, 0, largestRoll, "the stock length")
	for _, c := range r.CrossCuts {
		n.figure(c, 0, largestRoll, "a cross cut")
	}
	for i := range r.Pieces {
		n.worst.Piece = r.Pieces[i].ID
		n.region(r.Pieces[i].Shape, largestRoll, r.Pieces[i].ID)
	}
	n.of("")
}

func (n *counter) sums(p laminate.Plan) {
	for _, c := range p.Cost {
		n.of("cost of " + strconv.Quote(c.Fabric) + ": ")
		for _, v := range []float64{c.Used, c.Bound, c.Practice, c.Proof.AreaMM2, c.Proof.PerMM2} {
			n.figure(v, 0, largestSum, "a figure")
		}
		n.figure(c.Gap, -largestSum, largestSum, "the gap")
	}
	for _, e := range p.Lengths {
		n.of("lengths of " + strconv.Quote(e.Fabric) + ": ")
		for _, v := range []float64{e.WidthMM, e.UsedMM, e.ToBuyMM} {
			n.figure(v, 0, largestSum, "a figure")
		}
	}
	for _, q := range p.Quantities {
		n.of("weights of ply "+strconv.Itoa(q.Ply)+": ", q.Ply)
		n.figure(q.AreaMM2, 0, largestSum, "the area")
		n.figure(q.DryG, 0, largestSum, "the weight")
	}
	n.of("")
}

// region holds that an outline has area, its holes have corners, and all of it
// lies within reach.
func (n *counter) region(r geometry.Region, most float64, what string) {
	n.f.counted++
	if len(r.Outer) < 3 {
		n.bad(what + " has no outline")
		return
	}
	if !n.ring(r.Outer, most, what) {
		return
	}
	for _, h := range r.Holes {
		if len(h) < 3 {
			n.bad(what + " has a hole of less than three corners")
			return
		}
		if !n.ring(h, most, what) {
			return
		}
	}
	if r.Area() <= 0 {
		n.bad(what + " has no area")
	}
}

func (n *counter) ring(r orb.Ring, most float64, what string) bool {
	for _, p := range r {
		for _, v := range p {
			if !(math.Abs(v) <= most) {
				n.bad(what + " has a coordinate of " + strconv.FormatFloat(v, 'g', 6, 64) + ", out of reason")
				return false
			}
		}
	}
	return true
}
