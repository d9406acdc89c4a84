package waste

import (
	"cmp"
	"slices"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Least size of what is worth keeping, common practice, no source: room for a
// strip of a small part.
const (
	LeastLengthMM = 500.0
	LeastWidthMM  = 50.0
)

// Left is a left-over rectangle of cloth: the rest of a roll at its full width,
// or an offcut beside pieces.
type Left struct {
	Roll              string
	Copy              int
	Fabric            string
	Offcut            bool
	LengthMM, WidthMM float64
	FromMM, AcrossMM  float64 // where it lies: running length from the free end, distance from the right-hand edge of the usable width
}

// LeftOver lists what a plan leaves that is at least LeastLengthMM along the
// roll and LeastWidthMM and the narrowest strip across it, by roll in the order
// of the plan, largest first. Offcuts of one roll do not overlap.
func LeftOver(p laminate.Plan) []Left {
	var out []Left
	width := max(LeastWidthMM, p.Rules.NarrowestMM)
	for _, r := range p.Rolls {
		if r.StockLengthMM != nil {
			if rest := geometry.Snap(*r.StockLengthMM - r.UsedLengthMM); rest >= LeastLengthMM {
				out = append(out, Left{Roll: r.Roll, Copy: r.Copy, Fabric: r.Fabric, LengthMM: rest, WidthMM: r.UsableWidthMM, FromMM: r.UsedLengthMM})
			}
		}
		for _, b := range offcuts(r, width) {
			out = append(out, Left{Roll: r.Roll, Copy: r.Copy, Fabric: r.Fabric, Offcut: true,
				LengthMM: geometry.Snap(b.u1 - b.u0), WidthMM: geometry.Snap(b.v1 - b.v0), FromMM: geometry.Snap(b.u0), AcrossMM: geometry.Snap(b.v0)})
		}
	}
	return out
}

// Largest gives the largest of some left-over pieces, at most so many, in the
// order given.
func Largest(list []Left, most int) []Left {
	if len(list) <= most {
		return list
	}
	bySize := slices.Clone(list)
	slices.SortStableFunc(bySize, func(a, b Left) int {
		return cmp.Compare(float64(b.LengthMM*b.WidthMM), float64(a.LengthMM*a.WidthMM))
	})
	least := bySize[most-1]
	var out []Left
	for _, l := range list {
		if len(out) < most && float64(l.LengthMM*l.WidthMM) >= float64(least.LengthMM*least.WidthMM) {
			out = append(out, l)
		}
	}
	return out
}

// box is a rectangle on the roll.
type box struct{ u0, u1, v0, v1 float64 }

func (b box) area() float64 { return (b.u1 - b.u0) * (b.v1 - b.v0) }

func (b box) meets(o box) bool {
	return b.u0 < o.u1 && o.u0 < b.u1 && b.v0 < o.v1 && o.v0 < b.v1
}

// offcuts gives free rectangles of a roll that are wide and long enough, the
// largest first, then what is clear of those taken.
func offcuts(r laminate.PlanRoll, width float64) []box {
	var all, out []box
	for _, s := range stretches(r) {
		all = append(all, boxes(s.free(), width)...)
	}
	slices.SortStableFunc(all, func(a, b box) int {
		return cmp.Or(cmp.Compare(b.area(), a.area()), cmp.Compare(a.u0, b.u0), cmp.Compare(a.v0, b.v0), cmp.Compare(b.v1, a.v1))
	})
	for _, b := range all {
		if !slices.ContainsFunc(out, b.meets) {
			out = append(out, b)
		}
	}
	return out
}

// boxes lists the rectangles that stand on the foot of a free trapezoid, reach
// to the head of it or of one above, and are as long as all trapezoids between
// allow.
func boxes(list []free, width float64) []box {
	long := slices.DeleteFunc(slices.Clone(list), func(f free) bool {
		return f.times != 1 || min(f.r0, f.r1)-max(f.l0, f.l1) < LeastLengthMM
	})
	slices.SortStableFunc(long, func(a, b free) int { return cmp.Compare(a.v0, b.v0) })
	var out []box
	for i := range long {
		f := &long[i]
		out = upward(out, long[i+1:], box{max(f.l0, f.l1), min(f.r0, f.r1), f.v0, f.v1}, width)
	}
	return out
}

// upward adds the boxes that a box grows into, and the box itself if it is wide
// enough and grows no further at its length.
func upward(out []box, above []free, b box, width float64) []box {
	most := 0.0
	k, _ := slices.BinarySearchFunc(above, b.v1, func(f free, v float64) int { return cmp.Compare(f.v0, v) })
	for ; k < len(above) && above[k].v0 == b.v1; k++ {
		f := &above[k]
		u0, u1 := max(b.u0, f.l0, f.l1), min(b.u1, f.r0, f.r1)
		if u1-u0 >= LeastLengthMM {
			out = upward(out, above[k+1:], box{u0, u1, b.v0, f.v1}, width)
			most = max(most, u1-u0)
		}
	}
	if b.v1-b.v0 >= width && most < b.u1-b.u0 {
		out = append(out, b)
	}
	return out
}
