package band

import (
	"cmp"
	"slices"
)

// Joint is a stretch where two pieces of neighbouring bands meet: from the
// lower x to the higher, on one height. Below and Above number the pieces.
type Joint struct {
	From, To     Point
	Below, Above int
}

// Joints lists where pieces of a cut meet along its joints, rising, from left
// to right along a joint.
func Joints(pieces []Piece, joints []int64) []Joint {
	below := make([][]levelSide, len(joints))
	above := make([][]levelSide, len(joints))
	for i := range pieces {
		p := &pieces[i]
		for _, r := range p.Rings() {
			collect(r, i, p.Band, joints, below, above)
		}
	}
	var out []Joint
	for k, y := range joints {
		out = append(out, meetings(below[k], above[k], y)...)
	}
	return out
}

// levelSide is a level side of a piece on a joint.
type levelSide struct {
	span  Span
	piece int
}

// collect sorts a ring's level sides by the joint that they lie on: the upper
// sides of band b lie on joint b, the lower ones on joint b-1.
func collect(r Ring, piece, b int, joints []int64, below, above [][]levelSide) {
	p := r[len(r)-1]
	for _, q := range r {
		if p.Y == q.Y {
			s := levelSide{Span{min(p.X, q.X), max(p.X, q.X)}, piece}
			if b < len(joints) && p.Y == joints[b] {
				below[b] = append(below[b], s)
			}
			if b > 0 && p.Y == joints[b-1] {
				above[b-1] = append(above[b-1], s)
			}
		}
		p = q
	}
}

func meetings(below, above []levelSide, y int64) []Joint {
	byStart := func(a, b levelSide) int {
		return cmp.Or(cmp.Compare(a.span.From, b.span.From), cmp.Compare(a.piece, b.piece))
	}
	slices.SortFunc(below, byStart)
	slices.SortFunc(above, byStart)
	var out []Joint
	for i, j := 0, 0; i < len(below) && j < len(above); {
		s := Span{max(below[i].span.From, above[j].span.From), min(below[i].span.To, above[j].span.To)}
		if s.To > s.From {
			out = append(out, Joint{Point{s.From, y}, Point{s.To, y}, below[i].piece, above[j].piece})
		}
		if below[i].span.To < above[j].span.To {
			i++
		} else {
			j++
		}
	}
	return joined(out)
}

// joined makes one joint of stretches of the same two pieces that run on.
func joined(list []Joint) []Joint {
	out := list[:0]
	for _, j := range list {
		if n := len(out); n > 0 && out[n-1].To == j.From && out[n-1].Below == j.Below && out[n-1].Above == j.Above {
			out[n-1].To = j.To
			continue
		}
		out = append(out, j)
	}
	return out
}
