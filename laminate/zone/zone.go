package zone

import (
	"cmp"
	"reflect"
	"slices"
	"strconv"

	"stripwright/geometry"
	"stripwright/laminate"
)

// Zone is what the net part has in common: the plies and the cores that lie
// there, as places in the lists of the plan, rising.
type Zone struct {
	Plies   []int
	Cores   []int
	AreaMM2 float64
	Fields  []Field
}

// Field is a trapezoid of a zone, in mm in the part frame, between the heights
// Low and High: its left and right edge at both.
type Field struct {
	Low, High              float64
	LeftLow, LeftHigh      float64
	RightLow, RightHigh    float64
	leftEdge, rightEdge, z int // what it grows by
}

// AreaMM2 gives the area of the field.
func (f Field) AreaMM2() float64 {
	return float64((f.High - f.Low) * (f.RightLow - f.LeftLow + f.RightHigh - f.LeftHigh) / 2)
}

// Name gives the name of the zone at a place of the list: Z1, Z2, ….
func Name(i int) string { return "Z" + strconv.Itoa(i+1) }

// Of divides the net part of a plan, the largest zone first, of equals the one
// of more plies. No outline of the part: no zones. A zone under 1 mm² is left
// over by rounding and counts with the largest.
func Of(p laminate.Plan) []Zone {
	o := &outlines{list: []geometry.Region{p.Part.Net}}
	plies, cores := make([]int, len(p.Plies)), make([]int, len(p.Cores))
	for i, y := range p.Plies {
		plies[i] = o.place(y.Blank)
	}
	for i, c := range p.Cores {
		cores[i] = o.place(c.Blank)
	}
	var out []Zone
	for _, part := range overlay(o.list) {
		z := Zone{AreaMM2: part.area, Fields: part.fields}
		z.Plies = lying(plies, part.inside)
		z.Cores = lying(cores, part.inside)
		out = append(out, z)
	}
	slices.SortStableFunc(out, func(a, b Zone) int {
		if a.AreaMM2 != b.AreaMM2 {
			return cmp.Compare(b.AreaMM2, a.AreaMM2)
		}
		return cmp.Compare(len(b.Plies), len(a.Plies))
	})
	return swept(out)
}

// outlines are the outlines of a plan, each once, the net part first.
type outlines struct{ list []geometry.Region }

// place gives where an outline stands in the list, behind the net part.
func (o *outlines) place(r geometry.Region) int {
	for i, other := range o.list[1:] {
		if reflect.DeepEqual(other, r) {
			return i + 1
		}
	}
	o.list = append(o.list, r)
	return len(o.list) - 1
}

// lying lists which of them lie inside.
func lying(outline []int, inside []bool) []int {
	var out []int
	for i, o := range outline {
		if inside[o] {
			out = append(out, i)
		}
	}
	return out
}

const leastMM2 = 1.0

// swept counts what is left over by rounding with the largest zone.
func swept(zones []Zone) []Zone {
	n := len(zones)
	for n > 1 && zones[n-1].AreaMM2 < leastMM2 {
		n--
		zones[0].AreaMM2 += zones[n].AreaMM2
	}
	return zones[:n]
}
