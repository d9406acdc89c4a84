package check

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"stripwright/laminate"
)

// When a joint runs across the load, and which fibre it must not cut: a joint
// within alongDeg of the load runs along it, as two joints within that angle run
// side by side; fibre within carriesDeg of the load carries it; a joint within
// uncutDeg of a fibre does not cut it.
const (
	alongDeg   = 15.0
	carriesDeg = 45.0
	uncutDeg   = 1.0
)

// fibreCut tells how much of each fabric's fibre its joints cut, and warns of
// joints across the load: a continuous ply is not butt-spliced across the load
// direction (MIL-HDBK-17-3F, 17 Jun 2002, vol. 3 ch. 12 §12.3.1 item A-29). A
// warning is no fault: handbooks guide, and a plan may have no other way.
func fibreCut(l *laid) *finding {
	f := &finding{rule: RuleFibreCut, opening: doNotCut}
	var across []string
	worst := 0.0
	for i := range l.plies {
		y := &l.plies[i]
		f.counted += len(y.Joints)
		for _, kind := range []string{laminate.SideJoint, laminate.EndJoint} {
			first := firstOf(y.Joints, kind)
			if first < 0 || l.plan.Part.LoadDeg == nil {
				continue
			}
			share := l.across(y, kind, *l.plan.Part.LoadDeg)
			if share == 0 {
				continue
			}
			at := tidy(y.Joints[first].From)
			across = append(across, fmt.Sprintf("ply %d: %s joints run across the load and cut %s of its fibre, which carries it, first %s", y.Ply, kind, part(share), where(at)))
			if share > worst {
				worst, f.worst = share, &laminate.Worst{Plies: []int{y.Ply}, At: at}
			}
		}
	}
	f.note = strings.Join(l.cutWords(), "; ")
	if len(across) > 0 {
		f.note = laminate.Warning + listed(across) + "; " + f.note
	}
	return f
}

// listed joins the first sentences and counts the rest.
func listed(says []string) string {
	if n := len(says) - told; n > 0 {
		says = append(append([]string{}, says[:told]...), fmt.Sprintf("and %d more plies", n))
	}
	return strings.Join(says, "; ")
}

func firstOf(js []laminate.Joint, kind string) int {
	for i, j := range js {
		if j.Kind == kind {
			return i
		}
	}
	return -1
}

// thread is fibre of a fabric along one direction to its roll.
type thread struct{ deg, gsm float64 }

// threads gives how the fibre of a fabric lies: its layers as stated, warp and
// weft of a woven, along the roll else. A mat has none.
func threads(c laminate.PlanFabric) []thread {
	var out []thread
	for _, a := range c.Layers {
		out = append(out, thread{a.AngleDeg, max(a.WeightGSM, 0)})
	}
	switch {
	case c.Form == laminate.Mat:
		return nil
	case len(out) == 0 && c.Form == laminate.Woven:
		return []thread{{0, 1}, {90, 1}}
	case len(out) == 0:
		return []thread{{0, 1}}
	}
	if !slices.ContainsFunc(out, func(t thread) bool { return t.gsm > 0 }) {
		for i := range out {
			out[i].gsm = 1 // layers without a weight share the fabric's equally
		}
	}
	return out
}

// between gives the angle between two lines, 0 to 90.
func between(a, b float64) float64 {
	d := math.Mod(math.Abs(a-b), 180)
	return math.Min(d, 180-d)
}

// cutShare gives the share of a fabric's fibre that a joint at an angle to the
// roll cuts, of the fibre that counts.
func cutShare(c laminate.PlanFabric, jointDeg float64, counts func(deg float64) bool) float64 {
	ts := threads(c)
	if ts == nil {
		return 1
	}
	cut, all := 0.0, 0.0
	for _, t := range ts {
		all += t.gsm
		if between(t.deg, jointDeg) > uncutDeg && counts(t.deg) {
			cut += t.gsm
		}
	}
	if !(all > 0) {
		return 0
	}
	return cut / all
}

// across gives the share of a ply's fibre that carries the load and that joints
// of a kind cut, 0 where they run along the load.
func (l *laid) across(y *laidPly, kind string, load float64) float64 {
	joint := 0.0
	if kind == laminate.EndJoint {
		joint = 90
	}
	if between(y.AngleDeg+joint, load) <= alongDeg {
		return 0
	}
	return cutShare(l.fabrics[y.Fabric], joint, func(deg float64) bool {
		if y.Face == laminate.FaceDown {
			deg = -deg
		}
		return between(y.AngleDeg+deg, load) <= carriesDeg+1e-6
	})
}

// cutWords says for each kind of joint what it cuts of each fabric that has one.
func (l *laid) cutWords() []string {
	var out []string
	for _, k := range []struct {
		kind string
		deg  float64
	}{{laminate.SideJoint, 0}, {laminate.EndJoint, 90}} {
		var says []string
		for _, c := range l.plan.Fabrics {
			if !l.hasJoint(c.Name, k.kind) {
				continue
			}
			share := cutShare(c, k.deg, func(float64) bool { return true })
			says = append(says, part(share)+" of the fibre of "+c.Name)
		}
		if len(says) > 0 {
			out = append(out, k.kind+" joints cut "+strings.Join(says, ", "))
		}
	}
	if len(out) == 0 {
		return []string{"no ply has a joint"}
	}
	return out
}

func (l *laid) hasJoint(fabric, kind string) bool {
	for _, y := range l.plies {
		if y.Fabric == fabric && firstOf(y.Joints, kind) >= 0 {
			return true
		}
	}
	return false
}

// part prints a share in words a laminator uses.
func part(share float64) string {
	switch {
	case share <= 0:
		return "none"
	case share >= 1-1e-9:
		return "all"
	}
	return num(math.Round(share*1000)/10) + " %"
}
