package stack

import (
	"stripwright/geometry"
	"stripwright/laminate"
)

// parallel is how many degrees a layer may lie off a joint and still not be cut
// by it: no more fibres cross it than lie askew in the cloth anyway.
const parallel = 1.0

// Cut is the share of the fibre of a ply, by weight, that a joint cuts: 0…1.
type Cut struct {
	Side float64 // a joint along the roll
	End  float64 // a joint across the roll
}

// CutOf tells what joints cut of a cloth. A layer within 1° of the joint is not
// cut; every other is, and so is all of a mat.
//
//	unidirectional  side 0, end all
//	woven           half each
//	stitched ±45    side all, end all
func CutOf(c Cloth) Cut {
	if c.Form == laminate.Mat {
		return Cut{1, 1}
	}
	var side, end, all float64
	for _, l := range c.Lies {
		a := geometry.NewAngle(l.AngleDeg)
		all += l.WeightGSM
		if a.Between(0) > parallel {
			side += l.WeightGSM
		}
		if a.Between(90) > parallel {
			end += l.WeightGSM
		}
	}
	return Cut{quotient(side, all), quotient(end, all)}
}

// quotient gives part/all, 0 of nothing.
func quotient(part, all float64) float64 {
	if !(all > 0) {
		return 0
	}
	return part / all
}
