package geometry

import "github.com/paulmach/orb"

// Frame is a turn about the origin, optionally after a mirror x to -x or y to
// -y. The zero value is not useful; make one with PlyFrame, Turned or Mirrored.
type Frame struct {
	xx, xy, yx, yy float64 // rows of the matrix
}

// PlyFrame takes part coordinates to the frame of a ply at angle a: turned by
// -a, so that the roll direction runs along +x.
func PlyFrame(a Angle) Frame { return Turned(-float64(a)) }

// Turned turns by deg degrees, counter-clockwise positive, about the origin.
func Turned(deg float64) Frame {
	s, c := sinCosDegrees(deg)
	return Frame{c, -s, s, c}
}

// MirrorX is the mirror x to -x: a drawing seen from the other side.
func MirrorX() Frame { return Frame{-1, 0, 0, 1} }

// MirrorAcross is the mirror y to -y: a strip as it lies on the roll of a ply
// that is laid face down.
func MirrorAcross() Frame { return Frame{1, 0, 0, -1} }

// Apply takes a point into the frame; products are rounded one by one, so that
// every processor gives the same bits.
func (f Frame) Apply(p orb.Point) orb.Point {
	return orb.Point{
		float64(f.xx*p[0]) + float64(f.xy*p[1]),
		float64(f.yx*p[0]) + float64(f.yy*p[1]),
	}
}

// Inverse gives the frame that undoes f.
func (f Frame) Inverse() Frame { return Frame{f.xx, f.yx, f.xy, f.yy} }
