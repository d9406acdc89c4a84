package layup

import (
	"math"
	"strconv"

	"github.com/paulmach/orb"

	"stripwright/geometry"
	"stripwright/laminate"
	"stripwright/output/sheet"
)

// nearParallelDeg is how far two joints may be turned from each other and still
// be staggered against each other.
const nearParallelDeg = 5.0

// Measured is a joint with what a laminator needs to mark it.
type Measured struct {
	Joint  laminate.Joint
	Name   string // J1, J2, … in the order of the ply
	Ends   [2]Tick
	InTrim bool   // the joint never meets the finished part: no ends
	Below  *Below // nil: none counts
}

// Below is the nearest near-parallel joint of a lower ply that counts under the
// rule of plies between.
type Below struct {
	Ply int
	MM  float64 // square to the joint
	At  orb.Point
}

// Under is a joint of a lower ply that counts against a ply.
type Under struct {
	Ply   int
	Joint laminate.Joint
}

// PlyMeasures are the measured joints of one ply and the joints below that they
// are staggered against.
type PlyMeasures struct {
	Joints []Measured
	Under  []Under
}

// Measure measures every joint of a plan, ply by ply in the plan's order.
//
// A lower joint counts where fewer plies lie between, at that place, than the
// rule asks for; of two fabrics the larger rule holds.
func Measure(p laminate.Plan) []PlyMeasures {
	edge := newNetEdge(p.Part)
	rules, runs := rulesOf(p), runsOf(p)
	out := make([]PlyMeasures, len(p.Plies))
	for i, ply := range p.Plies {
		for n, j := range ply.Joints {
			m := Measured{Joint: j, Name: "J" + strconv.Itoa(n+1)}
			var ok bool
			if m.Ends, ok = edge.ticks(j); !ok {
				m.InTrim = true
			}
			out[i].Joints = append(out[i].Joints, m)
		}
		out[i].Under = under(p, rules, i)
		for n := range out[i].Joints {
			out[i].Joints[n].Below = below(p, rules, runs, i, runs[i][n])
		}
	}
	return out
}

// rulesOf gives the plies between in force by fabric.
func rulesOf(p laminate.Plan) map[string]int {
	rules := map[string]int{}
	for _, f := range p.Fabrics {
		rules[f.Name] = f.PliesBetween
	}
	return rules
}

// reach lists the plies below ply i, from the nearest down, that any of its
// joints can be staggered against: it ends where plies over the whole part
// outnumber every rule.
func reach(p laminate.Plan, rules map[string]int, i int) []int {
	most := 0
	for _, n := range rules {
		most = max(most, n)
	}
	var plies []int
	for j, whole := i-1, 0; j >= 0 && whole < most; j-- {
		plies = append(plies, j)
		if p.Plies[j].Outline == "" {
			whole++
		}
	}
	return plies
}

// counts says whether fewer plies lie between plies j and i at a place than the
// rule of either fabric asks for.
func counts(p laminate.Plan, rules map[string]int, j, i int, at orb.Point) bool {
	need := max(rules[p.Plies[i].Fabric], rules[p.Plies[j].Fabric])
	between := 0
	for k := j + 1; k < i; k++ {
		if p.Plies[k].Outline == "" || p.Plies[k].Blank.Contains(at) {
			between++
		}
	}
	// Joints with exactly `need` plies between need no stagger.
	return between < need
}

// under lists the joints below that count and are near parallel to a joint of
// ply i.
func under(p laminate.Plan, rules map[string]int, i int) []Under {
	if len(p.Plies[i].Joints) == 0 {
		return nil
	}
	own := directions(p.Plies[i].Joints)
	var out []Under
	for _, j := range reach(p, rules, i) {
		for _, joint := range p.Plies[j].Joints {
			if nearAny(own, direction(joint)) && counts(p, rules, j, i, middle(joint)) {
				out = append(out, Under{p.Plies[j].Ply, joint})
			}
		}
	}
	return out
}

func direction(j laminate.Joint) geometry.Angle {
	return geometry.NewAngle(math.Atan2(j.To[1]-j.From[1], j.To[0]-j.From[0]) * 180 / math.Pi)
}

// directions lists the directions of joints, near ones once.
func directions(joints []laminate.Joint) []geometry.Angle {
	var out []geometry.Angle
	for _, j := range joints {
		if d := direction(j); len(out) == 0 || out[len(out)-1].Between(d) > 0.01 {
			out = append(out, d)
		}
	}
	return out
}

func nearAny(own []geometry.Angle, d geometry.Angle) bool {
	for _, o := range own {
		if o.Between(d) <= nearParallelDeg {
			return true
		}
	}
	return false
}

func middle(j laminate.Joint) orb.Point {
	return orb.Point{(j.From[0] + j.To[0]) / 2, (j.From[1] + j.To[1]) / 2}
}

// below finds the nearest joint that counts.
func below(p laminate.Plan, rules map[string]int, runs [][]run, i int, joint run) *Below {
	var best *Below
	for _, j := range reach(p, rules, i) {
		between := betweenOf(p, rules, j, i)
		for _, lower := range runs[j] {
			mm, at, ok := between.apart(joint, lower)
			if ok && (best == nil || mm < best.MM) {
				best = &Below{p.Plies[j].Ply, mm, at}
			}
		}
	}
	return best
}

// run is a joint as a start, a direction and a length.
type run struct {
	from, d orb.Point
	long    float64
}

func runOf(j laminate.Joint) run {
	from, to := orb.Point(j.From), orb.Point(j.To)
	return run{from, sheet.Towards(from, to), distance(from, to)}
}

func runsOf(p laminate.Plan) [][]run {
	out := make([][]run, len(p.Plies))
	for i, ply := range p.Plies {
		out[i] = make([]run, len(ply.Joints))
		for n, j := range ply.Joints {
			out[i][n] = runOf(j)
		}
	}
	return out
}
