package stack

import (
	"stripwright/geometry"
	"stripwright/laminate"
)

const (
	sideJoint = laminate.SideJoint
	endJoint  = laminate.EndJoint
)

// Across the load: a joint more than alongLoad degrees off it, as elsewhere two
// joints within it run side by side; and fibre within carries degrees of it, which
// takes more of the load along itself than across.
const (
	alongLoad = 15.0
	carries   = 45.0
)

// AcrossLoad gives the share of a ply's fibre, by weight, that carries a load
// and is cut by a joint that runs across it: 0 where the joint runs within 15°
// of the load. Fibre within 45° of the load carries it; of mat, all does.
func AcrossLoad(c Cloth, q laminate.PlanPly, kind string, load float64) float64 {
	theta := geometry.NewAngle(q.AngleDeg)
	joint := theta
	if kind == endJoint {
		joint = geometry.NewAngle(q.AngleDeg + 90)
	}
	toLoad := geometry.NewAngle(load)
	if joint.Between(toLoad) <= alongLoad {
		return 0
	}
	if c.Form == laminate.Mat {
		return 1
	}
	cut, all := 0.0, 0.0
	for _, l := range c.Lies {
		d := laid(l, theta, q.Face == laminate.FaceDown)
		all += l.WeightGSM
		if d.Angle.Between(joint) > parallel && d.Angle.Between(toLoad) <= carries+1e-6 {
			cut += l.WeightGSM
		}
	}
	return quotient(cut, all)
}

func has(q laminate.PlanPly, kind string) bool {
	for _, j := range q.Joints {
		if j.Kind == kind {
			return true
		}
	}
	return false
}
