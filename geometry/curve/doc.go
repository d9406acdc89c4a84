// Package curve turns the curves of a drawing into points that lie on them, so
// close that no straight piece between two points is farther than a stated
// chord error from the curve:
//
//	   ___---___
//	 /     | e   \      e <= chord error
//	*------+------*
//
// All points lie on the curve itself, so an outline that bulges outward is
// smaller than the true one, and one that bulges inward larger, by the chord
// error at most and never by more.
//
// Lengths are in the unit of the caller (millimetres, or the unit of a drawing
// with the chord error in the same unit), angles in radians, counter-clockwise
// positive. Every function gives both ends of the curve, exactly as they are
// stated where they are stated. A curve with a number that is not finite gives
// no points at all: nil. No result holds NaN or infinity.
//
// The package knows no files and no outlines, and does not simplify: that a
// straight line stays two points is all it does to keep the number small.
package curve
